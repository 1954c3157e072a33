import type { MineralRow } from '../../model/index.ts';

/** A water with the name and event it is printed under. */
export interface ShownWater {
  readonly name: string;
  readonly event: string;
  readonly rows: readonly MineralRow[];
}

/** The waters of rows, in their order. */
export function shownWaters(
  rows: readonly MineralRow[],
  names: ReadonlyMap<string, string>,
): ShownWater[] {
  const waters = new Map<string, { name: string; event: string; rows: MineralRow[] }>();
  for (const row of rows) {
    const key = [row.kind, row.event, row.position, row.device, row.variant].join('\t');
    const water = waters.get(key) ?? {
      name: waterName(row, names),
      event: eventName(row),
      rows: [],
    };
    water.rows.push(row);
    waters.set(key, water);
  }
  return [...waters.values()];
}

export function waterName(row: MineralRow, names: ReadonlyMap<string, string>): string {
  if (row.device === null) return 'Feed';
  const device = names.get(row.device) ?? row.device;
  const state = row.variant === null || row.variant === 'standard' ? '' : ` (${row.variant})`;
  if (row.position === 'feed') return `Feed of ${device}`;
  return row.position === 'stage' ? `${device}${state}, before the stage` : `${device}${state}`;
}

export function eventName({ event, kind }: MineralRow): string {
  return kind === 'spiked' ? `${event ?? ''} (spiked)` : (event ?? '');
}

export function figureOf(water: ShownWater, quantity: string, group: MineralRow['group']) {
  return water.rows.find((row) => row.quantity === quantity && row.group === group);
}
