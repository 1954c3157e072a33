import type { NotesRow } from '../../model/index.ts';
import { escapeMarkdown } from '../markdown.ts';

/**
 * A stretch of Markdown together with every figure and quotation in it, so that no number reaches
 * the notes without a row in the data beside them.
 */
export interface Piece {
  readonly markdown: string;
  readonly rows: readonly PieceRow[];
}

/** A figure of a piece: its name within the section, its value in full, and how it is printed. */
export interface PieceRow {
  readonly key: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly text: string;
}

export const NOTHING: Piece = { markdown: '', rows: [] };

/** Markup of the notes themselves, without any figure. */
export function markup(markdown: string): Piece {
  return { markdown, rows: [] };
}

/**
 * A figure, or several that one text states (the ends of a range).
 *
 * @param text as printed, escaped here; one without a digit states no figure
 */
export function figure(
  key: string,
  values: number | readonly (number | null)[],
  unit: string,
  text: string,
): Piece {
  const given = typeof values === 'number' ? [values] : values;
  const all = /\d/.test(text) ? given.filter((value) => value !== null) : [];
  return {
    markdown: escapeMarkdown(text),
    rows: all.map((value) => ({ key, value, unit, text })),
  };
}

/** A number of things; the noun follows by itself. */
export function count(key: string, value: number): Piece {
  return figure(key, value, 'count', String(value));
}

/** `1 device`, `3 devices`. */
export function counted(key: string, value: number, one: string, many = `${one}s`): Piece {
  return say`${count(key, value)} ${markup(value === 1 ? one : many)}`;
}

/** Text that comes from the bench, word for word; one with a digit has a row of its own. */
export function quoted(text: string): Piece {
  const rows = /\d/.test(text) ? [{ key: 'quoted', value: null, unit: null, text }] : [];
  return { markdown: escapeMarkdown(text), rows };
}

/** Prose with pieces in it; a plain string among them is quoted from the bench. */
export function say(words: TemplateStringsArray, ...parts: readonly (Piece | string)[]): Piece {
  const pieces = parts.map((part) => (typeof part === 'string' ? quoted(part) : part));
  const markdown = words.reduce(
    (text, word, index) => `${text}${pieces[index - 1]?.markdown ?? ''}${word}`,
  );
  return { markdown, rows: pieces.flatMap((piece) => piece.rows) };
}

/** Pieces one after the other; empty ones leave no gap. */
export function joined(pieces: readonly Piece[], separator: string): Piece {
  const filled = pieces.filter((piece) => piece.markdown !== '');
  return {
    markdown: filled.map((piece) => piece.markdown).join(separator),
    rows: filled.flatMap((piece) => piece.rows),
  };
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(pieces: readonly Piece[], last = 'and'): Piece {
  const final = pieces.at(-1);
  if (final === undefined) return NOTHING;
  if (pieces.length === 1) return final;
  return joined([joined(pieces.slice(0, -1), ', '), final], ` ${last} `);
}

/** Sentences as one paragraph. */
export function paragraph(sentences: readonly Piece[]): Piece {
  return joined(sentences, ' ');
}

/** Blocks with a blank line between them. */
export function blocks(parts: readonly Piece[]): Piece {
  return joined(parts, '\n\n');
}

/** A list with one item a piece. */
export function bullets(items: readonly Piece[]): Piece {
  const filled = items.filter((item) => item.markdown !== '');
  return joined(
    filled.map((item) => ({ ...item, markdown: `- ${item.markdown}` })),
    '\n',
  );
}

/** With a capital in front; not for a piece that opens with a text of the bench. */
export function capitalised(piece: Piece): Piece {
  const { markdown } = piece;
  return { ...piece, markdown: markdown.charAt(0).toUpperCase() + markdown.slice(1) };
}

/**
 * The rows of `notes/1`: the section in front of each name. A name that stands for two different
 * figures gets a number behind it.
 */
export function notesRows(
  sections: readonly { readonly id: string; readonly body: Piece }[],
): NotesRow[] {
  const used = new Map<string, number>();
  const seen = new Set<string>();
  return sections.flatMap(({ id, body }) =>
    body.rows.flatMap((row): NotesRow[] => {
      const name = `${id}.${row.key}`;
      const whole = JSON.stringify([name, row.value, row.unit, row.text]);
      if (seen.has(whole)) return [];
      seen.add(whole);
      const nth = (used.get(name) ?? 0) + 1;
      used.set(name, nth);
      const { value, unit, text } = row;
      return [{ id: nth === 1 ? name : `${name}.${nth}`, value, unit, text }];
    }),
  );
}
