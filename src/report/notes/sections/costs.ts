import type { CostRow, Spread } from '../../../model/index.ts';
import { atMostDigits } from '../../format-number.ts';
import {
  type MoneyText,
  moneyText,
  perLitreText,
  rangedText,
  together,
} from '../../views/costs-view.ts';
import { number } from '../figures.ts';
import type { NotesChart } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  figure,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';
import { spentTable } from './spent-table.ts';

/** Cost of ownership: one scenario in full, the range over all of them, and the course over time. */
export function costsSection(input: NotesInput, charts: readonly NotesChart[]): Piece {
  const rows = leadCosts(input);
  const [first] = rows;
  if (first === undefined) return NOTHING;
  return blocks([
    markup('## Costs'),
    paragraph([
      costSummary(input),
      partsAgainstWater(rows),
      markup('A figure with “at least” leaves something out, which its row names.'),
    ]),
    leadTable(input, rows, first),
    rangeTable(input),
    ...charts.filter(({ section }) => section === 'costs').map(({ image }) => image),
    spentTable(input),
  ]);
}

/** Rows of the scenario that the costs are told on: the first of the bench. */
export function leadCosts(input: NotesInput): readonly CostRow[] {
  const rows = costRows(input).filter(({ scenario }) => scenario !== null);
  return rows.filter(({ scenario }) => scenario === rows[0]?.scenario).filter(isCosted);
}

export function costRows(input: NotesInput): readonly CostRow[] {
  return input.outcomes.costs.rows as readonly CostRow[];
}

/** False for a device of which no component is known. */
export function isCosted(row: CostRow): boolean {
  return row.not_counted.length < COMPONENTS || row.purchase !== null;
}

const COMPONENTS = 5;

/** The range of the costs of a clean litre, among devices whose costs are all known. */
export function costSummary(input: NotesInput): Piece {
  const rows = leadCosts(input);
  const [first] = rows;
  if (first === undefined) return NOTHING;
  const name = stateNames(input.bench);
  const whole = rows
    .filter(({ per_litre }) => per_litre.estimate !== null)
    .sort((a, b) => (a.per_litre.estimate ?? 0) - (b.per_litre.estimate ?? 0));
  const [cheapest] = whole;
  const dearest = whole.at(-1);
  const over = say`over ${number('years', first.years, 'years')} years of the scenario ${first.scenario ?? ''}`;
  if (cheapest === undefined || dearest === undefined) {
    return say`Of no device are all costs known ${over}; each sum is a lower bound.`;
  }
  const text = (row: CostRow): Piece =>
    say`${money('litre', row.per_litre, row, perLitreText)} ${row.currency ?? ''} (${name(row.device, row.variant)})`;
  const among =
    whole.length === rows.length
      ? NOTHING
      : say`, among the ${count('whole', whole.length)} of ${count('costed', rows.length)} with all costs known`;
  return cheapest === dearest
    ? say`A clean litre cost ${text(cheapest)} ${over}${among}.`
    : say`A clean litre cost from ${text(cheapest)} to ${text(dearest)} ${over}${among}.`;
}

function partsAgainstWater(rows: readonly CostRow[]): Piece {
  const known = rows.filter(
    (row) => row.parts_pro_rata_per_year.estimate !== null && row.water_per_year.estimate !== null,
  );
  if (known.length === 0) return NOTHING;
  const ahead = known.filter((row) => {
    const water = together(row.water_per_year, row.sewer_per_year);
    const sum = water.estimate ?? water.low;
    return sum !== null && (row.parts_pro_rata_per_year.estimate ?? 0) > sum;
  });
  return say`Parts cost more than water and sewer for ${count('parts-ahead', ahead.length)} of ${count('parts-known', known.length)} with both known.`;
}

/** A sum of money without its currency, with its range where it shows. */
export function money(key: string, sum: Spread, row: CostRow, text: MoneyText = moneyText): Piece {
  const printed = rangedText(sum, text);
  const { low, estimate, high } = sum;
  const ends =
    estimate === null ? [low, high] : printed.includes('(') ? [estimate, low, high] : [estimate];
  return figure(`${row.device}.${row.variant}.${key}`, ends, row.currency ?? 'money', printed);
}

