import { INDICES, indexRemarks, indexText } from '../../views/mineral-index-view.ts';
import { figureOf, type ShownWater } from '../../views/mineral-shown-waters.ts';
import { watersByEvent } from '../mineral-waters.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  counted,
  figure,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';

/** Corrosion and scaling indices, with where they hold and what they mean for metal parts. */
export function indicesPart(input: NotesInput): Piece {
  const waters = [...watersByEvent(input).values()]
    .flat()
    .filter(({ rows }) => rows.some(({ group, low }) => group === 'index' && low !== null));
  if (waters.length === 0) return NOTHING;
  const whole = waters.filter((water) => figureOf(water, 'langelier-index', 'index')?.low != null);
  const shown = whole.length === 0 ? waters : whole;
  const rest = waters.length - shown.length;
  const metal = waters.filter(({ rows }) =>
    rows.some(({ notes }) => notes.includes('metal-parts-downstream')),
  );
  return blocks([
    markup('### Corrosion and scaling'),
    metal.length === 0
      ? NOTHING
      : say`${counted('metal', metal.length, 'water')} of ${whose(metal)} can take up lead, copper and nickel from metal taps, fittings and lines behind the device. Parts meant for purified water, and letting the first water run off, reduce that; only a sample from the tap shows it.`,
    tablePiece({
      caption: markup('Indices say little on very dilute water'),
      columns: [
        left('Occasion'),
        left('Water'),
        ...INDICES.map(([, head]) => right(markup(head))),
        left('Remarks'),
      ],
      rows: shown.map((water) => [
        quoted(water.event),
        quoted(water.name),
        ...INDICES.map(([key]) => indexPiece(water, key)),
        quoted(indexRemarks(water)),
      ]),
      legend: [
        markup(
          'Langelier, Ryznar and Puckorius (made for cooling water): logarithmic form. Saturation index and precipitation potential (CCPP, positive precipitates): equilibrium form without ion pairs, closed system. The forms differ a little on one water, and an error of the pH moves an index by as much.',
        ),
        markup(
          'Very dilute: so few ions that the indices hardly hold. Metal: see above. Below range: the figure would rest on the limits of the lab.',
        ),
        rest === 0
          ? NOTHING
          : say`${counted('indices.left-out', rest, 'further water')} without a saturation index, as the temperature or an ion is not known: [tables/minerals.csv](tables/minerals.csv).`,
      ],
    }),
  ]);
}

const NAMED = 4;

/** The waters by name, or how many names there are. */
function whose(waters: readonly ShownWater[]): Piece {
  const names = [...new Set(waters.map(({ name }) => name))];
  return names.length > NAMED
    ? say`${count('metal.names', names.length)} devices and states`
    : listed(names.map(quoted));
}

function indexPiece(water: ShownWater, key: string): Piece {
  const row = figureOf(water, key, 'index');
  if (row === undefined || row.low === null) return markup(indexText(row).replace(/^-$/, '–'));
  return figure(
    `${water.event}.${water.name}.${key}`,
    [row.low, row.high],
    row.unit,
    indexText(row),
  );
}
