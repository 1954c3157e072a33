import type { NotesRow } from '../../src/model/index.ts';

/** A number as it stands in the notes. */
export interface NumberToken {
  readonly text: string;
  /** The section of index.md: the prefix of the names in data/notes.json. */
  readonly section: string;
  /** The unit behind it, where one stands there. */
  readonly unit: string | null;
  readonly line: string;
}

/** Headings of index.md and the sections they open; what stands before the first is the summary. */
const SECTIONS: Readonly<Record<string, string>> = {
  'What was tested': 'tested',
  'Claims and certificates': 'claims',
  'The feed water': 'feed-water',
  Reductions: 'reductions',
  'Sums, organisms and filter life': 'sums',
  'Rises and open points': 'open-points',
  'What the water keeps of its minerals': 'minerals',
  'The first water after a pause': 'idle-rise',
  Taste: 'panel',
  'Water to drain': 'water-use',
  'Small pours and large ones': 'curves',
  'Flow and filling times': 'flow',
  Costs: 'costs',
  'Void samples, checks and corrections': 'data-notes',
  'What was not tested': 'not-tested',
  'Methods in brief': 'methods',
  Cautions: 'cautions',
  'Tables and data': 'files',
  Provenance: 'provenance',
  'Findings about the data': 'findings',
};

/** A number that is no part of a word, a longer number or a hash. */
const NUMBER = /(?<![\p{L}\p{N}_.])\d+(?:\.\d+)?(?![\p{L}\p{N}_])/gu;

/** Units as they follow a number; litres are left out, since they print ratios and pours too. */
const UNIT = /^ (%|[mun]g\/L|NTU|uS\/cm|MPN\/100mL|L\/min)(?![\p{L}\p{N}/])/u;

export function numbersIn(text: string): string[] {
  return [...text.matchAll(NUMBER)].map(([number]) => number);
}

/** Markdown as a reader sees it: no link targets, no escapes. SHA-256 is a name and no figure. */
export function readable(markdown: string): string {
  return markdown
    .replace(/\]\([^)\s]*\)/g, ']')
    .replaceAll('SHA-256', 'SHA')
    .replaceAll('&NoBreak;', '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replace(/\\([\\`*_[\]|~$.:#+=-])/g, '$1');
}

/** Every number of index.md with its section. */
export function numberTokens(index: string): NumberToken[] {
  let section = 'summary';
  return index.split('\n').flatMap((line) => {
    const heading = /^## (.*)$/.exec(line)?.[1];
    if (heading !== undefined) {
      const named = SECTIONS[heading];
      if (named === undefined) throw new Error(`a heading without a section: ${heading}`);
      section = named;
    }
    const words = readable(line);
    return [...words.matchAll(NUMBER)].map((match) => {
      const unit = UNIT.exec(words.slice(match.index + match[0].length))?.[1] ?? null;
      return { text: match[0], section, unit, line };
    });
  });
}

/**
 * True where a value rounds to the printed number, up, down or to the nearest, at its printed
 * digits. An integer of more than three digits may have been rounded to three.
 */
export function roundsTo(printed: string, value: number): boolean {
  const decimals = printed.split('.')[1]?.length ?? 0;
  const zeros = decimals === 0 ? (/0+$/.exec(printed)?.[0].length ?? 0) : 0;
  const step = 10 ** (zeros > 0 ? Math.min(zeros, Math.max(0, printed.length - 3)) : -decimals);
  // A hundred-millionth of a step: the printed digits stand for a binary figure next to them.
  return Math.abs(Math.abs(value) - Number(printed)) < step * (1 - 1e-8);
}

/** Smaller and larger units that a text may print for a unit of the data. */
const SCALES: Readonly<Record<string, readonly number[]>> = {
  s: [1, 1 / 60, 1 / 3600, 1 / 86_400],
  mL: [1, 1 / 1000],
};

/** True where the text of a figure states its value: exactly for a count, else rounded. */
export function states({ value, unit, text }: NotesRow, printed: string): boolean {
  if (value === null) return numbersIn(text).includes(printed);
  if (!numbersIn(text).includes(printed)) return false;
  if (unit === 'count') return Number(printed) === value;
  return (SCALES[unit ?? ''] ?? [1]).some((scale) => roundsTo(printed, value * scale));
}

/** Numbers of index.md that no figure of their own section states, in their own unit. */
export function unfoundNumbers(index: string, rows: readonly NotesRow[]): NumberToken[] {
  return numberTokens(index).filter(
    ({ text, section, unit }) =>
      !rows.some(
        (row) =>
          row.id.startsWith(`${section}.`) &&
          (unit === null || row.value === null || row.unit === unit) &&
          states(row, text),
      ),
  );
}