function leadTable(input: NotesInput, rows: readonly CostRow[], first: CostRow): Piece {
  const name = stateNames(input.bench);
  const years = number('years', first.years, 'years');
  const dated = rows.some(({ price_date }) => price_date !== null);
  return tablePiece({
    caption: say`Costs in ${first.currency ?? 'the currency of the prices'}, scenario ${first.scenario ?? ''}, over ${years} years`,
    columns: [
      left('Device'),
      right('Purchase'),
      ...(dated ? [left('Price seen on')] : []),
      right('Parts a year'),
      right('Water and sewer a year'),
      right('Energy a year'),
      right('All, a year'),
      right('All, a clean litre'),
      right(say`All, ${years} years, parts bought whole`),
      left('Not or not wholly counted'),
    ],
    rows: rows.map((row) => [
      quoted(name(row.device, row.variant)),
      row.purchase === null
        ? markup('not known')
        : money('purchase', { low: null, estimate: row.purchase, high: null }, row),
      ...(dated ? [quoted(row.price_date ?? '')] : []),
      money('parts', row.parts_pro_rata_per_year, row),
      money('water', together(row.water_per_year, row.sewer_per_year), row),
      money('energy', row.energy_per_year, row),
      money('year', row.per_year, row),
      money('litre', row.per_litre, row, perLitreText),
      money('bought', row.total_bought, row),
      markup(row.not_counted.join(', ')),
    ]),
    legend: [
      markup(
        'Parts a year: by wear, ended by time or capacity, whichever comes first. Drain pays for water and sewer, like all water let in. In brackets the range that the use of water leaves open. A difference between two sums is claimed only where their rows count the same things.',
      ),
      tariffs(input),
      discounted(first),
      bottled(rows),
    ],
  });
}

/** The tariffs as the bench states them. */
function tariffs(input: NotesInput): Piece {
  const stated = Object.entries(input.bench.settings.tariffs ?? {}).flatMap(([what, value]) =>
    typeof value === 'string' || typeof value === 'number'
      ? say`${markup(what.replaceAll('_', ' '))} ${String(value)}`
      : [],
  );
  return stated.length === 0
    ? markup('No tariff is stated.')
    : say`Tariffs as stated in bench.json: ${listed(stated)}.`;
}

function discounted(first: CostRow): Piece {
  return first.discount_rate === 0
    ? NOTHING
    : say`These sums are not discounted; at ${figure('discount', first.discount_rate * 100, '%', `${atMostDigits(first.discount_rate * 100, 3)} %`)} a year they stand in [tables/costs.csv](tables/costs.csv).`;
}

function bottled(rows: readonly CostRow[]): Piece {
  const [row] = rows.filter(({ bottled_water }) => bottled_water !== null);
  if (row === undefined) return NOTHING;
  const sum = { low: null, estimate: row.bottled_water, high: null };
  return say`The same water in bottles, at the price of bench.json: ${money('bottled', sum, row)} ${row.currency ?? ''} over the same years.`;
}

function rangeTable(input: NotesInput): Piece {
  const ranges = costRows(input)
    .filter(({ scenario }) => scenario === null)
    .filter(isCosted);
  const recurs = ranges.some(({ not_counted }) => not_counted.length < COMPONENTS - 1);
  const scenarios = new Set(costRows(input).map(({ scenario }) => scenario ?? '')).size - 1;
  if (!recurs || scenarios < 2) return NOTHING;
  const name = stateNames(input.bench);
  return tablePiece({
    caption: say`From the cheapest to the dearest of ${count('scenarios', scenarios)} scenarios, in ${ranges[0]?.currency ?? ''}`,
    columns: [
      left('Device'),
      right('All, a year'),
      right('All, a clean litre'),
      left('Not or not wholly counted'),
    ],
    rows: ranges.map((row) => [
      quoted(name(row.device, row.variant)),
      money('range.year', row.per_year, row),
      money('range.litre', row.per_litre, row, perLitreText),
      markup(row.not_counted.join(', ')),
    ]),
    legend: [
      joined(
        [
          markup(
            'The range is that of use and of what the measurements leave open; prices and tariffs are taken as stated.',
          ),
          markup('Every scenario: [tables/costs.csv](tables/costs.csv).'),
        ],
        ' ',
      ),
    ],
  });
}
