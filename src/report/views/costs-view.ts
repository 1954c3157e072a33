import type { CostRow, Spread } from '../../model/index.ts';
import { decimalOf, decimalText, leadingPower, type Rounding, roundDecimal } from '../decimal.ts';
import { atMostDigits, significant } from '../format-number.ts';
import type { View } from '../view.ts';

const NOT_KNOWN = 'not known';

/** One table a scenario, then each device from its cheapest to its dearest scenario. */
export function costsViews(rows: readonly CostRow[], ranges: readonly CostRow[]): View[] {
  const scenarios = [...new Set(rows.map((row) => row.scenario ?? ''))];
  return [
    ...scenarios.map((name) =>
      scenarioView(
        name,
        rows.filter((row) => row.scenario === name),
      ),
    ),
    ...(scenarios.length > 1 && ranges.length > 0 ? [rangeView(ranges)] : []),
  ];
}

function scenarioView(name: string, rows: readonly CostRow[]): View {
  const [first] = rows;
  const currency = first?.currency ?? '';
  const years = atMostDigits(first?.years ?? 0, 3);
  const bottled = rows.flatMap((row) => row.bottled_water ?? []);
  const dated = rows.flatMap((row) => row.price_date ?? []).sort();
  return {
    caption: `${name}: ${perLitreRange(rows)} over ${years} years, in ${currency}; ${largest(rows)}`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Purchase', align: 'right' },
      { head: 'Parts a year', align: 'right' },
      { head: 'Water and sewer a year', align: 'right' },
      { head: 'Energy a year', align: 'right' },
      { head: 'All, a year', align: 'right' },
      { head: 'All, a clean litre', align: 'right' },
      { head: `All, ${years} years, parts by wear`, align: 'right' },
      { head: `All, ${years} years, parts bought whole`, align: 'right' },
      { head: 'Not or not wholly counted', align: 'left' },
    ],
    rows: rows.map((row) => [
      row.device,
      row.variant,
      row.purchase === null ? NOT_KNOWN : moneyText(row.purchase),
      spreadText(row.parts_pro_rata_per_year),
      spreadText(together(row.water_per_year, row.sewer_per_year)),
      spreadText(row.energy_per_year),
      rangedText(row.per_year),
      rangedText(row.per_litre, perLitreText),
      rangedText(row.total_pro_rata),
      rangedText(row.total_bought),
      row.not_counted.join(', '),
    ]),
    legend: [
      'At least: something is not counted, so the true cost is higher.',
      ...(rows.some((row) => row.per_year.estimate !== null && row.per_year.low !== null)
        ? [
            'In brackets: what the water use leaves open, in water, sewer, energy and how long parts last; prices as stated.',
          ]
        : []),
      'Drain pays for water and sewer, like all water let in. Parts end by time or capacity, whichever comes first.',
      ...(dated.length === 0 ? [] : [datesText(dated)]),
      ...(first === undefined || first.discount_rate === 0
        ? []
        : [
            `Discounted at ${atMostDigits(first.discount_rate * 100, 3)} % a year: ${rows.map((row) => `${row.device} (${row.variant}) ${spreadText(row.present_value)}`).join('; ')}.`,
          ]),
      ...(bottled.length === 0 ? [] : [bottledText(bottled, years, currency)]),
    ],
  };
}

function datesText(dates: readonly string[]): string {
  const [first = ''] = dates;
  const last = dates.at(-1) ?? first;
  return first === last
    ? `Purchase prices as seen on ${first}.`
    : `Purchase prices as seen from ${first} to ${last}.`;
}

function bottledText(amounts: readonly number[], years: string, currency: string): string {
  const low = moneyText(Math.min(...amounts));
  const high = moneyText(Math.max(...amounts));
  const range = low === high ? low : `${low} to ${high}`;
  return `The same water in bottles, at the price of bench.json: ${range} ${currency} over ${years} years.`;
}

