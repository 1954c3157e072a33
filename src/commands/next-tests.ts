import {
  testPackages as choosePackages,
  nextTests as chooseTests,
  EXACT_QUESTIONS,
  feedOfBench,
  feedOfFile,
  limitsOfBench,
  type MarginPlan,
  type PlanInput,
  plannedBench,
  testPlan as planRows,
  samplesOf,
  type TestQuestion,
  testQuestions,
} from '../analyse/next-tests/index.ts';
import { type Finding, finding, hasErrors } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import { fingerprintOf } from '../read/index.ts';
import type { Outcome } from '../report/index.ts';
import {
  type NameOf,
  nextTestsViews,
  testPackagesViews,
  testPlanViews,
} from '../report/views/index.ts';
import {
  benchOutcome,
  doneResult,
  filterSettings,
  refusedResult,
  stampOf,
} from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { readMargin } from './margin-setting.ts';
import { readBudget, readCount, readShare, readWanted } from './next-tests-options.ts';
import { feedWindowS } from './quantity-setting.ts';
import { readBench } from './read-bench.ts';
import { readClaims } from './read-claims.ts';
import { type FeedFile, readFeed } from './read-feed.ts';
import { type PriceFile, readPrices } from './read-prices.ts';
import { reductionSettings } from './reduction-settings.ts';

/** Filters choose the devices and analytes that are planned for. */
export interface NextTestsOptions extends Filters {
  /** As `readPrices` gives it, without errors; null: nothing is told by money. */
  readonly prices?: PriceFile | null;
  /** As `readFeed` gives it, without errors; null: the natural feed of the bench. */
  readonly feed?: FeedFile | null;
  /** Reductions to be shown, such as `lead=99 %`; empty: what the claims ask for. */
  readonly wanted?: readonly string[];
  /** Difference of two devices to be told, `5 %` or `1.5x`; null: the margin of the bench. */
  readonly margin?: string | null;
  /** Chance of telling it; null: 80 %. */
  readonly power?: string | null;
  /** An amount of money such as `500 USD`; null: no limit. */
  readonly budget?: string | null;
  /** Sampling events to pay for; null: 1. */
  readonly events?: number | null;
  /** Product samples of each device at each event; null: 1. */
  readonly replicates?: number | null;
}

/** The power that is common in planning tests; common practice, no source. */
const USUAL_POWER = 0.8;

/**
 * Which sample to pay for next: rows of `next-tests/1`, the best for its money first.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown, or the problem of an option
 * @example nextTests(bench, { prices: readPrices(bench, 'samples/lab-prices.csv') }).rows
 */
export function nextTests(bench: Bench, options: NextTestsOptions = {}): Outcome {
  const setting = settingOf(bench, options);
  const keep = checkFilters(bench, options);
  const rows = chooseTests({
    bench,
    windowS: feedWindowS(bench),
    claims: setting.claims,
    planned: setting.input.planned,
    questions: setting.input.questions,
    feeds: setting.input.feeds,
    ownLimits: setting.input.ownLimits,
    prices: setting.input.prices,
    budget: setting.budget,
    keeps: ({ device, variant, analyte }) =>
      keep.keepsDevice(device, variant) && (analyte === null || keep.keepsAnalyte(analyte)),
  });
  return outcome(bench, options, setting, {
    schema: 'next-tests/1',
    settings: {
      value: 'open verdicts settled, judged anew with the planned results among the others',
      planned_results: 'figures as they were, under the limits of the price list',
      order: 'most verdicts for money (without prices: for a sample), feeds shared within a row',
      open: 'claims open or on assumed uncertainty, contradictions not confirmed, apparent rises, wanted reductions not decided, reductions the feed could not show, levels below a limit',
      budget: setting.budget,
    },
    rows,
    findings: setting.findings,
    views: nextTestsViews(rows, setting.input.prices, namesOf(bench)),
  });
}

/**
 * What can be shown before a sample is taken: rows of `test-plan/1`, one for each question and lab.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown, or the problem of an option
 */
export function testPlan(bench: Bench, options: NextTestsOptions = {}): Outcome {
  const setting = settingOf(bench, options);
  const rows = planRows(setting.input);
  const { margin } = setting.input;
  return outcome(bench, options, setting, {
    schema: 'test-plan/1',
    settings: {
      margin: margin.margin,
      power: margin.power,
      devices: setting.input.devices,
      replicates: 'two-sample t test, two-sided; all pairs: level over their number (Bonferroni)',
      feed_needed: 'smallest feed whose printed lower bound reaches the target, three digits',
    },
    rows,
    findings: setting.findings,
    views: testPlanViews(
      rows,
      { ...margin, confidence: bench.settings.confidence },
      namesOf(bench),
    ),
  });
}

/**
 * The cheapest lab packages that answer the questions: rows of `test-packages/1`.
 *
 * @param bench a bench without errors
 * @returns without a price list no rows, and a finding that says so
 * @throws {BenchError} filter-unknown, or the problem of an option
 */
