import {
  CONDITION_UNCERTAINTY,
  computeOtherFeed,
  type FeedWater,
  feedWater,
  RANGE_END_LIMIT,
} from '../analyse/other-feed/index.ts';
import { BenchError, type Finding, finding, place } from '../findings/index.ts';
import { type Bench, SOLIDS } from '../model/index.ts';
import { variantNames } from '../normalise/index.ts';
import { fingerprintOf } from '../read/index.ts';
import type { Outcome } from '../report/index.ts';
import { otherFeedViews } from '../report/views/index.ts';
import { benchReductions } from './bench-facts.ts';
import {
  benchOutcome,
  doneResult,
  filterSettings,
  refusedResult,
  stampOf,
} from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { quantitySetting } from './quantity-setting.ts';
import { readBench } from './read-bench.ts';
import { type FeedFile, readFeed } from './read-feed.ts';
import { reductionSettings } from './reduction-settings.ts';

export interface OtherFeedOptions extends Filters {
  /** Volume the devices are to have treated, as written: `300 L`. */
  readonly throughput?: string | null;
}

/**
 * Bounds of the product water of each device with another feed: rows of `other-feed/1`.
 *
 * @param bench a bench without errors
 * @param feed as `readFeed` gives it, without errors
 * @throws {BenchError} filter-unknown, feed-not-common, the problem of `throughput`
 * @example otherFeed(bench, readFeed(bench, 'hill-town.csv'), { devices: ['tankless-a'] }).rows
 */
export function otherFeed(bench: Bench, feed: FeedFile, options: OtherFeedOptions = {}): Outcome {
  if (feed.sample === null) throw new RangeError('the feed file has errors');
  const keep = checkFilters(bench, options);
  const throughput = options.throughput ?? null;
  const throughputL =
    throughput === null ? null : quantitySetting(bench, throughput, 'volume', '--throughput');
  const water = feedWater(bench, feed.results, feed.sample.index);
  const { facts, findings } = benchReductions(bench);
  const tested = facts.flatMap((fact) => (fact.row.outcome === 'untested' ? [] : fact.row.analyte));
  if (!water.analytes.some(({ analyte }) => tested.includes(analyte.key))) {
    throw nothingInCommon(feed);
  }
  const states = bench.tables.devices.flatMap(({ values: { device } }) =>
    variantNames(bench.tables, device).map((variant) => ({ device, variant })),
  );
  const all = computeOtherFeed(bench, facts, water, states, throughputL);
  const kept = all.filter(
    ({ row }) => keep.keepsDevice(row.device, row.variant) && keep.keepsAnalyte(row.analyte),
  );
  const inputs = [...bench.inputs, ...feed.inputs].sort((a, b) => (a.path < b.path ? -1 : 1));
  const stated = { ph: water.ph, solids: solidsStated(bench, water) };
  return {
    ...benchOutcome(bench, {
      schema: 'other-feed/1',
      settings: {
        ...reductionSettings(bench),
        feed_file: feed.path,
        feed_sample: feed.sample.name,
        feed_ph: water.ph,
        feed_solids: stated.solids,
        throughput_L: throughputL,
        ...METHOD,
        ...filterSettings(options),
      },
      rows: kept.map(({ row }) => row),
      findings: [...findings, ...feed.findings, ...conditionNotes(water, feed)],
      views: otherFeedViews(kept, {
        sample: feed.sample.name,
        file: feed.path,
        ...stated,
        throughputL,
      }),
    }),
    inputs,
    bench: { ...stampOf(bench), fingerprint: fingerprintOf(inputs) },
  };
}

/** Every method behind the bounds, beyond those of the reductions. */
const METHOD = {
  product: 'other feed x (1 - reduction), end by end',
  passage: 'lowest to highest of all events of the device, state and analyte with an upper bound',
  feed_uncertainty:
    'stated by the lab, else assumed: Horwitz-Thompson between laboratories, in full',
  tested_feed: `figures reach as far as their uncertainty, ${RANGE_END_LIMIT} of the figure at most; of an interval only what is certain`,
  tested_ph: `as measured, and ${CONDITION_UNCERTAINTY.ph} beyond`,
  tested_tds: `as measured with its uncertainty, ${CONDITION_UNCERTAINTY.solidsAtMost} of the figure at most`,
  beyond_tested: 'refused, without any further tolerance',
  joint_confidence: 'feed and passage each at the confidence above; both hold together less often',
} as const;

function nothingInCommon(feed: FeedFile): BenchError {
  return new BenchError(
    'feed-not-common',
    'the feed file and the bench have no tested analyte in common',
    'give the analysis of a feed with analytes that the reductions of the bench list',
    place({ file: feed.path }),
  );
}

/** Dissolved solids as the feed states them, in words. */
function solidsStated(
  bench: Bench,
  water: FeedWater,
): { key: string; value: number; unit: string }[] {
  return SOLIDS.flatMap((key) => {
    const value = water.solids.get(key);
    const unit = bench.analytes.byKey(key)?.unit;
    return value === undefined || unit === undefined ? [] : [{ key, value, unit }];
  });
}

/** One note for each condition the feed does not state: then nothing can be shown to be inside. */
function conditionNotes(water: FeedWater, feed: FeedFile): Finding[] {
  const missing = [
    ...(water.ph === null ? ['its pH'] : []),
    ...(water.solids.size === 0 ? ['its dissolved solids or conductivity'] : []),
  ];
  return missing.map((what) =>
    finding(
      'feed-condition-missing',
      `the other feed does not state ${what} as one figure, so no device is shown to be tested at it`,
      'measure it in that feed and add it to the file',
      place({ file: feed.path }),
    ),
  );
}

export async function run(call: Call): Promise<CommandResult> {
  const folder = argument(call, 0);
  const { devices, variants, analytes, feed: file, feedSample, throughput } = call.options;
  const bench = readBench(folder);
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  if (file === null) throw new RangeError('the call names no feed file');
  const feed = readFeed(bench, file, { sample: feedSample, benchFolder: folder });
  // Notes on a file that cannot be used would only hide what is wrong with it.
  const errors = feed.findings.filter(({ level }) => level === 'error');
  if (errors.length > 0) return { outcome: null, findings: errors, written: [], end: 'done' };
  return doneResult(otherFeed(bench, feed, { devices, variants, analytes, throughput }));
}
