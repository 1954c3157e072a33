import type { MineralRow } from '../../model/index.ts';
import { figureOf, type ShownWater, shownWaters } from '../views/mineral-shown-waters.ts';
import { intervalText } from '../views/mineral-words.ts';
import type { NotesInput } from './notes-input.ts';
import { figure, markup, type Piece } from './piece.ts';
import { deviceNames } from './subjects.ts';

/** Rows of the minerals that the filters keep. */
export function mineralRows(input: NotesInput): readonly MineralRow[] {
  return input.outcomes.minerals.rows as readonly MineralRow[];
}

/** Waters of the minerals by event, events in their order, feeds first. */
export function watersByEvent(input: NotesInput): ReadonlyMap<string, readonly ShownWater[]> {
  const events = new Map<string, ShownWater[]>();
  for (const water of shownWaters(mineralRows(input), deviceNames(input.bench))) {
    const known = events.get(water.event) ?? [];
    events.set(water.event, known);
    known.push(water);
  }
  return events;
}

/** What a water holds of a quantity: `12.4`, `< 0.5`; a dash where it was not tested. */
export function contentPiece(water: ShownWater, quantity: string): Piece {
  const row = figureOf(water, quantity, 'content');
  if (row === undefined) return markup('–');
  const { low, estimate, high, unit } = row;
  const bounds = low === 0 && high !== null ? [high] : [low, high];
  const mark = row.method?.startsWith('calculated') === true ? ' *' : '';
  const key = `${water.event}.${water.name}.${quantity}`;
  return figure(key, estimate === null ? bounds : [estimate], unit, `${intervalText(row)}${mark}`);
}
