import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace, type PlacedRow, type Quantity } from '../../model/index.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** Drinking water at a tap or in a room; outside, a unit or a digit is wrong. */
const WATER_C = [0.1, 45] as const;

/** A cool box or a warm van. */
const PARCEL_C = [-20, 45] as const;

/**
 * Feed pressure of a household, kPa gauge: 10 to 145 psi. 60 written without its psi and read as kPa
 * falls below. Common practice, no source.
 */
const FEED_KPA = [69, 1000] as const;

/** Pressure of a storage tank or its air, kPa gauge: up to 100 psi. Common practice, no source. */
const TANK_KPA = [0, 690] as const;

/** Temperatures and pressures of every log that no household has in the unit they are read in. */
export function conditionFindings(view: SampleResults): Finding[] {
  const { pours, drainRuns, idleTds, bottles, tanks } = view.bench.tables;
  return [
    ...[...pours, ...drainRuns].flatMap((row) => [
      ...temperature(row, 'temperature', row.values.temperature, WATER_C),
      ...pressure(row, 'pressure', row.values.pressure, FEED_KPA),
    ]),
    ...drainRuns.flatMap((row) => [
      ...tankLevel(row, 'tank_before', row.values.tank_before),
      ...tankLevel(row, 'tank_after', row.values.tank_after),
    ]),
    ...idleTds.flatMap((row) => temperature(row, 'temperature', row.values.temperature, WATER_C)),
    ...bottles.flatMap((row) =>
      temperature(row, 'receipt_temperature', row.values.receipt_temperature, PARCEL_C),
    ),
    ...tanks.flatMap((row) => [
      ...pressure(row, 'precharge', row.values.precharge, TANK_KPA),
      ...pressure(row, 'stop', row.values.stop, TANK_KPA),
      ...pressure(row, 'restart', row.values.restart, TANK_KPA),
      ...pressure(row, 'feed_pressure', row.values.feed_pressure, FEED_KPA),
      ...restartAboveStop(row),
    ]),
    ...labTemperatures(view),
  ];
}

function isOutside(value: number, [least, most]: readonly [number, number]): boolean {
  return value < least || value > most;
}

function temperature(
  row: PlacedRow,
  field: string,
  quantity: Quantity | null,
  range: readonly [number, number],
): Finding[] {
  if (quantity === null || !isOutside(quantity.value, range)) return [];
  return [implausibleTemperature(`"${quantity.text}"`, quantity.value, cellPlace(row, field))];
}

function implausibleTemperature(
  text: string,
  celsius: number,
  at: ReturnType<typeof cellPlace>,
): Finding {
  return finding(
    'temperature-implausible',
    `${text} is ${shortNumber(celsius)} °C, which such water does not have`,
    'check the unit (C or F) and the digits',
    at,
  );
}

function pressure(
  row: PlacedRow,
  field: string,
  quantity: Quantity | null,
  range: readonly [number, number],
): Finding[] {
  if (quantity === null || quantity.value === 0 || !isOutside(quantity.value, range)) return [];
  return [
    finding(
      'pressure-implausible',
      `"${quantity.text}" is ${shortNumber(quantity.value)} kPa, or ` +
        `${shortNumber(quantity.value / 6.894757)} psi, which a household does not have`,
      'check the unit (psi, kPa or bar) and the digits',
      cellPlace(row, field),
    ),
  ];
}

function tankLevel(row: PlacedRow, field: string, quantity: Quantity | null): Finding[] {
  return quantity?.dimension === 'pressure' ? pressure(row, field, quantity, TANK_KPA) : [];
}

function restartAboveStop(
  row: {
    readonly values: { readonly stop: Quantity | null; readonly restart: Quantity | null };
  } & PlacedRow,
): Finding[] {
  const { stop, restart } = row.values;
  if (stop === null || restart === null || restart.value < stop.value) return [];
  return [
    finding(
      'tank-pressures-order',
      `the tank restarts at ${restart.text} and stops at ${stop.text}: it would never stop`,
      'exchange the two, or correct them',
      cellPlace(row, 'restart'),
    ),
  ];
}

/** Temperatures that a lab reports among its results. */
function labTemperatures(view: SampleResults): Finding[] {
  const analyte = view.analyteNamed('temperature');
  if (analyte === -1) return [];
  return view.samples.flatMap((row, sample) => {
    const index = isUsable(row) ? view.find(sample, analyte) : -1;
    const celsius = index === -1 ? null : view.value(index);
    if (celsius === null || !isOutside(celsius, WATER_C)) return [];
    return implausibleTemperature(`"${view.result(index).text}"`, celsius, view.place(index));
  });
}
