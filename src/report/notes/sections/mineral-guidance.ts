import type { MineralRow } from '../../../model/index.ts';
import { plainNumber } from '../../format-number.ts';
import { mineralRows } from '../mineral-waters.ts';
import type { NotesInput } from '../notes-input.ts';
import { count, figure, joined, markup, NOTHING, type Piece, quoted, say } from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';

type Guidance = MineralRow['guidance'][number];

interface GuidanceLine {
  readonly row: MineralRow;
  readonly guidance: Guidance;
  readonly contexts: Set<string>;
  readonly isFromMemory: Set<boolean>;
  readonly verdicts: Map<string, Guidance['verdict']>;
}

const ROLES = /^(minimum|optimum range|maximum)$/;

/** Products against guidance that is a minimum, an optimum or a maximum; what all keep is left out. */
export function guidancePart(input: NotesInput): Piece {
  const lines = linesOf(
    mineralRows(input).filter((row) => row.position === 'product' && row.kind === 'natural'),
  );
  const told = lines.filter(({ verdicts }) =>
    [...verdicts.values()].some((verdict) => verdict !== 'within'),
  );
  if (told.length === 0) return NOTHING;
  return tablePiece({
    caption: markup(
      'Products against published guidance on minerals, which is no requirement on any device',
    ),
    columns: [
      left('Quantity'),
      left('Guidance'),
      left('For'),
      left('Read'),
      ...(['Below', 'Within', 'Above', 'Cannot say'] as const).map(right),
    ],
    rows: told.map((line) => {
      const of = (verdict: Guidance['verdict']): Piece => {
        const n = [...line.verdicts.values()].filter((each) => each === verdict).length;
        return n === 0 ? NOTHING : count(`guidance.${verdict}`, n);
      };
      return [
        quoted(line.row.name),
        guidanceText(line),
        joined([...line.contexts].map(quoted), '; '),
        markup(readWord(line)),
        of('below'),
        of('within'),
        of('above'),
        of('cannot-say'),
      ];
    }),
    legend: [
      markup(
        'Products of all occasions with a natural feed, counted. From memory: not read in a source for this table. Recommendations and proposals, mostly for desalinated water; the WHO Guidelines set no minimum for calcium, magnesium or dissolved solids. Sources, and classes of taste panels: [data/minerals.json](data/minerals.json).',
      ),
    ],
  });
}

/** Guidance of the same figures in one line. */
function linesOf(rows: readonly MineralRow[]): GuidanceLine[] {
  const lines = new Map<string, GuidanceLine>();
  for (const row of rows) {
    for (const guidance of row.guidance) {
      if (!ROLES.test(guidance.role)) continue;
      const { role, low, high, unit, basis } = guidance;
      const key = JSON.stringify([row.quantity, role, low, high, unit, basis]);
      const known = lines.get(key) ?? {
        row,
        guidance,
        contexts: new Set(),
        isFromMemory: new Set(),
        verdicts: new Map(),
      };
      lines.set(key, known);
      known.contexts.add(guidance.context);
      known.isFromMemory.add(!guidance.verified.startsWith('seen'));
      known.verdicts.set(JSON.stringify([row.event, row.device, row.variant]), guidance.verdict);
    }
  }
  return [...lines.values()];
}

/** Of several pieces of guidance with one range, one read in a source does not vouch for the others. */
function readWord({ isFromMemory }: GuidanceLine): string {
  if (!isFromMemory.has(true)) return 'seen';
  return isFromMemory.has(false) ? 'partly from memory' : 'from memory';
}

function guidanceText({ row, guidance }: GuidanceLine): Piece {
  const { role, low, high, unit, basis } = guidance;
  const ends = [low, high].filter((end) => end !== null);
  const text = ends.map(plainNumber).join(' to ');
  const value = figure(`guidance.${row.quantity}`, ends, unit, text);
  const isPlain = unit === '1' || unit === 'pH';
  const tail = isPlain
    ? NOTHING
    : say` ${quoted(unit)}${basis === null ? NOTHING : say` ${basis}`}`;
  return say`${markup(role)} ${value}${tail}`;
}
