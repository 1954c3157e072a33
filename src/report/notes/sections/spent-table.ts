import type { CostCurveRow } from '../../../model/index.ts';
import { moneyText } from '../../views/costs-view.ts';
import { number } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import { figure, markup, NOTHING, type Piece, quoted, say } from '../piece.ts';
import { stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

const YEARS = [0, 1, 2, 3, 5, 10, 15, 20];

/** One curve of the chart of money spent over the years. */
export interface SpentCurve {
  readonly device: string;
  readonly variant: string;
  readonly isWhole: boolean;
  readonly points: readonly CostCurveRow[];
}

/** The points of each device and state, in the order of the years. */
export function spentCurves(input: NotesInput): SpentCurve[] {
  const curves = new Map<string, CostCurveRow[]>();
  for (const row of input.outcomes.costOverTime.rows as readonly CostCurveRow[]) {
    const key = JSON.stringify([row.device, row.variant]);
    curves.set(key, [...(curves.get(key) ?? []), row]);
  }
  return [...curves.values()].flatMap((points) => {
    const [first] = points;
    if (first === undefined) return [];
    return { device: first.device, variant: first.variant, isWhole: first.whole, points };
  });
}

/** False where nothing but the purchase is known, so that the curve is flat. */
export function isRecurring({ points }: SpentCurve): boolean {
  return points.some(({ spent }) => spent !== points[0]?.spent);
}

/** What the chart shows, at whole years: a part bought on that day is in. */
export function spentTable(input: NotesInput): Piece {
  const curves = spentCurves(input);
  const first = curves[0]?.points[0];
  if (first === undefined || !curves.some(isRecurring)) return NOTHING;
  const name = stateNames(input.bench);
  const end = curves[0]?.points.at(-1)?.year ?? 0;
  const years = [...new Set([...YEARS.filter((year) => year < end), end])];
  return tablePiece({
    caption: say`Money spent by the end of so many years, ${first.currency ?? ''}, scenario ${first.scenario}`,
    columns: [left('Device'), ...years.map((year) => right(number(`at.${year}`, year, 'years')))],
    rows: curves.map((curve) => [
      quoted(name(curve.device, curve.variant)),
      ...years.map((year) => {
        const spent = spentBy(curve.points, year);
        // On the day of purchase nothing else is due, so the sum is whole.
        const isWhole = curve.isWhole || year === 0;
        const text = moneyText(spent, isWhole ? 'nearest' : 'down');
        return figure(
          `spent.${curve.device}.${curve.variant}.${year}`,
          spent,
          first.currency ?? 'money',
          isWhole ? text : `at least ${text}`,
        );
      }),
    ]),
    legend: [
      markup(
        'By the estimate of the use of water; prices and tariffs as stated. At least: something is not counted.',
      ),
    ],
  });
}

/** On the line between two purchases; at a purchase, what is spent after it. */
function spentBy(points: readonly CostCurveRow[], year: number): number {
  const before = points.findLast((point) => point.year <= year);
  const after = points.find((point) => point.year > year);
  if (before === undefined) return after?.spent ?? 0;
  if (after === undefined) return before.spent;
  const share = (year - before.year) / (after.year - before.year);
  return before.spent + share * (after.spent - before.spent);
}
