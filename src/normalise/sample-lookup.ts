import type { BenchRow, SampleRow } from '../model/index.ts';

/** The index of the sample of a lab row, by the lab's number and the client's name; -1 if unknown. */
export type SampleLookup = (labSample: string, clientSample: string) => number;

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
): SampleLookup {
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

/**
 * The same with what a sidecar or a second file of the job adds: names by the lab's number, which
 * lead where number and name of the row lead nowhere. An alias goes before everything else.
 */
export function sampleLookupWith(
  lookup: SampleLookup,
  aliases: ReadonlyMap<string, string>,
  names: ReadonlyMap<string, string>,
): SampleLookup {
  if (aliases.size === 0 && names.size === 0) return lookup;
  return (labSample, clientSample) => {
    const alias = aliases.get(labSample) ?? aliases.get(clientSample);
    if (alias !== undefined) return lookup('', alias);
    const direct = lookup(labSample, clientSample);
    const listed = names.get(labSample);
    return direct === -1 && listed !== undefined
      ? lookup('', aliases.get(listed) ?? listed)
      : direct;
  };
}
