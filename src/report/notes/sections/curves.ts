import type { DrainCurve } from '../../../analyse/index.ts';
import { type BreakEvenRow, STANDARD, type WaterCurveRow } from '../../../model/index.ts';
import { pour, ratio } from '../figures.ts';
import type { NotesChart } from '../notes-charts.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames, subjectName } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** Pour sizes people know, to name figures at. */
const NAMED_ML = [250, 1000];

/** The total drain ratio against pour size, and where two devices change places. */
export function curvesSection(input: NotesInput, charts: readonly NotesChart[]): Piece {
  const known = input.curves.filter((curve) => hasCurve(input, curve));
  const heading = markup('## Small pours and large ones');
  const refused = withoutCurve(input);
  if (known.length === 0) {
    return refused.markdown === ''
      ? NOTHING
      : blocks([heading, say`No curve of drain against pour size can be given. ${refused}`]);
  }
  return blocks([
    heading,
    paragraph([
      markup(
        'A pour that stands alone bears its start and one idle flush after it, so a small pour drains more for each litre. Pours close together share them.',
      ),
      ...NAMED_ML.map((size) => atSize(input, size)),
      refused,
      leftOut(input),
    ]),
    ...charts.filter(({ section }) => section === 'curves').map(({ image }) => image),
    breakEvens(input),
  ]);
}

/** The rows of pours that stand alone, which no number of pours a day goes with. */
export function isolatedRows(input: NotesInput): WaterCurveRow[] {
  const rows = input.outcomes.waterCurve.rows as readonly (WaterCurveRow & {
    readonly pours_per_day?: number | null;
  })[];
  return rows.filter((row) => (row.pours_per_day ?? null) === null);
}

/** True where a figure exists for any pour size. */
export function hasCurve(input: NotesInput, { drain }: DrainCurve): boolean {
  return isolatedRows(input).some(
    (row) =>
      row.device === drain.device.values.device &&
      row.variant === drain.variant &&
      row.total_drain_ratio !== null,
  );
}

function nameIn(input: NotesInput): (device: string, variant: string) => string {
  const names = deviceNames(input.bench);
  return (device, variant) => subjectName(names.get(device) ?? device, variant);
}

function atSize(input: NotesInput, size: number): Piece {
  const name = nameIn(input);
  const rows = isolatedRows(input)
    .filter(
      (row) => row.pour_mL === size && row.variant === STANDARD && row.total_drain_ratio !== null,
    )
    .sort((a, b) => (a.total_drain_ratio ?? 0) - (b.total_drain_ratio ?? 0));
  const [lowest] = rows;
  const highest = rows.at(-1);
  if (lowest === undefined || highest === undefined) return NOTHING;
  const text = (row: WaterCurveRow): Piece =>
    say`${ratio(`${size}`, row.total_drain_ratio)} L (${name(row.device, row.variant)})`;
  return lowest === highest
    ? say`A pour of ${pour('size', size)} alone sends ${text(lowest)} to drain per litre of clean water.`
    : say`A pour of ${pour('size', size)} alone sends from ${text(lowest)} to ${text(highest)} to drain per litre of clean water.`;
}

function withoutCurve(input: NotesInput): Piece {
  const name = nameIn(input);
  const of = (wanted: (curve: DrainCurve) => boolean): Piece[] =>
    input.curves
      .filter((curve) => !hasCurve(input, curve) && curve.drain.variant === STANDARD)
      .filter(wanted)
      .map(({ drain }) => quoted(name(drain.device.values.device, drain.variant)));
  const tanks = of(({ drain }) => drain.hasTank);
  const others = of(({ drain }) => !drain.hasTank);
  return paragraph([
    tanks.length === 0
      ? NOTHING
      : say`${listed(tanks)} ${markup(tanks.length === 1 ? 'has no curve: its' : 'have no curve: their')} drain depends on how full the tank is.`,
    others.length === 0
      ? NOTHING
      : say`Without a curve, as its drain is not known: ${listed(others)}.`,
  ]);
}

/** Flushes that belong to no pour, and so to no curve. */
function leftOut(input: NotesInput): Piece {
  const name = nameIn(input);
  const told = input.curves.flatMap(({ drain, isolated }) =>
    isolated === null || isolated.excludedRules.length === 0
      ? []
      : say`${name(drain.device.values.device, drain.variant)} (${listed(isolated.excludedRules.map(quoted))})`,
  );
  return told.length === 0
    ? NOTHING
    : say`Flushes that come without a pour stay out of the curves and count in the scenarios: ${listed(told)}.`;
}

/** Pairs of standard states that change places inside the sizes of the curves. */
function breakEvens(input: NotesInput): Piece {
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
  const pairs = say`${count('pairs', rows.length)} ${markup(rows.length === 1 ? 'pair' : 'pairs')}`;
  if (found.length === 0) {
    return say`Of ${pairs} of devices in their standard state, none changes places ${between}: of each pair the same one drains less.`;
  }
  const name = nameIn(input);
  const curve = (device: string) =>
    input.curves.find(
      ({ drain }) => drain.device.values.device === device && drain.variant === STANDARD,
    )?.isolated;
  return tablePiece({
    caption: say`Of ${pairs} of devices in their standard state, ${count('pairs.found', found.length)} ${markup(found.length === 1 ? 'changes' : 'change')} places ${between}`,
    columns: [
      left('Less drain in smaller pours'),
      left('Less drain in larger pours'),
      right('Same drain at a pour of'),
    ],
    rows: found.map((row) => {
      const isFirstSmall = (curve(row.device_a)?.fixedL ?? 0) < (curve(row.device_b)?.fixedL ?? 0);
      const a = quoted(name(row.device_a, row.variant_a));
      const b = quoted(name(row.device_b, row.variant_b));
      const size = pour(`${row.device_a}.${row.device_b}`, row.pour_mL ?? 0);
      return isFirstSmall ? [a, b, size] : [b, a, size];
    }),
    legend: [
      markup(
        'Computed from measured volumes, as single figures. All pairs, other variants too: [tables/break-even.csv](tables/break-even.csv).',
      ),
    ],
  });
}
