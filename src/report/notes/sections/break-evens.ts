import { curveRatio } from '../../../analyse/index.ts';
import { type BreakEvenRow, STANDARD } from '../../../model/index.ts';
import { rangeText } from '../../views/water-use-view.ts';
import { isolatedRows } from '../curve-rows.ts';
import { pour } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import { count, figure, markup, NOTHING, type Piece, quoted, say } from '../piece.ts';
import { stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** A pour so much smaller than a break-even tells who drains less on that side. */
const JUST_BELOW = 0.999;

/** Pairs of standard states that change places inside the sizes of the curves. */
export function breakEvens(input: NotesInput): Piece {
  const rows = (input.outcomes.breakEven.rows as readonly BreakEvenRow[]).filter(
    (row) => row.variant_a === STANDARD && row.variant_b === STANDARD,
  );
  if (rows.length === 0) return NOTHING;
  const sizes = isolatedRows(input).map((row) => row.pour_mL);
  const [low, high] = [Math.min(...sizes), Math.max(...sizes)];
  const found = rows
    .filter((row) => row.pour_mL !== null && row.pour_mL >= low && row.pour_mL <= high)
    .sort((a, b) => (a.pour_mL ?? 0) - (b.pour_mL ?? 0));
  const between = say`between ${pour('from', low)} and ${pour('to', high)}`;
  const all = pairCount(rows);
  const pairs = say`${count('pairs', all)} ${markup(all === 1 ? 'pair' : 'pairs')}`;
  if (found.length === 0) {
    return say`Of ${pairs} of devices in their standard state, none changes places ${between}: of each pair the same one reads lower.`;
  }
  const name = stateNames(input.bench);
  const ratioBelow = (device: string, row: BreakEvenRow): number => {
    const curve = input.curves.find(
      ({ drain }) => drain.device.values.device === device && drain.variant === STANDARD,
    );
    const pourL = (JUST_BELOW * (row.pour_mL ?? 0)) / 1000;
    return (curve === undefined ? null : curveRatio(curve, pourL)) ?? 0;
  };
  return tablePiece({
    caption: say`Of ${pairs} of devices in their standard state, ${count('pairs.found', pairCount(found))} ${markup(pairCount(found) === 1 ? 'changes' : 'change')} places ${between}`,
    columns: [
      left('Less drain in smaller pours'),
      left('Less drain in larger pours'),
      right('Same drain at a pour of'),
      right('Not told apart, mL'),
    ],
    rows: found.map((row) => {
      const a = quoted(name(row.device_a, row.variant_a));
      const b = quoted(name(row.device_b, row.variant_b));
      const key = `${row.device_a}.${row.device_b}${isSecond(found, row) ? '.second' : ''}`;
      const rest = [pour(key, row.pour_mL ?? 0), undecided(`${key}.range`, row)];
      const isFirstSmall = ratioBelow(row.device_a, row) < ratioBelow(row.device_b, row);
      return isFirstSmall ? [a, b, ...rest] : [b, a, ...rest];
    }),
    legend: [
      markup(
        'Not told apart: pour sizes at which the ranges of the measurements do not tell the two apart. The curve of a tank whose refill is described is no straight line and may cross another twice. All pairs, other variants too: [tables/break-even.csv](tables/break-even.csv).',
      ),
    ],
  });
}

function undecided(key: string, { low_mL, high_mL }: BreakEvenRow): Piece {
  if (low_mL === null) return markup('not known');
  if (high_mL !== null) return figure(key, [low_mL, high_mL], 'mL', rangeText(low_mL, high_mL));
  const from = rangeText(low_mL, low_mL).split(' to ')[0] ?? '';
  return figure(key, low_mL, 'mL', `from ${from}`);
}

/** True for the larger of two sizes at which one pair changes places. */
function isSecond(rows: readonly BreakEvenRow[], row: BreakEvenRow): boolean {
  return rows.some(
    (other) =>
      other.device_a === row.device_a &&
      other.device_b === row.device_b &&
      (other.pour_mL ?? 0) < (row.pour_mL ?? 0),
  );
}

/** Pairs of devices; one that changes places twice has two rows. */
function pairCount(rows: readonly BreakEvenRow[]): number {
  return new Set(rows.map(({ device_a, device_b }) => JSON.stringify([device_a, device_b]))).size;
}
