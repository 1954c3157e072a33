import { STANDARD } from '../../../model/index.ts';
import { litres, number, ratio, spreadFigure } from '../figures.ts';
import { blocks, count, listed, markup, NOTHING, type Piece, quoted, say } from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';
import type { UseState, WaterNotes } from '../water-notes.ts';

export const DAYS_OF_YEAR = 365;

const TANK_MARK = markup(' \\[t\\]');
/** Scenarios side by side; more would not fit a page. */
const RATIO_COLUMNS = 4;
const YEAR_COLUMNS = 3;

type Scenarios = WaterNotes['scenarios'];

function parts(scenarios: Scenarios, size: number): Scenarios[] {
  return Array.from({ length: Math.ceil(scenarios.length / size) }, (_, i) =>
    scenarios.slice(i * size, (i + 1) * size),
  );
}

/** Drain per litre of clean water: advertised, while producing, and by scenario with its range. */
export function ratioTables(water: WaterNotes, drained: readonly UseState[]): Piece {
  const hasTank = drained.some(({ drain }) => drain.hasTank);
  const hasRange = water.lines.some(({ row }) => row.total_drain_ratio.low !== null);
  const all = water.scenarios.length === 0 ? [[]] : parts(water.scenarios, RATIO_COLUMNS);
  return blocks(
    all.map((scenarios, i) =>
      tablePiece({
        caption: markup(
          i === 0
            ? 'Litres to drain per litre of clean water: as advertised, while producing, and in use with flushes'
            : 'The same in further scenarios',
        ),
        columns: [
          left('Device'),
          ...(i === 0 ? [right('Advertised'), right('While producing')] : []),
          ...scenarios.map(({ name }) => right(quoted(name))),
        ],
        rows: drained.map(({ name, drain, lines }) => [
          drain.hasTank ? say`${name}${TANK_MARK}` : quoted(name),
          ...(i === 0
            ? [
                advertisedCell(drain.device.values.rated_drain_ratio, drain.variant),
                ratio(`${name}.producing`, drain.model?.drainRatio ?? null),
              ]
            : []),
          ...scenarios.map((scenario) => {
            const row = lines.find((line) => line.row.scenario === scenario.name)?.row;
            return row === undefined
              ? markup('not tested')
              : spreadFigure(`${name}.${scenario.name}`, row.total_drain_ratio, 'L/L');
          }),
        ]),
        legend: i < all.length - 1 ? [] : legendOf(hasRange, hasTank),
      }),
    ),
  );
}

function legendOf(hasRange: boolean, hasTank: boolean): Piece[] {
  return [
    markup(
      'Advertised: as stated by the maker, under conditions of the maker’s own; no figure of this bench rests on it.',
    ),
    hasRange
      ? markup(
          'In brackets the range that the measurements, the assumed spread of pour sizes and, where pours are random, the years leave open.',
        )
      : NOTHING,
    hasTank ? markup('\\[t\\] storage tank: holds for the draw size it was measured at.') : NOTHING,
  ];
}

function advertisedCell(rated: number | null, variant: string): Piece {
  if (variant !== STANDARD) return NOTHING;
  return rated === null ? markup('not stated') : ratio('advertised', rated);
}

/** Drain in a year with its range, and the part of it by flushing. */
export function yearTables(water: WaterNotes, drained: readonly UseState[]): Piece {
  if (water.scenarios.length === 0) {
    return markup('The bench has no scenario, so no daily or yearly drain is computed.');
  }
  const all = parts(water.scenarios, YEAR_COLUMNS);
  return blocks(
    all.map((scenarios, i) =>
      tablePiece({
        caption: markup(
          i === 0
            ? 'Drain in a year, L: all of it, and the part by flushing'
            : 'The same in further scenarios',
        ),
        columns: [
          left('Device'),
          ...scenarios.flatMap(({ name }) => [right(quoted(name)), right('by flushing')]),
        ],
        rows: drained.map(({ name, lines }) => [
          quoted(name),
          ...scenarios.flatMap((scenario) => {
            const row = lines.find((line) => line.row.scenario === scenario.name)?.row;
            const flushed = row?.flush_drain_L_per_day.estimate ?? null;
            const key = `${name}.${scenario.name}`;
            return [
              row === undefined
                ? markup('not tested')
                : spreadFigure(`${key}.year`, row.drain_L_per_year, 'L'),
              litres(`${key}.flush-year`, flushed === null ? null : flushed * DAYS_OF_YEAR),
            ];
          }),
        ]),
        legend: i < all.length - 1 ? [] : [scaled(water)],
      }),
    ),
  );
}

/** Scenarios that were played for another length than a year. */
function scaled(water: WaterNotes): Piece {
  const others = water.scenarios.filter(({ days }) => days !== DAYS_OF_YEAR);
  return others.length === 0
    ? NOTHING
    : say`A year is ${count('days-of-year', DAYS_OF_YEAR)} days; scaled to it: ${listed(
        others.map(
          ({ name, days }) => say`${name}, played for ${number(`${name}.days`, days, 'd')} days`,
        ),
      )}.`;
}
