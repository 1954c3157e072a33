import type { MineralRow } from '../../../model/index.ts';
import { eventName, waterName } from '../../views/mineral-shown-waters.ts';
import { AGAINST, gainText } from '../../views/mineral-stage-views.ts';
import { estimate, range } from '../figures.ts';
import { mineralRows } from '../mineral-waters.ts';
import type { NotesInput } from '../notes-input.ts';
import { blocks, figure, listed, markup, NOTHING, type Piece, quoted, say } from '../piece.ts';
import { deviceNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** What mineral stages add, and what is and is not a measure of rejection behind one. */
export function stagePart(input: NotesInput): Piece {
  const rows = mineralRows(input);
  const gains = rows.filter(({ group }) => group === 'gain');
  const others = rows.filter(({ group }) => group === 'reduction' || group === 'rejection');
  if (gains.length === 0 && others.length === 0) return NOTHING;
  return blocks([
    markup('### Devices with a mineral stage'),
    gainTable(input, gains),
    rejectionTable(input, others),
  ]);
}

function lineOf({ kind, event, device, variant }: MineralRow): string {
  return JSON.stringify([kind, event, device, variant]);
}

function linesOf(rows: readonly MineralRow[], key: (row: MineralRow) => string): MineralRow[][] {
  const lines = new Map<string, MineralRow[]>();
  for (const row of rows) lines.set(key(row), [...(lines.get(key(row)) ?? []), row]);
  return [...lines.values()];
}

/** Quantities that a stage is shown to change; the others are named below. */
function gainTable(input: NotesInput, gains: readonly MineralRow[]): Piece {
  if (gains.length === 0) return NOTHING;
  const names = deviceNames(input.bench);
  const lines = linesOf(gains, (row) => JSON.stringify([lineOf(row), row.quantity]));
  const changed = lines.filter((line) =>
    line.some((row) => row.against !== 'feed' && (row.class === 'gained' || row.class === 'lost')),
  );
  const unchanged = lines.filter((line) => !changed.includes(line));
  const quiet = linesOf(
    unchanged.flatMap((line) => line.slice(0, 1)),
    lineOf,
  ).flatMap((line) => {
    const [first] = line;
    if (first === undefined) return [];
    const what = listed(
      line.map(({ name }) => quoted(name.toLowerCase())),
      'or',
    );
    return say`${waterName(first, names)}, ${eventName(first)}: no change of ${what} shown.`;
  });
  return tablePiece({
    caption: markup('What the mineral stages add, as far as the limits show it'),
    columns: [
      left('Occasion'),
      left('Device'),
      left('Quantity'),
      ...AGAINST.map(([, head]) => right(markup(head))),
    ],
    rows: changed.map((line) => {
      const first = line[0] as MineralRow;
      return [
        quoted(eventName(first)),
        quoted(waterName(first, names)),
        quoted(first.name),
        ...AGAINST.map(([against]) => gainPiece(line.find((row) => row.against === against))),
      ];
    }),
    legend: [
      ...quiet,
      markup(
        'Ranges are interval arithmetic over the limits of both true values; one that holds zero shows neither gain nor loss. Devices without a stage: of the same technology on the same occasion, as a range. Calcite and magnesia: what dissolved if all of the gain came from it.',
      ),
      markup('The first water after a pause carries more minerals than water drawn in one go.'),
    ],
  });
}

function gainPiece(row: MineralRow | undefined): Piece {
  if (row === undefined) return markup('–');
  const { low, estimate: value, high } = row;
  const ends = low === null || high === null ? [] : [low, high];
  const key = `${lineOf(row)}.gain.${row.quantity}.${row.against ?? ''}`;
  return figure(key, value === null ? ends : [value, ...ends], row.unit, gainText(row));
}

const COLUMNS = [
  ['product', 'total-dissolved-solids', 'Fall in dissolved solids (no rejection)'],
  ['product', 'conductivity', 'Fall in conductivity (no rejection)'],
  ['product', 'ions-not-added', 'Rejection of ions the stage does not add'],
  ['stage', 'total-dissolved-solids', 'Rejection of dissolved solids before the stage'],
] as const;

function rejectionTable(input: NotesInput, rows: readonly MineralRow[]): Piece {
  if (rows.length === 0) return NOTHING;
  const names = deviceNames(input.bench);
  const lines = linesOf(rows, lineOf);
  return tablePiece({
    caption: markup(
      'Behind a mineral stage the fall in dissolved solids is not a measure of rejection; ions the stage does not add are',
    ),
    columns: [
      left('Occasion'),
      left('Device'),
      ...COLUMNS.map(([, , head]) => right(markup(head))),
    ],
    rows: lines.map((line) => {
      const first = line.find(({ position }) => position === 'product') ?? (line[0] as MineralRow);
      return [
        quoted(eventName(first)),
        quoted(waterName(first, names)),
        ...COLUMNS.map(([position, quantity]) =>
          rejectionPiece(
            line.find((row) => row.position === position && row.quantity === quantity),
          ),
        ),
      ];
    }),
    legend: [
      markup(
        'The stage adds solids behind the membrane, so a device with one must not be held against one without by dissolved solids or conductivity. What a stage adds unseen makes the rejection of ions look smaller, never larger. Single ions: [tables/minerals.csv](tables/minerals.csv).',
      ),
    ],
  });
}

function rejectionPiece(row: MineralRow | undefined): Piece {
  if (row === undefined) return markup('–');
  const { low, estimate: value, high } = row;
  const key = `${lineOf(row)}.${row.group}.${row.quantity}`;
  if (low === null && value === null && high === null) return markup('unknown');
  return value === null ? range(key, low, high) : estimate(key, { low, estimate: value, high });
}
