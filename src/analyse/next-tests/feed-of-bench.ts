import { type Bench, type LabResult, type ResultTable, resultAt } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { joinResults } from '../reduction-side.ts';
import { resultUncertainties } from '../uncertainty/index.ts';
import { type LabTerms, repeatedResult } from './planned-figure.ts';

/** What the feed of a planned test is taken to hold. */
export interface PlannedFeed {
  readonly analyte: Analyte;
  readonly result: LabResult;
  /** The event, or the sample of a feed file, that it was measured in. */
  readonly source: string;
}

/** The feed as a lab would print it again. */
export function feedAt({ result }: PlannedFeed, terms: LabTerms): LabResult {
  return repeatedResult(result, terms, 'feed');
}

/**
 * The natural feed of a bench, analyte by analyte.
 *
 * An analyte is taken from the event with the most valid product samples among those whose feed holds
 * a result of it, the later one where two have equally many: the water of the campaign, not of a side
 * test. Several feed samples of that event are averaged.
 */
export function feedOfBench(bench: Bench): Map<string, PlannedFeed> {
  const uncertaintyOf = resultUncertainties(bench);
  const feeds = new Map<string, PlannedFeed>();
  for (const [event, samples] of naturalFeeds(bench)) {
    for (const [at, indices] of resultsOf(bench, samples)) {
      const analyte = bench.results.analytes[at];
      if (analyte === undefined || feeds.has(analyte.key)) continue;
      const side = joinResults(bench, indices, 'mean', uncertaintyOf);
      const first = indices[0];
      if (side === null || first === undefined) continue;
      const only = resultAt(bench.results, first);
      const result =
        indices.length > 1 && side.estimate !== null && only.kind === 'quantified'
          ? { ...only, value: side.estimate }
          : only;
      feeds.set(analyte.key, { analyte, result, source: event });
    }
  }
  return feeds;
}

/** The feed that one sample of a feed file holds. */
export function feedOfFile(
  results: ResultTable,
  sample: { readonly name: string; readonly index: number },
): Map<string, PlannedFeed> {
  const feeds = new Map<string, PlannedFeed>();
  for (let index = 0; index < results.length; index += 1) {
    const analyte = results.analytes[results.analyte[index] ?? -1];
    const result = resultAt(results, index);
    if (results.sample[index] !== sample.index || analyte === undefined) continue;
    if (result.kind !== 'missing' && !feeds.has(analyte.key)) {
      feeds.set(analyte.key, { analyte, result, source: sample.name });
    }
  }
  return feeds;
}

/** Feed samples by event, the event of the campaign first. */
function naturalFeeds(bench: Bench): [string, number[]][] {
  const events = new Map<string, { readonly feeds: number[]; products: number; last: number }>();
  for (const [index, { values }] of bench.tables.samples.entries()) {
    const { event, position, kind, of, status } = values;
    if (event === null || kind === 'spiked' || of !== null || status === 'void') continue;
    const own = events.get(event) ?? { feeds: [], products: 0, last: index };
    events.set(event, own);
    own.last = index;
    if (position === 'feed') own.feeds.push(index);
    if (position === 'product') own.products += 1;
  }
  return [...events]
    .sort(([, a], [, b]) => b.products - a.products || b.last - a.last)
    .map(([event, { feeds }]) => [event, feeds]);
}

function resultsOf(bench: Bench, samples: readonly number[]): Map<number, number[]> {
  const { results } = bench;
  const byAnalyte = new Map<number, number[]>();
  for (let index = 0; index < results.length; index += 1) {
    if (!samples.includes(results.sample[index] ?? -1)) continue;
    if (resultAt(results, index).kind === 'missing') continue;
    const analyte = results.analyte[index] ?? -1;
    const indices = byAnalyte.get(analyte) ?? [];
    byAnalyte.set(analyte, indices);
    indices.push(index);
  }
  return byAnalyte;
}

/**
 * The limits at which the labs of a bench reported an analyte: those of its last result with a limit,
 * as the order of the files has it.
 * @returns null where no result of it states a limit
 */
export function limitsOfBench(bench: Bench): Map<string, LabTerms> {
  const { results } = bench;
  const terms = new Map<string, LabTerms>();
  for (let index = 0; index < results.length; index += 1) {
    const analyte = results.analytes[results.analyte[index] ?? -1];
    const result = resultAt(results, index);
    const limit = result.rl ?? result.mdl;
    if (analyte === undefined || limit === null || !(limit > 0)) continue;
    const stated = result.kind === 'quantified' ? result.standardUncertainty : null;
    terms.set(analyte.key, {
      limit,
      detectionLimit: result.rl === null ? null : result.mdl,
      uncertainty:
        stated !== null && result.kind === 'quantified' && result.value > 0
          ? stated / result.value
          : null,
    });
  }
  return terms;
}