/** Cost of each device over its scenarios. */
function rangeView(ranges: readonly CostRow[]): View {
  const currency = ranges[0]?.currency ?? '';
  return {
    caption: `From the cheapest to the dearest scenario of each device, in ${currency}`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'All, a year', align: 'right' },
      { head: 'All, a clean litre', align: 'right' },
      { head: 'Not or not wholly counted', align: 'left' },
    ],
    rows: ranges.map((row) => [
      row.device,
      row.variant,
      spreadText(row.per_year),
      spreadText(row.per_litre, perLitreText),
      row.not_counted.join(', '),
    ]),
    legend: [
      'The range is that of use and of what the measurements leave open; prices and tariffs are taken as stated.',
    ],
  };
}

/** Two sums as one; a lower bound where one is not wholly known. */
export function together(a: Spread, b: Spread): Spread {
  const known = [a, b].filter((each) => (each.estimate ?? each.low) !== null);
  if (known.length === 0) return a;
  const sumOf = (pick: (each: Spread) => number | null): number | null =>
    known.reduce<number | null>((sum, each) => {
      const value = pick(each);
      return sum === null || value === null ? null : sum + value;
    }, 0);
  const isWhole = known.length === 2 && known.every((each) => each.estimate !== null);
  if (!isWhole) {
    return { low: sumOf((each) => each.low ?? each.estimate), estimate: null, high: null };
  }
  return {
    low: sumOf((each) => each.low),
    estimate: sumOf((each) => each.estimate),
    high: sumOf((each) => each.high),
  };
}

/** A sum of money: exact, from to, `at least`, or not known; bounds are rounded outward. */
export function spreadText(spread: Spread, text: MoneyText = moneyText): string {
  const { low, estimate, high } = spread;
  if (estimate !== null) return text(estimate);
  if (low === null) return NOT_KNOWN;
  if (high === null) return `at least ${text(low, 'down')}`;
  return text(low) === text(high) ? text(low) : `${text(low, 'down')} to ${text(high, 'up')}`;
}

/** The same with the range of an estimate in brackets, where it shows. */
export function rangedText(spread: Spread, text: MoneyText = moneyText): string {
  const { low, estimate, high } = spread;
  if (estimate === null || low === null || high === null) return spreadText(spread, text);
  const [from, to] = [text(low, 'down'), text(high, 'up')];
  return text(low) === text(high) ? text(estimate) : `${text(estimate)} (${from} to ${to})`;
}

export type MoneyText = (amount: number, rounding?: Rounding) => string;

/** Whole units from 100 on, else hundredths. */
export function moneyText(amount: number, rounding: Rounding = 'nearest'): string {
  if (amount === 0) return '0';
  return decimalText(roundDecimal(decimalOf(amount), amount >= 100 ? 0 : 2, rounding));
}

/** Money for a litre, two digits. */
export function perLitreText(amount: number, rounding: Rounding = 'nearest'): string {
  const exact = decimalOf(amount);
  const power = leadingPower(exact);
  return power === null || rounding === 'nearest'
    ? significant(amount, 2)
    : decimalText(roundDecimal(exact, 1 - power, rounding));
}

function perLitreRange(rows: readonly CostRow[]): string {
  const known = rows.flatMap((row) => row.per_litre.estimate ?? []);
  if (known.length === 0) return 'no device has all its costs known';
  const low = perLitreText(Math.min(...known));
  const high = perLitreText(Math.max(...known));
  const range = low === high ? low : `from ${low} to ${high}`;
  return `${range} a clean litre for the ${known.length} of ${rows.length} with all costs known`;
}

/** What costs most a year among what comes again and again. */
function largest(rows: readonly CostRow[]): string {
  const known = rows.filter((row) => row.parts_pro_rata_per_year.estimate !== null);
  const ahead = known.filter((row) => {
    const water = together(row.water_per_year, row.sewer_per_year);
    return (row.parts_pro_rata_per_year.estimate ?? 0) > (water.estimate ?? water.low ?? 0);
  });
  return known.length === 0
    ? 'no parts are priced'
    : `parts cost more than water for ${ahead.length} of ${known.length}`;
}
