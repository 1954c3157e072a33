import { BenchError, placeText } from '../findings/index.ts';
import { type Bench, type BenchRow, cellPlace, type Recording } from '../model/index.ts';
import { type PourGroup, type PourSeries, scenarioPours } from '../simulate/index.ts';

const DAY_S = 86_400;

/** A pattern of pours that every device is played through. */
export interface WaterScenario {
  readonly name: string;
  /** Where it comes from, for provenance. */
  readonly source: string;
  readonly days: number;
  readonly endS: number;
  /** Seconds after local midnight at power-on. */
  readonly clockAtStartS: number;
  /** The pours for a device of this flow; L/min, null when the flow is not known. */
  pours(cleanFlowLPerMin: number | null): PourSeries;
}

/**
 * The scenarios of a bench: those of scenarios.csv in their order, then the recordings.
 *
 * A generated scenario runs for `scenario_days` from 00:00 of a Monday. A recording runs from its
 * power-on to its end, or from 00:00 of its first day to 24:00 of its last.
 */
export function waterScenarios(bench: Bench, seed: number): WaterScenario[] {
  const names = [...new Set(bench.tables.scenarios.map((row) => row.values.scenario))];
  const generated = names.map((name) => generatedScenario(bench, name, seed));
  return [...generated, ...bench.recordings.map(recordedScenario)];
}

function generatedScenario(bench: Bench, name: string, seed: number): WaterScenario {
  const rows = bench.tables.scenarios.filter((row) => row.values.scenario === name);
  const days = bench.settings.scenario_days;
  const groups = rows.map(pourGroup);
  return {
    name,
    source: 'scenarios.csv',
    days,
    endS: days * DAY_S,
    clockAtStartS: 0,
    pours: (flow) =>
      scenarioPours(groups, { days, seed, ...(flow === null ? {} : { cleanFlowLPerMin: flow }) }),
  };
}

function pourGroup(row: BenchRow<'scenarios'>): PourGroup {
  const { weekdays, window, pours_per_day, volume_each, spread } = row.values;
  return {
    weekdays,
    fromS: window.fromS,
    toS: window.toS,
    poursPerDay: pours_per_day,
    volumeL: volume_each.value,
    spread: spread ?? 'even',
  };
}

function recordedScenario(recording: Recording): WaterScenario {
  const { rows } = recording;
  const times = rows.map((row) => row.values.at.seconds);
  const first = times[0] ?? 0;
  const last = times.at(-1) ?? 0;
  const startS = rows[0]?.values.what === 'power-on' ? first : Math.floor(first / DAY_S) * DAY_S;
  const stopS = rows.at(-1)?.values.what === 'end' ? last : (Math.floor(last / DAY_S) + 1) * DAY_S;
  const pours = rows.filter((row) => (row.values.what ?? 'pour') === 'pour');
  const series = {
    atS: Float64Array.from(pours, (row) => row.values.at.seconds - startS),
    volumeL: Float64Array.from(pours, (row) => row.values.volume?.value ?? 0),
  };
  return {
    name: recording.scenario,
    source: recording.path,
    days: (stopS - startS) / DAY_S,
    endS: stopS - startS,
    clockAtStartS: ((startS % DAY_S) + DAY_S) % DAY_S,
    pours: (flow) => {
      refuseOverlap(pours, series, flow);
      return series;
    },
  };
}

/** In a recording an overlap means that a time or a volume is wrong: it is named by its row. */
function refuseOverlap(
  rows: readonly BenchRow<'usage'>[],
  series: PourSeries,
  flow: number | null,
): void {
  if (flow === null) return;
  for (let index = 1; index < series.atS.length; index += 1) {
    const endS = (series.atS[index - 1] ?? 0) + ((series.volumeL[index - 1] ?? 0) / flow) * 60;
    const row = rows[index];
    const earlier = rows[index - 1];
    if (row === undefined || earlier === undefined) continue;
    if (endS > (series.atS[index] ?? 0) + 1e-6) {
      throw new BenchError(
        'pours-overlap',
        `the pour starts before the one of ${placeText(cellPlace(earlier))} has ended ` +
          `(at ${Number(flow.toPrecision(3))} L/min it takes ` +
          `${Math.ceil(endS - (series.atS[index - 1] ?? 0))} s)`,
        'correct the times or the volumes of the recording',
        cellPlace(row, 'at'),
      );
    }
  }
}
