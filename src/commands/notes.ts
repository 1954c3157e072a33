import { uncertifiedInFeed } from '../analyse/claims/index.ts';
import { drainCurves, hasCurve, pourFlows } from '../analyse/index.ts';
import { BenchError, hasErrors } from '../findings/index.ts';
import type { Bench, CostRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { composeNotes, type NotesOutcomes } from '../report/notes/index.ts';
import { benchComparisons, benchReductions, benchSpread, benchWaterUse } from './bench-facts.ts';
import { filterSettings, refusedResult } from './bench-outcome.ts';
import { check } from './check.ts';
import { claims, keptUncertified } from './claims.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { allMeasures, compare } from './compare.ts';
import { costs, costsOverTime } from './costs.ts';
import { filterLife } from './filter-life.ts';
import { checkFilters } from './filters.ts';
import { idleRise } from './idle-rise.ts';
import { minerals } from './minerals.ts';
import { panel } from './panel.ts';
import { pours } from './pours.ts';
import { readBench } from './read-bench.ts';
import { readClaims } from './read-claims.ts';
import { reductions } from './reductions.ts';
import { spikes } from './spikes.ts';
import { logReductions, sums } from './sums.ts';
import { marginOf, toldApartGroups } from './tell-apart.ts';
import { toldProgress, untold } from './told-progress.ts';
import {
  breakEvens,
  drainRegions,
  drawCount,
  seedOf,
  type WaterUseOptions,
  waterCurve,
  waterUse,
} from './water-use.ts';

export interface NotesOptions extends WaterUseOptions {
  /** Version of the tool, for provenance. */
  readonly version: string;
}

/** The pours whose number a day is told in the notes. */
const DAILY = {
  pours: ['250 ml'],
  poursPerDay: ['1', '2', '4', '8', '16'],
  randomPours: true,
} as const;

/** Parts of the work, by how far the whole is when they are done; measured on a bench of fourteen. */
const DONE = {
  spread: 0.2,
  reductions: 0.3,
  curves: 0.4,
  regions: 0.6,
  costs: 0.7,
  compare: 0.9,
} as const;

/**
 * What the notes rest on: each command's outcome, with those filters that the command knows. Yields
 * the done part between commands.
 */
function* outcomesWork(
  bench: Bench,
  options: WaterUseOptions,
): Generator<{ readonly done: number }, NotesOutcomes> {
  const { devices = [], variants = [], analytes = [], scenarios = [] } = options;
  const { seed = null, draws = null } = options;
  const states = { devices, variants };
  const played = { ...states, scenarios, seed, draws };
  checkFilters(bench, options);
  for (const step of stepsOf(benchSpread(bench, seedOf(bench, played), drawCount(bench, played)))) {
    yield { done: step.done * DONE.spread };
  }
  const kept = { ...states, analytes };
  const reduced = {
    reductions: reductions(bench, kept),
    sums: sums(bench, kept),
    logReductions: logReductions(bench, kept),
    filterLife: filterLife(bench, kept),
    spikes: spikes(bench, kept),
  };
  yield { done: DONE.reductions };
  const curves = {
    waterUse: waterUse(bench, played),
    waterCurve: waterCurve(bench, played),
    dailyCurve: waterCurve(bench, { ...played, ...DAILY }),
    breakEven: breakEvens(bench, played),
  };
  yield { done: DONE.curves };
  const regions = {
    regions: drainRegions(bench, played),
    regionsByForm: regionsByForm(bench, played),
  };
  yield { done: DONE.regions };
  const costRows = costs(bench, played);
  yield { done: DONE.costs };
  const compared = {
    compare: compare(bench, { ...played, analytes }),
    toldApartGroups: toldApartGroups(bench, { ...states, analytes }),
  };
  yield { done: DONE.compare };
  return {
    ...reduced,
    ...curves,
    ...regions,
    pours: pours(bench, states),
    claims: claims(bench, { ...states, analytes }),
    minerals: minerals(bench, { ...states, analytes }),
    idleRise: idleRise(bench, played),
    panel: panel(bench, { devices }),
    costs: costRows,
    costOverTime: costsOverTime(bench, firstScenario(costRows), { ...states, seed, draws }),
    ...compared,
    check: check(bench),
  };
}

/** The steps of work whose result is looked up later. */
function* stepsOf<Step>(work: Generator<Step, unknown>): Generator<Step> {
  yield* work;
}

/** Regions among the devices of each form that has several with a curve, where forms differ. */
function regionsByForm(bench: Bench, options: WaterUseOptions): NotesOutcomes['regionsByForm'] {
  const wanted = options.devices ?? [];
  const { drains } = benchWaterUse(bench, seedOf(bench, options));
  const known = drainCurves(drains)
    .curves.filter(hasCurve)
    .map(({ drain }) => drain.device.values)
    .filter(({ device }) => wanted.length === 0 || wanted.includes(device));
  const forms = [...new Set(known.map(({ form }) => form))];
  if (forms.length < 2) return [];
  return forms.flatMap((form) => {
    const own = known.filter((values) => values.form === form);
    const devices = [...new Set(own.map(({ device }) => device))];
    return devices.length < 2
      ? []
      : { form, outcome: drainRegions(bench, { ...options, devices }) };
  });
}

/** The scenario that the costs are told on: the first one of the bench that is kept. */
function firstScenario({ rows }: Outcome): string | null {
  return (rows as readonly CostRow[]).find(({ scenario }) => scenario !== null)?.scenario ?? null;
}

/**
 * The notes on a bench: Markdown, tables, charts and data, as texts by path.
 *
 * Filters limit what is shown; they change no figure.
 *
 * @param bench a bench without errors
 * @returns paths below the folder of the notes, with `/`
 * @throws {BenchError} filter-unknown
 * @example
 * const files = await notes(readBench('samples/first-bench'), { version: '0.1.0' });
 * files.get('index.md');
 */
export async function notes(bench: Bench, options: NotesOptions): Promise<Map<string, string>> {
  return compose(bench, options, untold(outcomesWork(bench, options)));
}

async function compose(
  bench: Bench,
  options: NotesOptions,
  outcomes: NotesOutcomes,
): Promise<Map<string, string>> {
  const keep = checkFilters(bench, options);
  const use = benchWaterUse(bench, seedOf(bench, options));
  const { facts } = benchReductions(bench);
  const wanted = options.devices ?? [];
  return composeNotes({
    bench,
    version: options.version,
    filters: filterSettings(options),
    outcomes,
    devices: bench.tables.devices
      .map(({ values }) => values.device)
      .filter((device) => wanted.length === 0 || wanted.includes(device)),
    reductions: facts.filter(
      ({ row }) => keep.keepsDevice(row.device, row.variant) && keep.keepsAnalyte(row.analyte),
    ),
    summaries: allMeasures(bench, options).measures.flatMap(({ row, reduction }) =>
      reduction !== null &&
      keep.keepsDevice(row.device, row.variant) &&
      keep.keepsAnalyte(reduction.analyte.key)
        ? reduction
        : [],
    ),
    comparisons: benchComparisons(bench, marginOf(bench, {})),
    uncertified: keptUncertified(uncertifiedInFeed(bench, readClaims(bench).claims, facts), keep),
    waterUse: {
      ...use,
      drains: use.drains.filter((drain) =>
        keep.keepsDevice(drain.device.values.device, drain.variant),
      ),
      facts: use.facts.filter(
        ({ row }) => keep.keepsDevice(row.device, row.variant) && keep.keepsScenario(row.scenario),
      ),
    },
    curves: drainCurves(use.drains).curves.filter(({ drain }) =>
      keep.keepsDevice(drain.device.values.device, drain.variant),
    ),
    flows: pourFlows(bench).flows.filter((flow) => keep.keepsDevice(flow.device, flow.variant)),
    keepsAnalyte: (key) => keep.keepsAnalyte(key),
  });
}

export async function run(call: Call): Promise<CommandResult> {
  const source = argument(call, 0);
  const { folder, force } = call.options;
  if (folder === null) {
    throw new BenchError(
      'argument-missing',
      'notes needs a folder to write to',
      'name it with `-o <folder>`',
    );
  }
  const bench = readBench(source);
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  await call.io.progress('computing');
  const outcomes = await toldProgress(call.io, 'computing', outcomesWork(bench, call.options));
  const findings = distinctFindings(outcomes);
  if (hasErrors(findings)) return { outcome: null, findings, written: [], end: 'done' };
  await call.io.progress('composing the notes');
  const files = await compose(bench, { ...call.options, version: call.version }, outcomes);
  await call.io.progress('writing');
  const { writeFolder } = await import('../report/write-output.ts');
  await writeFolder(folder, files, {
    marker: {
      file: '.pourbench-notes',
      tool: 'pourbench',
      version: call.version,
      schema: 'notes/1',
    },
    force,
    protect: [source],
  });
  return { outcome: null, findings, written: [folder], end: 'done' };
}

/** Every finding of any of the outcomes, once. */
function distinctFindings(outcomes: NotesOutcomes): CommandResult['findings'] {
  const all = Object.values(outcomes).flatMap((outcome: NotesOutcomes[keyof NotesOutcomes]) =>
    'findings' in outcome ? outcome.findings : [],
  );
  return [
    ...new Map(
      all.map((each) => [JSON.stringify([each.code, each.message, each.place]), each]),
    ).values(),
  ];
}
