import { BenchError } from '../findings/index.ts';
import type { Bench, BenchRow, Recording } from '../model/index.ts';
import {
  type DaysAway,
  type PourGroup,
  type PourSeries,
  randomStream,
  scenarioPours,
  scenarioYears,
} from '../simulate/index.ts';
import { overlapsOf, recordedPours } from './recorded-overlaps.ts';

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
  /** True where some pours come at random, so that no two years are alike. */
  readonly isRandom: boolean;
  /** Groups of pours as they are generated; null for a recording. */
  readonly groups: readonly PourGroup[] | null;
  /** The pours for a device of this flow; L/min, null when the flow is not known. */
  pours(cleanFlowLPerMin: number | null): PourSeries;
  /**
   * Further years of the same household, drawn into the same columns again and again.
   * @param groups pours to generate instead of the scenario's; a recording has none
   */
  years(groups?: readonly PourGroup[]): PlayableYears;
}

export interface PlayableYears {
  /**
   * Draws a year.
   * @param year a whole number from 0, each with random pours of its own; or YEAR_OF_ESTIMATES
   * @param pourFactor every pour is this many times as large
   */
  draw(year: number, pourFactor: number): void;
  /** The year last drawn, for a device of this flow; filled anew by the next call. */
  pours(cleanFlowLPerMin: number | undefined): PourSeries;
}

/** The year that `pours` gives, and so that every estimate rests on. */
export const YEAR_OF_ESTIMATES = -1;

/** Name of the scenario that a number of people makes, unless the bench has one of that name. */
export const PEOPLE_SCENARIO = 'people';

/** A glass, L: an assumption, as no distribution of pour sizes at a filtered tap is published. */
const GLASS_L = 0.25;

/** Streams of one year: more than any scenario has groups. */
const STREAMS_OF_YEAR = 1024;

/**
 * The scenarios of a bench: those of scenarios.csv in their order, that of `people` where bench.json
 * says how many live there, then the recordings.
 *
 * A generated scenario runs for `scenario_days` from 00:00 of a Monday, without the days away. A
 * recording runs from its power-on to its end, or from 00:00 of its first day to 24:00 of its last.
 *
 * The scenario `people`: glasses of 250 mL at random from 07:00 to 22:00, as many as make people ×
 * `litres_per_person`; 0.927 L per person and day unless set.
 * Source: US EPA (2000), Estimated Per Capita Water Ingestion in the United States,
 *   EPA-822-R-00-008, mean of all ages, direct and indirect; the glass and its hours are assumptions.
 */
export function waterScenarios(bench: Bench, seed: number): WaterScenario[] {
  const names = namesIn(bench);
  const generated = names.map((name) => {
    const rows = bench.tables.scenarios.filter((row) => row.values.scenario === name);
    return generatedScenario(bench, name, 'scenarios.csv', rows.map(pourGroup), seed);
  });
  const people = hasPeople(bench)
    ? generatedScenario(bench, PEOPLE_SCENARIO, 'bench.json', [peopleGroup(bench)], seed)
    : [];
  return [...generated, people, bench.recordings.map(recordedScenario)].flat();
}

/** Names of the scenarios of a bench, in the order of `waterScenarios`. */
export function scenarioNames(bench: Bench): string[] {
  return [
    ...namesIn(bench),
    ...(hasPeople(bench) ? [PEOPLE_SCENARIO] : []),
    ...bench.recordings.map(({ scenario }) => scenario),
  ];
}

function namesIn(bench: Bench): string[] {
  return [...new Set(bench.tables.scenarios.map((row) => row.values.scenario))];
}

function hasPeople(bench: Bench): boolean {
  const isTaken =
    namesIn(bench).includes(PEOPLE_SCENARIO) ||
    bench.recordings.some(({ scenario }) => scenario === PEOPLE_SCENARIO);
  return bench.settings.people !== undefined && !isTaken;
}

function peopleGroup(bench: Bench): PourGroup {
  const litres = (bench.settings.people ?? 0) * bench.settings.water_use.litres_per_person;
  return {
    weekdays: Array<boolean>(7).fill(true),
    fromS: 7 * 3600,
    toS: 22 * 3600,
    poursPerDay: litres / GLASS_L,
    volumeL: GLASS_L,
    spread: 'random',
  };
}

function generatedScenario(
  bench: Bench,
  name: string,
  source: string,
  groups: readonly PourGroup[],
  seed: number,
): WaterScenario {
  const days = bench.settings.scenario_days;
  const away = daysAway(bench, name);
  return {
    name,
    source,
    days,
    endS: days * DAY_S,
    clockAtStartS: 0,
    isRandom: groups.some((group) => group.spread === 'random' && group.poursPerDay > 0),
    groups,
    pours: (flow) =>
      scenarioPours(groups, {
        days,
        seed,
        away,
        ...(flow === null ? {} : { cleanFlowLPerMin: flow }),
      }),
    years: (other = groups) => {
      const years = scenarioYears(other, { days, away });
      return {
        draw: (year, pourFactor) =>
          years.draw(
            (group) => randomStream(seed, (year + 1) * STREAMS_OF_YEAR + group),
            pourFactor,
          ),
        pours: years.pours,
      };
    },
  };
}

function daysAway(bench: Bench, scenario: string): DaysAway[] {
  return bench.settings.water_use.away.flatMap(({ from_day, days, scenario: only }) =>
    only === undefined || only === scenario ? { fromDay: from_day, days } : [],
  );
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
  const pours = recordedPours(rows);
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
    isRandom: false,
    groups: null,
    pours: (flow) => {
      const [overlap] = flow === null ? [] : overlapsOf(pours, flow);
      if (overlap !== undefined) {
        throw new BenchError(overlap.code, overlap.message, overlap.remedy, overlap.place);
      }
      return series;
    },
    years: () => recordedYears(series),
  };
}

/** A recording with every pour larger or smaller; a pour then waits for the end of the one before. */
function recordedYears(recorded: PourSeries): PlayableYears {
  const scaled = { atS: recorded.atS.slice(), volumeL: recorded.volumeL.slice() };
  let factor = 1;
  return {
    draw: (_year, pourFactor) => {
      factor = pourFactor;
    },
    pours: (flow) => {
      const secondsPerL = flow === undefined ? 0 : 60 / flow;
      let freeS = 0;
      for (let index = 0; index < scaled.atS.length; index++) {
        const startS = Math.max(recorded.atS[index] as number, freeS);
        const pourL = (recorded.volumeL[index] as number) * factor;
        scaled.atS[index] = startS;
        scaled.volumeL[index] = pourL;
        freeS = startS + pourL * secondsPerL;
      }
      return scaled;
    },
  };
}
