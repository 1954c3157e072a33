import { BenchError } from '../../findings/index.ts';

/** A part that is replaced again and again. */
export interface ReplacedPart {
  /** Price of one replacement, all pieces changed together. */
  readonly price: number;
  /** Years from one replacement to the next, above 0. */
  readonly intervalYears: number;
}

/** What owning a device costs. All amounts are in one currency. */
export interface Ownership {
  readonly purchase: number;
  readonly parts: readonly ReplacedPart[];
  /** Water, sewer and energy of a year. */
  readonly runningPerYear: number;
  readonly years: number;
  /** Rate per year, 0.03 is 3 %. */
  readonly discountRate: number;
}

export interface OwnershipCost {
  /** Parts worn by use: price over interval times years. */
  readonly partsProRata: number;
  /** Parts bought within the years, whole. */
  readonly partsBought: number;
  readonly running: number;
  readonly totalProRata: number;
  readonly totalBought: number;
  /** Of the purchases as they fall due; running costs at the end of each year. */
  readonly presentValue: number;
}

/** Years nearer than this are one moment; a quotient of lengths of time carries rounding. */
const SAME_MOMENT_YEARS = 1e-9;

/**
 * Years at which a part is bought again.
 *
 * The first set belongs to the purchase of the device, and none is bought exactly at the end:
 * ceil(years/interval) - 1 purchases.
 * @throws {BenchError} cost-input for an interval that is not above 0
 * @example replacementYears(0.5, 5).length // 9
 */
export function replacementYears(intervalYears: number, years: number): number[] {
  if (!(intervalYears > 0)) refuse(`a part lasts ${intervalYears} years`);
  const times: number[] = [];
  for (let count = 1; count * intervalYears < years - SAME_MOMENT_YEARS; count++) {
    times.push(count * intervalYears);
  }
  return times;
}

/**
 * Years from one replacement to the next: the earlier of time and capacity.
 *
 * @param lastsYears how long the part lasts; null: not stated
 * @param capacityL litres of clean water it treats; null: not stated
 * @param litresPerYear clean water of a year; null: not known
 * @returns null where nothing that is known limits it
 * @example replacementInterval(0.5, 4000, 1352) // 0.5
 */
export function replacementInterval(
  lastsYears: number | null,
  capacityL: number | null,
  litresPerYear: number | null,
): number | null {
  const byCapacity =
    capacityL === null || litresPerYear === null || litresPerYear === 0
      ? null
      : capacityL / litresPerYear;
  if (lastsYears === null || byCapacity === null) return lastsYears ?? byCapacity;
  return Math.min(lastsYears, byCapacity);
}

/**
 * Present value of payments, compounded once a year.
 *
 * @param payments each with its moment in years from now
 * @throws {BenchError} cost-input for a rate that is not a number from 0
 * @example presentValue([{ atYears: 1, amount: 105 }], 0.05) // 100
 */
export function presentValue(
  payments: readonly { readonly atYears: number; readonly amount: number }[],
  rate: number,
): number {
  if (!(rate >= 0 && rate < Infinity)) refuse(`the discount rate is ${rate}`);
  return payments.reduce((sum, { atYears, amount }) => sum + amount / (1 + rate) ** atYears, 0);
}

/**
 * Cost of a device over its years, with parts by wear and with whole purchases.
 *
 * The two differ by up to one set of parts. Source: definitions.
 * @throws {BenchError} cost-input
 * Checked by: tests/outside-checks/physics/
 */
export function ownershipCost(input: Ownership): OwnershipCost {
  const { purchase, parts, runningPerYear, years, discountRate } = input;
  if (!(years > 0 && years < Infinity)) refuse(`the horizon is ${years} years`);
  const bought = parts.flatMap(({ price, intervalYears }) =>
    replacementYears(intervalYears, years).map((atYears) => ({ atYears, amount: price })),
  );
  const partsProRata = parts.reduce(
    (sum, { price, intervalYears }) => sum + (price / intervalYears) * years,
    0,
  );
  const partsBought = bought.reduce((sum, { amount }) => sum + amount, 0);
  const running = runningPerYear * years;
  const bills = Array.from({ length: Math.ceil(years - SAME_MOMENT_YEARS) }, (_, year) => {
    const atYears = Math.min(year + 1, years);
    return { atYears, amount: runningPerYear * (atYears - year) };
  });
  return {
    partsProRata,
    partsBought,
    running,
    totalProRata: purchase + partsProRata + running,
    totalBought: purchase + partsBought + running,
    presentValue: presentValue(
      [{ atYears: 0, amount: purchase }, ...bought, ...bills],
      discountRate,
    ),
  };
}

/**
 * Energy of a year, kWh.
 *
 * @param hoursOfPeriod hours of the whole period, 8,760 for a year of 365 days
 * @param states power in W and hours of every state but standby
 * @throws {BenchError} cost-input where the states fill more than the period
 * @example energyKWh(8760, 2, [{ powerW: 60, hours: 12 }]) // 18.216
 */
export function energyKWh(
  hoursOfPeriod: number,
  standbyW: number,
  states: readonly { readonly powerW: number; readonly hours: number }[],
): number {
  const busy = states.reduce((sum, { hours }) => sum + hours, 0);
  if (!(busy <= hoursOfPeriod)) refuse(`the device runs ${busy} of ${hoursOfPeriod} hours`);
  const running = states.reduce((sum, { powerW, hours }) => sum + powerW * hours, 0);
  return (standbyW * (hoursOfPeriod - busy) + running) / 1000;
}

function refuse(what: string): never {
  throw new BenchError('cost-input', what, 'check horizon, lifetimes, discount rate and hours');
}
