import { type Finding, finding, place } from '../../findings/index.ts';
import { type ResultTable, resultAt } from '../../model/index.ts';

/** From this share of equal figures on, two files are exports of one job. */
const EQUAL_SHARE = 0.5;
/** So many figures have to be compared; below that, every cell and limit has to be equal. */
const ENOUGH = 3;

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
      if (!isSameJob(found)) continue;
      findings.push(
        finding(
          'lab-job-twice',
          `${found.both} results stand in ${table.files[a]?.path} as well; ` +
            `${found.equal} of ${found.figures} figures are the same`,
          'keep the export that counts in lab/ and take the other one out',
          place({ file: table.files[b]?.path ?? null }),
        ),
      );
    }
  }
  return findings;
}

interface Overlap {
  /** Results of one sample and analyte in both files. */
  readonly both: number;
  /** Those quantified in both, and those of them with the same figure. */
  readonly figures: number;
  readonly equal: number;
  /** Results that agree in text and limits as well. */
  readonly identical: number;
}

/** Two labs may both find nothing in a sample, so that only figures tell; without any, everything has to agree. */
function isSameJob({ both, figures, equal, identical }: Overlap): boolean {
  if (figures >= ENOUGH) return equal >= figures * EQUAL_SHARE;
  return both > 0 && identical === both;
}

function overlap(table: ResultTable, a: number, b: number): Overlap {
  const keyOf = (row: number): string => `${table.sample[row]}|${table.analyte[row]}`;
  const inFirst = new Map<string, number>();
  for (let row = 0; row < table.length; row += 1) {
    if (table.file[row] === a) inFirst.set(keyOf(row), row);
  }
  const counts = { both: 0, figures: 0, equal: 0, identical: 0 };
  for (let row = 0; row < table.length; row += 1) {
    const other = table.file[row] === b ? inFirst.get(keyOf(row)) : undefined;
    if (other === undefined) continue;
    const [first, second] = [resultAt(table, other), resultAt(table, row)];
    counts.both += 1;
    const isSame = first.text === second.text && first.mdl === second.mdl && first.rl === second.rl;
    if (isSame) counts.identical += 1;
    if (first.kind !== 'quantified' || second.kind !== 'quantified') continue;
    counts.figures += 1;
    if (first.value === second.value) counts.equal += 1;
  }
  return counts;
}
