import { FLUSH_OFF, type IdleRiseRow, STANDARD } from '../../model/index.ts';
import type { NotesInput } from './notes-input.ts';
import { joined, markup, type Piece, quoted, say } from './piece.ts';

/** Readings of one meter on one scale: never compared with those of another. */
export interface IdleGroup {
  readonly id: string;
  readonly title: Piece;
  /** The same as plain text. */
  readonly label: string;
  readonly unit: string;
  readonly pauses: readonly IdleRiseRow[];
  readonly scenarios: readonly IdleRiseRow[];
}

export function idleRows(input: NotesInput): readonly IdleRiseRow[] {
  return input.outcomes.idleRise.rows as readonly IdleRiseRow[];
}

/** Rows by meter, scale and unit, in their order. */
export function idleGroups(input: NotesInput): IdleGroup[] {
  const groups = new Map<string, IdleRiseRow[]>();
  for (const row of idleRows(input)) {
    const key = JSON.stringify([row.meter, row.scale, row.unit]);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups].flatMap(([id, rows]) => {
    const [first] = rows;
    if (first === undefined) return [];
    const { meter, scale, unit } = first;
    return {
      id,
      title: joined(
        [
          meter === null ? markup('meter not named') : quoted(meter),
          scale === null ? markup('scale not stated') : say`${scale} scale`,
          quoted(unit),
        ],
        ', ',
      ),
      label: [
        meter ?? 'meter not named',
        scale === null ? 'scale not stated' : `${scale} scale`,
        unit,
      ].join(', '),
      unit,
      pauses: rows.filter(({ what }) => what === 'pause'),
      scenarios: rows.filter(({ what }) => what === 'scenario'),
    };
  });
}

/** A device with its automatic flush on and off in one scenario. */
export interface FlushPair {
  readonly on: IdleRiseRow;
  readonly off: IdleRiseRow;
}

export function flushPairs({ scenarios }: IdleGroup): FlushPair[] {
  return scenarios.flatMap((off) => {
    if (off.variant !== FLUSH_OFF) return [];
    const on = scenarios.find(
      (row) =>
        row.variant === STANDARD && row.device === off.device && row.scenario === off.scenario,
    );
    return on === undefined ? [] : { on, off };
  });
}
