import { printable, printableLines } from './printable.ts';
import type { View } from './view.ts';

/**
 * Text as it is, whatever it holds, inside a Markdown paragraph, list item or table cell: it can
 * become neither HTML, link, emphasis, code nor a further cell.
 *
 * Reserved signs are escaped. A web address and a mail address keep their look and are broken for
 * the readers that would link them by themselves. Line breaks become spaces.
 *
 * Source: CommonMark 0.31.2, sections 2.4 and 2.5; GitHub Flavored Markdown 0.29, sections 4.10
 * (tables) and 6.9 (addresses).
 *
 * @example escapeMarkdown('a|b <c>') // 'a\\|b &lt;c&gt;'
 */
export function escapeMarkdown(text: string): string {
  return printable(text)
    .replace(/[\\`*_[\]|~$]/g, '\\$&')
    .replace(/[&<>]/g, (sign) => ENTITIES[sign] ?? sign)
    .replace(/:(?=\/\/)/g, '\\:')
    .replace(/\bwww(?=\.)/gi, '$&\\')
    .replace(/@(?=\w)/g, '@&NoBreak;');
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };

/**
 * The same at the start of a line, where `#`, `-`, `+`, `=` or `1.` would open a heading, a list
 * or a rule.
 *
 * @example escapeMarkdownLine('1. not a list') // '1\\. not a list'
 */
export function escapeMarkdownLine(text: string): string {
  return escapeMarkdown(text.trim())
    .replace(/^[#+=-]/, '\\$&')
    .replace(/^(\d+)([.)])/, '$1\\$2');
}

/**
 * Views as Markdown tables: caption in bold, table with an alignment row, legend as a list.
 *
 * @returns empty for no views; otherwise ends with a line break
 */
export function markdownTables(views: readonly View[]): string {
  const blocks = views.map(markdownTable).filter((block) => block !== '');
  return blocks.length === 0 ? '' : `${blocks.join('\n\n')}\n`;
}

function markdownTable(view: View): string {
  const caption = escapeMarkdown(view.caption.trim());
  const parts = [
    caption === '' ? '' : `**${caption}**`,
    view.columns.length === 0 ? '' : tableText(view),
    view.rows.length === 0 ? 'No rows.' : '',
    view.legend.map((line) => `- ${escapeMarkdownLine(line)}`).join('\n'),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function tableText(view: View): string {
  const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const heads = view.columns.map((column) => escapeMarkdown(column.head));
  const marks = view.columns.map((column) => (column.align === 'right' ? '---:' : '---'));
  const rows = view.rows.map((cells) => {
    if (cells.length > heads.length) {
      throw new RangeError(`${cells.length} cells in ${heads.length} columns: ${view.caption}`);
    }
    return row(heads.map((_, i) => cellText(cells[i] ?? '')));
  });
  return [row(heads), row(marks), ...rows].join('\n');
}

function cellText(text: string): string {
  return printableLines(text).map(escapeMarkdown).join('<br>');
}
