import { type Bench, resultAt, type SampleRow, STANDARD } from '../../model/index.ts';

/** The analyte that stands for all that is dissolved. */
const SOLIDS = 'total-dissolved-solids';

/** A mean over samples, and how many went in. */
export interface MeanSolids {
  readonly mgPerL: number;
  readonly n: number;
}

/**
 * Mean of the quantified dissolved solids of natural feed samples, mg/L.
 *
 * Spiked feeds are another water; void samples, duplicates and what was not quantified stay out.
 * @param device feeds of this device and of none in particular
 * @returns null where no feed was tested for them
 */
export function feedSolids(bench: Bench, device: string): MeanSolids | null {
  return meanSolids(
    bench,
    ({ values }) =>
      values.position === 'feed' && (values.device === null || values.device === device),
  );
}

/** Mean of the quantified dissolved solids of a device's product in one state, mg/L. */
export function productSolids(bench: Bench, device: string, variant: string): MeanSolids | null {
  return meanSolids(
    bench,
    ({ values }) =>
      values.position === 'product' &&
      values.device === device &&
      (values.variant ?? STANDARD) === variant,
  );
}

function meanSolids(bench: Bench, isWanted: (row: SampleRow) => boolean): MeanSolids | null {
  const { results } = bench;
  const analyte = results.analytes.findIndex(({ key }) => key === SOLIDS);
  if (analyte < 0) return null;
  let sum = 0;
  let n = 0;
  for (let index = 0; index < results.length; index++) {
    if (results.analyte[index] !== analyte) continue;
    const row = bench.tables.samples[results.sample[index] ?? -1];
    if (row === undefined || !isNatural(row) || !isWanted(row)) continue;
    const result = resultAt(results, index);
    if (result.kind !== 'quantified') continue;
    sum += result.value;
    n += 1;
  }
  return n === 0 ? null : { mgPerL: sum / n, n };
}

function isNatural({ values }: SampleRow): boolean {
  return values.status !== 'void' && values.kind !== 'spiked' && values.of === null;
}
