import type { BenchRow, SampleRow } from '../model/index.ts';

/**
 * Finds the sample of a lab row.
 *
 * Where bottles.csv names the lab file, its lab numbers lead to the samples. Without such rows the
 * lab's number is the sample itself. The client's name of the sample serves only where the lab's
 * number leads nowhere and the name is exactly a sample.
 */
export function sampleLookup(
  stem: string,
  samples: readonly SampleRow[],
  bottles: readonly BenchRow<'bottles'>[],
): (labSample: string, clientSample: string) => number {
  const bySample = new Map(samples.map((row, index) => [row.values.sample, index]));
  const byBottle = new Map(
    bottles
      .filter((row) => row.values.lab === stem)
      .map((row) => [row.values.lab_sample, bySample.get(row.values.sample) ?? -1]),
  );
  return (labSample, clientSample) =>
    byBottle.get(labSample) ??
    (byBottle.size === 0 ? bySample.get(labSample) : undefined) ??
    bySample.get(clientSample) ??
    -1;
}
