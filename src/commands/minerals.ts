import { computeMinerals } from '../analyse/minerals/index.ts';
import { type Bench, type MineralRow, STANDARD } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { mineralsViews } from '../report/views/minerals-view.ts';
import { benchReductions } from './bench-facts.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { type CheckedFilters, checkFilters, type Filters } from './filters.ts';
import { readBench } from './read-bench.ts';

/**
 * What each water keeps of its minerals, gains from a mineral stage and may corrode: rows of
 * `minerals/1`.
 *
 * Filters by device keep the feeds that serve it; filters by analyte keep rows of that quantity.
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 * @example minerals(readBench('samples/fourteen-devices'), { devices: ['tankless-c'] }).rows
 */
export function minerals(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const reductions = benchReductions(bench);
  const { rows, findings } = computeMinerals(bench, reductions.facts);
  const events = eventsOf(rows, keep);
  const kept = rows.filter((row) => isKept(row, keep, events));
  return benchOutcome(bench, {
    schema: 'minerals/1',
    settings: { ...mineralSettings(bench), ...filterSettings(filters) },
    rows: kept,
    findings,
    views: mineralsViews(kept, deviceNames(bench)),
  });
}

/** Events of the devices asked for, each with its kind. */
function eventsOf(rows: readonly MineralRow[], keep: CheckedFilters): ReadonlySet<string> {
  return new Set(
    rows.flatMap((row) =>
      row.device !== null && keep.keepsDevice(row.device, row.variant ?? STANDARD)
        ? [eventKey(row)]
        : [],
    ),
  );
}

function eventKey({ event, kind }: MineralRow): string {
  return `${kind}\t${event ?? ''}`;
}

function isKept(row: MineralRow, keep: CheckedFilters, events: ReadonlySet<string>): boolean {
  if (!keep.keepsAnalyte(row.quantity)) return false;
  return row.device === null
    ? events.has(eventKey(row))
    : keep.keepsDevice(row.device, row.variant ?? STANDARD);
}

function deviceNames(bench: Bench): ReadonlyMap<string, string> {
  return new Map(
    bench.tables.devices.map(({ values }) => [values.device, values.name ?? values.device]),
  );
}

/** Every setting and method the rows depend on. */
function mineralSettings(bench: Bench): Record<string, unknown> {
  const { nondetect_bound, cross_lab, confidence } = bench.settings;
  return {
    nondetect_bound,
    cross_lab,
    confidence,
    guidance: 'published guidance, not a requirement; judged on the interval of the figure',
    gains: 'interval arithmetic over the limits of the true values on both sides',
    other_devices: 'products of the event of the same technology without a mineral stage',
    rejection: 'ions of which the product is not shown to lie above the water before the stage',
    indices: {
      langelier: 'logarithmic form, from dissolved solids, temperature, calcium and alkalinity',
      ryznar: 'logarithmic form',
      saturation: 'equilibrium form, constants of Plummer & Busenberg (1982), without ion pairs',
      precipitation_potential: 'closed system, positive precipitates',
      bounds: 'corners of the intervals; null where the index turns within them',
      below_range: 'calcium below 1 mg/L or alkalinity below 2.5 mg/L as CaCO3 possible',
    },
  };
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  return refusedResult(bench) ?? doneResult(minerals(bench, call.options));
}