export function testPackages(bench: Bench, options: NextTestsOptions = {}): Outcome {
  const setting = settingOf(bench, options);
  const size = {
    devices: setting.input.devices,
    events: readCount(options.events ?? null, '--events'),
    replicates: readCount(options.replicates ?? null, '--replicates'),
  };
  const isPriced = setting.input.prices !== null;
  const chosen = isPriced ? choosePackages(setting.input, size, setting.budget) : null;
  const rows = chosen?.rows ?? [];
  return outcome(bench, options, setting, {
    schema: 'test-packages/1',
    settings: {
      ...size,
      samples: samplesOf(size),
      budget: setting.budget,
      method: chosen?.cover.method ?? null,
      exact_up_to: EXACT_QUESTIONS,
      total_cost: chosen?.cover.cost ?? null,
      cost_at_least: chosen?.cover.costAtLeast ?? null,
      answered: chosen?.cover.answered.length ?? 0,
      answered_at_most: chosen?.cover.answeredAtMost ?? null,
    },
    rows,
    findings: setting.findings,
    views: testPackagesViews(rows, chosen, setting.input.prices, setting.budget, {
      nameOf: namesOf(bench),
      unitOf: (key) => bench.analytes.byKey(key)?.unit ?? '',
    }),
  });
}

interface Setting {
  readonly input: PlanInput;
  readonly claims: ReturnType<typeof readClaims>['claims'];
  readonly budget: number | null;
  readonly findings: readonly Finding[];
}

function settingOf(bench: Bench, options: NextTestsOptions): Setting {
  const keep = checkFilters(bench, options);
  const { claims, findings } = readClaims(bench);
  const prices = options.prices?.list ?? null;
  const feed = options.feed ?? null;
  const feeds =
    feed === null || feed.sample === null
      ? feedOfBench(bench)
      : feedOfFile(feed.results, feed.sample);
  const found = [...feeds.values()].flatMap(({ analyte, result }) =>
    result.kind === 'notDetected' || analyte.kind !== 'contaminant' ? [] : analyte,
  );
  const devices = bench.tables.devices.filter(({ values }) =>
    keep.keepsDevice(values.device, 'standard'),
  );
  const kept = (question: TestQuestion): boolean => keep.keepsAnalyte(question.analyte.key);
  const margin: MarginPlan = {
    margin:
      options.margin == null
        ? { kind: 'points', value: bench.settings.equivalence_margin }
        : readMargin(options.margin),
    power: options.power == null ? USUAL_POWER : readShare(options.power, '--power'),
  };
  const asking = claims.filter(({ row }) => keep.keepsDevice(row.values.device, 'standard'));
  const wanted = (options.wanted ?? []).map((text) => readWanted(bench, text));
  return {
    input: {
      planned: plannedBench(bench),
      questions: testQuestions(wanted, asking, found).filter(kept),
      feeds,
      ownLimits: limitsOfBench(bench),
      prices,
      devices: devices.length,
      margin,
    },
    claims,
    budget: options.budget == null ? null : readBudget(options.budget, prices),
    findings: [
      ...findings,
      ...(options.prices?.findings ?? []),
      ...(feed?.findings ?? []),
      ...withoutPrices(prices === null),
    ],
  };
}

/** Names of analytes by key. */
function namesOf(bench: Bench): NameOf {
  return (key) => bench.analytes.byKey(key)?.name ?? key;
}

function withoutPrices(isMissing: boolean): Finding[] {
  return isMissing
    ? [
        finding(
          'prices-not-given',
          'without the prices of laboratories nothing is told by money, and no packages are chosen',
          'name a price list with --prices <file>',
        ),
      ]
    : [];
}

/** The outcome, with the price list and the feed file among its inputs. */
function outcome(
  bench: Bench,
  options: NextTestsOptions,
  setting: Setting,
  parts: Parameters<typeof benchOutcome>[1],
): Outcome {
  const extra = [
    ...(options.prices == null ? [] : [options.prices.input]),
    ...(options.feed?.inputs ?? []),
  ];
  const inputs = [...bench.inputs, ...extra].sort((a, b) => (a.path < b.path ? -1 : 1));
  const { devices = [], variants = [], analytes = [] } = options;
  const settings = {
    ...reductionSettings(bench),
    prices: setting.input.prices?.path ?? null,
    currency: setting.input.prices?.currency ?? null,
    feed_file: options.feed?.path ?? null,
    feed_sample: options.feed?.sample?.name ?? null,
    feed_of_bench: 'natural feed of the event with most product samples that holds the analyte',
    wanted: options.wanted ?? [],
    ...parts.settings,
    ...filterSettings({ devices, variants, analytes }),
  };
  return {
    ...benchOutcome(bench, { ...parts, settings }),
    inputs,
    bench: { ...stampOf(bench), fingerprint: fingerprintOf(inputs) },
  };
}

export async function run(call: Call): Promise<CommandResult> {
  const folder = argument(call, 0);
  const bench = readBench(folder);
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  const { options, io } = call;
  const prices = options.prices === null ? null : readPrices(bench, options.prices);
  const feed =
    options.feed === null
      ? null
      : readFeed(bench, options.feed, { sample: options.feedSample, benchFolder: folder });
  const found = [...(prices?.findings ?? []), ...(feed?.findings ?? [])];
  if (hasErrors(found)) return { outcome: null, findings: found, written: [], end: 'done' };
  const asked = { ...options, prices, feed };
  if (options.plan) return doneResult(testPlan(bench, asked));
  if (options.packages) return doneResult(testPackages(bench, asked));
  await io.progress('judging what one more sample would settle');
  return doneResult(nextTests(bench, asked));
}
