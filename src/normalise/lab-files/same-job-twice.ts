import { type Finding, finding, place } from '../../findings/index.ts';
import type { ResultTable } from '../../model/index.ts';

/** From this share of equal figures on, two files are exports of one job. */
const EQUAL_SHARE = 0.5;

/**
 * Pairs of lab files that report the same lab numbers with mostly the same figures: two exports of
 * one job, or a report and its correction. They are refused and never merged, since such exports
 * have been seen to differ in limits and in figures.
 *
 * @param labSamples the lab numbers of each file, in the order of the files
 */
export function sameJobTwice(
  table: ResultTable,
  labSamples: readonly ReadonlySet<string>[],
): Finding[] {
  const findings: Finding[] = [];
  for (let a = 0; a < table.files.length; a += 1) {
    for (let b = a + 1; b < table.files.length; b += 1) {
      const [first, second] = [labSamples[a], labSamples[b]];
      if (first === undefined || second === undefined) continue;
      if (![...first].some((number) => second.has(number))) continue;
      const found = overlap(table, a, b);
      if (found.both === 0 || found.equal < found.both * EQUAL_SHARE) continue;
      findings.push(
        finding(
          'lab-job-twice',
          `${found.both} results stand in ${table.files[a]?.path} as well, ${found.equal} of them ` +
            `with the same figure`,
          'keep the export that counts in lab/ and take the other one out',
          place({ file: table.files[b]?.path ?? null }),
        ),
      );
    }
  }
  return findings;
}

function overlap(table: ResultTable, a: number, b: number): { both: number; equal: number } {
  const keyOf = (row: number): string => `${table.sample[row]}|${table.analyte[row]}`;
  const inFirst = new Map<string, number>();
  for (let row = 0; row < table.length; row += 1) {
    if (table.file[row] === a) inFirst.set(keyOf(row), row);
  }
  let both = 0;
  let equal = 0;
  for (let row = 0; row < table.length; row += 1) {
    if (table.file[row] !== b) continue;
    const other = inFirst.get(keyOf(row));
    if (other === undefined) continue;
    both += 1;
    if (figureOf(table, row) === figureOf(table, other)) equal += 1;
  }
  return { both, equal };
}

/** What was found, without the limits, in which such exports differ most. */
function figureOf(table: ResultTable, row: number): string {
  const result = table.distinct[table.result[row] ?? -1];
  if (result === undefined) return '';
  return result.kind === 'quantified' ? `quantified ${result.value}` : result.kind;
}
