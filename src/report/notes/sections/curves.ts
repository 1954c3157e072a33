import type { DrainCurve } from '../../../analyse/index.ts';
import { STANDARD, type WaterCurveRow } from '../../../model/index.ts';
import { hasCurve, isolatedRows } from '../curve-rows.ts';
import { pour, spreadFigure } from '../figures.ts';
import type { NotesChart } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import { blocks, listed, markup, NOTHING, type Piece, paragraph, quoted, say } from '../piece.ts';
import { stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';
import { breakEvens } from './break-evens.ts';
import { dailyPart } from './daily-drain.ts';
import { regionsPart } from './regions.ts';

/** Pour sizes people know, to name figures at. */
const NAMED_ML = [250, 1000];
const TABLE_ML = [100, 250, 500, 1000, 2000];

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
    curveTable(input),
    breakEvens(input),
    dailyPart(input, charts),
    regionsPart(input, charts),
  ]);
}

/** The total drain ratio of a pour size with its range. */
function curveFigure(
  key: string,
  { low, total_drain_ratio: estimate, high }: WaterCurveRow,
): Piece {
  return spreadFigure(key, { low, estimate, high }, 'L/L');
}

function atSize(input: NotesInput, size: number): Piece {
  const name = stateNames(input.bench);
  const rows = isolatedRows(input)
    .filter(
      (row) => row.pour_mL === size && row.variant === STANDARD && row.total_drain_ratio !== null,
    )
    .sort((a, b) => (a.total_drain_ratio ?? 0) - (b.total_drain_ratio ?? 0));
  const [lowest] = rows;
  const highest = rows.at(-1);
  if (lowest === undefined || highest === undefined) return NOTHING;
  const text = (row: WaterCurveRow): Piece =>
    say`${curveFigure(`${size}`, row)} L (${name(row.device, row.variant)})`;
  return lowest === highest
    ? say`A pour of ${pour('size', size)} alone sends ${text(lowest)} to drain per litre of clean water.`
    : say`A pour of ${pour('size', size)} alone sends from ${text(lowest)} to ${text(highest)} to drain per litre of clean water.`;
}

function withoutCurve(input: NotesInput): Piece {
  const name = stateNames(input.bench);
  const of = (wanted: (curve: DrainCurve) => boolean): Piece[] =>
    input.curves
      .filter((curve) => !hasCurve(input, curve) && curve.drain.variant === STANDARD)
      .filter(wanted)
      .map(({ drain }) => quoted(name(drain.device.values.device, drain.variant)));
  const tanks = of(({ drain }) => drain.hasTank);
  const others = of(({ drain }) => !drain.hasTank);
  const refilled = input.curves
    .filter((curve) => hasCurve(input, curve) && curve.drain.tank !== null)
    .map(({ drain }) => quoted(name(drain.device.values.device, drain.variant)));
  return paragraph([
    refilled.length === 0
      ? NOTHING
      : say`Of ${listed(refilled)} the curve is that of refilling the tank after one pour, as tanks.csv describes it.`,
    tanks.length === 0
      ? NOTHING
      : say`${listed(tanks)} ${markup(tanks.length === 1 ? 'has no curve: its' : 'have no curve: their')} drain depends on how full the tank is.`,
    others.length === 0
      ? NOTHING
      : say`Without a curve, as no run that counts was measured or a flush volume is not known: ${listed(others)}.`,
  ]);
}

/** The curves at the sizes people know. */
function curveTable(input: NotesInput): Piece {
  const name = stateNames(input.bench);
  const rows = isolatedRows(input);
  const known = input.curves.filter((curve) => hasCurve(input, curve));
  const sizes = TABLE_ML.filter((size) => rows.some((row) => row.pour_mL === size));
  if (sizes.length === 0) return NOTHING;
  return tablePiece({
    caption: markup('Litres to drain per litre of clean water of a pour that stands alone'),
    columns: [left('Device'), ...sizes.map((size) => right(pour(`size.${size}`, size)))],
    rows: known.map(({ drain }) => {
      const { device } = drain.device.values;
      return [
        quoted(name(device, drain.variant)),
        ...sizes.map((size) => {
          const row = rows.find(
            (each) =>
              each.device === device && each.variant === drain.variant && each.pour_mL === size,
          );
          return row === undefined ? NOTHING : curveFigure(`${device}.${size}`, row);
        }),
      ];
    }),
    legend: [
      markup(
        'In brackets the range that the measurements leave open. All sizes: [tables/water-curve.csv](tables/water-curve.csv).',
      ),
    ],
  });
}

/** Flushes that belong to no pour, and so to no curve. */
function leftOut(input: NotesInput): Piece {
  const name = stateNames(input.bench);
  const told = input.curves.flatMap(({ drain, isolated }) =>
    isolated === null || isolated.excludedRules.length === 0
      ? []
      : say`${name(drain.device.values.device, drain.variant)} (${listed(isolated.excludedRules.map(quoted))})`,
  );
  return told.length === 0
    ? NOTHING
    : say`Flushes that come without a pour stay out of the curves and count in the scenarios: ${listed(told)}.`;
}
