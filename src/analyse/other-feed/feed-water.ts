import { type Bench, type ResultTable, SOLIDS } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { hasReduction } from '../reduction-pairs.ts';
import { joinResults, type Side } from '../reduction-side.ts';
import { resultUncertainties } from '../uncertainty/index.ts';

/** The analysis of a feed that is no sample of the bench. */
export interface FeedWater {
  /** In the order of the file: every analyte that a device can reduce. */
  readonly analytes: readonly { readonly analyte: Analyte; readonly side: Side }[];
  /** Null where it was not measured, or is no single figure. */
  readonly ph: number | null;
  /** Dissolved solids and conductivity, canonical units, where they are single figures. */
  readonly solids: ReadonlyMap<string, number>;
}

/**
 * One sample of a feed file, with the uncertainty of each result.
 *
 * What the lab states is taken. Otherwise the scatter between laboratories is assumed in full, not
 * the share of it that feed and product of one batch have: whoever analysed this feed need not be
 * the laboratory of the bench, and its error does not cancel in any ratio.
 * @param results of the file; its analytes are those of the bench's index
 * @param sample index of the sample
 */
export function feedWater(bench: Bench, results: ResultTable, sample: number): FeedWater {
  const { settings, tables } = bench;
  const uncertainty = { ...settings.uncertainty, repeatability_fraction: 1 };
  const own: Bench = {
    ...bench,
    results,
    tables: { ...tables, samples: [] },
    settings: { ...settings, uncertainty },
  };
  const uncertaintyOf = resultUncertainties(own);
  const found = new Map<Analyte, number[]>();
  for (let index = 0; index < results.length; index += 1) {
    const analyte = results.analytes[results.analyte[index] ?? -1];
    if (results.sample[index] !== sample || analyte === undefined) continue;
    found.set(analyte, [...(found.get(analyte) ?? []), index]);
  }
  const all = [...found].flatMap(([analyte, indices]) => {
    const side = joinResults(own, indices, 'mean', uncertaintyOf);
    return side === null ? [] : [{ analyte, side }];
  });
  const figure = (key: string): number | null =>
    all.find(({ analyte }) => analyte.key === key)?.side.estimate ?? null;
  return {
    analytes: all.filter(({ analyte }) => hasReduction(analyte)),
    ph: figure('ph'),
    solids: new Map(
      SOLIDS.flatMap((key) => {
        const value = figure(key);
        return value === null ? [] : [[key, value] as const];
      }),
    ),
  };
}
