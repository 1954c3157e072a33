import { type Bench, STANDARD } from '../../model/index.ts';
import type { WaterUseFact } from '../water-use.ts';
import type { KnownAmount } from './known-amount.ts';
import { energyKWh } from './ownership.ts';

const DAYS_PER_YEAR = 365;
const HOURS_PER_YEAR = 8760;

/** What a device did over a scenario. */
export interface DeviceTimes {
  readonly cleanL: number;
  /** Seconds of filling a described tank; null without one. */
  readonly fillingS: number | null;
  /** Executed flushes by rule. */
  readonly flushCounts: Readonly<Record<string, number>>;
}

/**
 * Energy of a device in a year of a scenario, kWh, by the power of its states.
 *
 * Producing lasts as long as the pours, or of a tank as its refills; flushing as long as the mean
 * measured flush of each rule. The rest is standby. What has hours and no power figure is not
 * counted, which makes the sum a lower bound.
 * @returns null where energy.csv says nothing of the device: not measured is not zero
 */
export function energyUse(bench: Bench, fact: WaterUseFact): KnownAmount | null {
  return energyOf(bench, fact)(timesOf(fact));
}

/** The same for any times, with what the bench says of the device looked up once. */
export function energyOf(
  bench: Bench,
  fact: WaterUseFact,
): (times: DeviceTimes | null) => KnownAmount | null {
  const { device, variant } = fact.row;
  const rows = bench.tables.energy.filter(({ values }) => values.device === device);
  if (rows.length === 0) return () => null;
  const power = (state: 'standby' | 'producing' | 'flushing'): number | null => {
    const of = (name: string) =>
      rows.find(({ values }) => values.state === state && (values.variant ?? STANDARD) === name);
    return (of(variant) ?? of(STANDARD))?.values.power.value ?? null;
  };
  const [standbyW, producingW, flushingW] = [
    power('standby'),
    power('producing'),
    power('flushing'),
  ];
  const secondsOf = flushSeconds(bench, device);
  const perYear = DAYS_PER_YEAR / fact.scenario.days / 3600;
  return (times) => {
    const producing = times === null ? null : producingHours(fact, times, perYear);
    const flushing = times === null ? null : flushingHours(times, secondsOf, perYear);
    const states = [
      { powerW: producingW, hours: producing },
      { powerW: flushingW, hours: flushing },
    ];
    const isWhole =
      standbyW !== null &&
      states.every(({ powerW, hours }) => hours === 0 || (powerW !== null && hours !== null));
    const known = states.flatMap(({ powerW, hours }) =>
      hours === null ? [] : { powerW: powerW ?? 0, hours },
    );
    if ((producing ?? 0) + (flushing ?? 0) > HOURS_PER_YEAR) return null;
    return { value: energyKWh(HOURS_PER_YEAR, standbyW ?? 0, known), isWhole };
  };
}

function timesOf({ simulated, tank }: WaterUseFact): DeviceTimes | null {
  if (simulated === null) return null;
  const { cleanL, flushCounts } = simulated;
  return { cleanL, fillingS: tank?.fillingS ?? null, flushCounts };
}

/** Hours a year in which clean water is made; null where the flow is not known. */
function producingHours(
  { drain }: WaterUseFact,
  { cleanL, fillingS }: DeviceTimes,
  perYear: number,
): number | null {
  if (fillingS !== null) return fillingS * perYear;
  if (drain.hasTank || drain.flow === null) return null;
  return ((cleanL * 60) / drain.flow.flowLPerMin) * perYear;
}

/** Mean seconds of a measured flush by rule; rules that were never timed are left out. */
function flushSeconds(bench: Bench, device: string): Map<string, number> {
  const timed = new Map<string, number[]>();
  for (const { values } of bench.tables.flushes) {
    if (values.device !== device || values.duration === null) continue;
    const own = timed.get(values.rule) ?? [];
    timed.set(values.rule, [...own, values.duration.value]);
  }
  return new Map(
    [...timed].map(([rule, each]) => [rule, each.reduce((sum, s) => sum + s, 0) / each.length]),
  );
}

/** Hours a year of flushing; null where a flush that ran was never timed. */
function flushingHours(
  { flushCounts }: DeviceTimes,
  secondsOf: ReadonlyMap<string, number>,
  perYear: number,
): number | null {
  let seconds = 0;
  for (const [rule, count] of Object.entries(flushCounts)) {
    if (count === 0) continue;
    const each = secondsOf.get(rule);
    if (each === undefined) return null;
    seconds += count * each;
  }
  return seconds * perYear;
}
