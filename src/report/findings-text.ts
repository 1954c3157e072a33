import { type Finding, type Level, placeText, sortFindings } from '../findings/index.ts';
import { printable } from './printable.ts';
import { PLAIN_STYLE, type Style } from './style.ts';

/** How many findings a command prints when it has something else to print. */
export const FINDINGS_SHOWN = 20;

const LEVELS: readonly Level[] = ['error', 'warning', 'note'];

/**
 * Findings as a person reads them, two lines each, then their number.
 *
 * ```
 * lab/july.csv:14:6: error unit-unknown: "ugl" is not a known unit
 *   remedy: write ug/L, or name the unit in lab/july.layout.json
 * ```
 *
 * They stand in reading order. Where there are more than `limit`, the gravest are kept, so that no
 * error hides behind notes.
 *
 * @param options.limit how many to print, null for all
 * @returns empty for no findings; otherwise ends with a line break
 */
export function findingsText(
  findings: readonly Finding[],
  options: { readonly limit?: number | null; readonly style?: Style } = {},
): string {
  const { limit = FINDINGS_SHOWN, style = PLAIN_STYLE } = options;
  if (findings.length === 0) return '';
  const shown = limit === null ? sortFindings(findings) : gravest(findings, limit);
  const lines = shown.map((each) => findingText(each, style));
  return `${[...lines, countText(findings, shown.length)].join('\n')}\n`;
}

/** One finding in two lines, without a line break at the end. */
export function findingText(each: Finding, style: Style = PLAIN_STYLE): string {
  const where = printable(placeText(each.place));
  const head = `${style.level(each.level, each.level)} ${each.code}: ${printable(each.message)}`;
  const remedy = style.faint(`remedy: ${printable(each.remedy)}`);
  return `${where === '' ? '' : `${style.strong(where)}: `}${head}\n  ${remedy}`;
}

function gravest(findings: readonly Finding[], limit: number): Finding[] {
  const ordered = sortFindings(findings);
  if (ordered.length <= limit) return ordered;
  const byLevel = LEVELS.flatMap((level) => ordered.filter((each) => each.level === level));
  const kept = new Set(byLevel.slice(0, limit));
  return ordered.filter((each) => kept.has(each));
}

function countText(findings: readonly Finding[], shown: number): string {
  const counts = LEVELS.map((level) => {
    const count = findings.filter((each) => each.level === level).length;
    return { level, count };
  }).filter(({ count }) => count > 0);
  const parts = counts.map(({ level, count }) => `${count} ${level}${count === 1 ? '' : 's'}`);
  const total = findings.length;
  const all = `${total} finding${total === 1 ? '' : 's'} (${parts.join(', ')})`;
  return shown === total ? all : `${all}; ${shown} shown, check prints them all`;
}
