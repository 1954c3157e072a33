import { type Bench, STANDARD } from '../../model/index.ts';
import type { WaterUseFact } from '../water-use.ts';
import type { KnownAmount } from './known-amount.ts';
import { energyKWh } from './ownership.ts';

const DAYS_PER_YEAR = 365;
const HOURS_PER_YEAR = 8760;

/**
 * Energy of a device in a year of a scenario, kWh, by the power of its states.
 *
 * Producing lasts as long as the pours, or of a tank as its refills; flushing as long as the mean
 * measured flush of each rule. The rest is standby. What has hours and no power figure is not
 * counted, which makes the sum a lower bound.
 * @returns null where energy.csv says nothing of the device: not measured is not zero
 */
export function energyUse(bench: Bench, fact: WaterUseFact): KnownAmount | null {
  const { device, variant } = fact.row;
  const rows = bench.tables.energy.filter(({ values }) => values.device === device);
  if (rows.length === 0) return null;
  const power = (state: 'standby' | 'producing' | 'flushing'): number | null => {
    const of = (name: string) =>
      rows.find(({ values }) => values.state === state && (values.variant ?? STANDARD) === name);
    return (of(variant) ?? of(STANDARD))?.values.power.value ?? null;
  };
  const producing = producingHours(fact);
  const flushing = flushingHours(bench, fact);
  const states = [
    { powerW: power('producing'), hours: producing },
    { powerW: power('flushing'), hours: flushing },
  ];
  const standbyW = power('standby');
  const busyHours = (producing ?? 0) + (flushing ?? 0);
  const isWhole =
    standbyW !== null &&
    states.every(({ powerW, hours }) => hours === 0 || (powerW !== null && hours !== null));
  const known = states.flatMap(({ powerW, hours }) =>
    hours === null ? [] : { powerW: powerW ?? 0, hours },
  );
  if (busyHours > HOURS_PER_YEAR) return null;
  return { value: energyKWh(HOURS_PER_YEAR, standbyW ?? 0, known), isWhole };
}

/** Hours a year in which clean water is made; null where the flow is not known. */
function producingHours({ simulated, tank, scenario, drain }: WaterUseFact): number | null {
  const perYear = DAYS_PER_YEAR / scenario.days / 3600;
  if (tank !== null) return tank.fillingS * perYear;
  if (simulated === null || drain.hasTank || drain.flow === null) return null;
  return ((simulated.cleanL * 60) / drain.flow.flowLPerMin) * perYear;
}

/** Hours a year of flushing; null where a flush that ran was never timed. */
function flushingHours(bench: Bench, { simulated, scenario, row }: WaterUseFact): number | null {
  if (simulated === null) return null;
  let seconds = 0;
  for (const [rule, count] of Object.entries(simulated.flushCounts)) {
    if (count === 0) continue;
    const timed = bench.tables.flushes.flatMap(({ values }) =>
      values.device === row.device && values.rule === rule ? (values.duration?.value ?? []) : [],
    );
    if (timed.length === 0) return null;
    seconds += (count * timed.reduce((sum, each) => sum + each, 0)) / timed.length;
  }
  return (seconds * DAYS_PER_YEAR) / scenario.days / 3600;
}
