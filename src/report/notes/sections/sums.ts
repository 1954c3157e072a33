import type { FilterLifeRow, LogReductionRow, SumRow } from '../../../model/index.ts';
import { atMostDigits } from '../../format-number.ts';
import { isMissedFirmly } from '../../views/filter-life-view.ts';
import { logText } from '../../views/sums-view.ts';
import { number, reductionFigure, sideFigure } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import { blocks, figure, markup, NOTHING, type Piece, quoted, say } from '../piece.ts';
import { stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** Sums over fixed lists, organisms by log10, and what the volume treated did to a reduction. */
export function sumsSection(input: NotesInput): Piece {
  const parts = [sumsPart(input), organismsPart(input), filterLifePart(input)];
  if (parts.every(({ markdown }) => markdown === '')) return NOTHING;
  return blocks([markup('## Sums, organisms and filter life'), ...parts]);
}

/** One column a sum and occasion, one row a device; the feed stands above. */
function sumsPart(input: NotesInput): Piece {
  const all = input.outcomes.sums.rows as readonly SumRow[];
  const tested = all.filter(({ outcome }) => outcome !== 'untested');
  if (tested.length === 0) return NOTHING;
  const nameOf = stateNames(input.bench);
  const columnOf = ({ sum, event, kind }: SumRow): string => JSON.stringify([sum, event, kind]);
  const lineOf = ({ device, variant }: SumRow): string => JSON.stringify([device, variant]);
  const firstOf = (keyOf: (row: SumRow) => string): SumRow[] =>
    [...new Map(tested.toReversed().map((row) => [keyOf(row), row])).values()].toReversed();
  const columns = firstOf(columnOf);
  const key = (row: SumRow): string => `${row.sum}.${row.kind}.${row.event}`;
  return blocks([
    markup('### Sums over fixed lists of members'),
    tablePiece({
      caption: markup('Reductions of sums; the members are the same on both sides'),
      columns: [
        left('Device'),
        ...columns.map((row) => right(say`${row.name}, ${eventPiece(row)}`)),
      ],
      rows: [
        [
          markup('*Feed*'),
          ...columns.map((row) => say`${sumSide(`${key(row)}.feed`, row)}${sumUnit(row)}`),
        ],
        ...firstOf(lineOf).map((line) => [
          quoted(nameOf(line.device, line.variant)),
          ...columns.map((column) => {
            const row = tested.find(
              (each) => lineOf(each) === lineOf(line) && columnOf(each) === columnOf(column),
            );
            return row === undefined
              ? NOTHING
              : reductionFigure(`${key(row)}.${row.device}.${row.variant}`, row);
          }),
        ]),
      ],
      legend: [
        markup(
          'What was not detected adds nothing to the low end and its limit to the high end. A sum of ratios adds each member over its own level. Blank: a member was not tested. Products, members and what was found in the feed alone: [tables/sums.csv](tables/sums.csv).',
        ),
      ],
    }),
  ]);
}

function organismsPart(input: NotesInput): Piece {
  const all = input.outcomes.logReductions.rows as readonly LogReductionRow[];
  const shown = all.filter(({ outcome }) => outcome !== 'untested' && outcome !== 'untestable');
  if (shown.length === 0) return NOTHING;
  const nameOf = stateNames(input.bench);
  const bounds = (key: string, ends: Parameters<typeof logText>[0] | null): Piece =>
    ends === null ? NOTHING : figure(key, [ends.low, ends.high], 'log10', logText(ends));
  return blocks([
    markup('### Organisms'),
    tablePiece({
      caption: markup(
        'Reductions of organisms on the scale of log10, where the feed held enough to show one',
      ),
      columns: [
        left('Device'),
        left('Organism'),
        left('Occasion'),
        right('As reported'),
        right('With the uncertainty of the results'),
        right('With the chance of counting'),
      ],
      rows: shown.map((row) => {
        const key = `${row.analyte}.${row.event}.${row.device}.${row.variant}`;
        return [
          quoted(nameOf(row.device, row.variant)),
          analytePiece(input, row),
          eventPiece(row),
          bounds(`${key}.reported`, row),
          bounds(`${key}.uncertain`, { low: row.interval_low, high: row.interval_high }),
          bounds(`${key}.counted`, row.counted),
        ];
      }),
      legend: [
        markup(
          'None found is a count of none in the volume examined, not an absence. Microbiologically unsafe water needs proper disinfection, whatever stands here.',
        ),
      ],
    }),
  ]);
}

function filterLifePart(input: NotesInput): Piece {
  const all = input.outcomes.filterLife.rows as readonly FilterLifeRow[];
  const ended = all.filter(
    ({ target, first_missed_L, release_L }) =>
      release_L !== null || (target !== null && first_missed_L !== null),
  );
  if (ended.length === 0) return NOTHING;
  const nameOf = stateNames(input.bench);
  const volume = (key: string, litres: number | null): Piece =>
    litres === null ? NOTHING : number(key, litres, 'L');
  return blocks([
    markup('### Along the volume treated'),
    tablePiece({
      caption: markup('Targets shown to be missed, and releases, by the volume treated before'),
      columns: [
        left('Device'),
        left('Analyte'),
        left('Target'),
        right('Last shown met, L'),
        right('First shown missed, L'),
        right('Release, L'),
      ],
      rows: ended.map((row) => {
        const key = `${row.analyte}.${row.kind}.${row.device}.${row.variant}`;
        return [
          quoted(nameOf(row.device, row.variant)),
          row.kind === 'spiked'
            ? say`${analytePiece(input, row)} (spiked)`
            : analytePiece(input, row),
          targetPiece(key, row),
          volume(`${key}.met`, row.last_met_L),
          isMissedFirmly(row)
            ? volume(`${key}.missed`, row.first_missed_L)
            : say`${volume(`${key}.missed`, row.first_missed_L)} (apparently)`,
          volume(`${key}.release`, row.release_L),
        ];
      }),
      legend: [
        markup(
          'Targets are claims on the device, and reference levels its feed exceeded. Apparently: on assumed uncertainty; to be retested before it is held against a device. Between the two volumes, and beyond the last one tested, nothing is known. All volumes: [tables/filter-life.csv](tables/filter-life.csv).',
        ),
      ],
    }),
  ]);
}

/** The sum of a feed, as the other tables print concentrations. */
function sumSide(key: string, { feed: { low, high }, unit }: SumRow): Piece {
  return sideFigure(key, { low, high, estimate: low === high ? low : null }, unit);
}

function sumUnit({ rule, unit, basis }: SumRow): Piece {
  if (rule === 'ratio') return NOTHING;
  return say` ${basis === null ? unit : `${unit} ${basis}`}`;
}

function targetPiece(key: string, { target, unit }: FilterLifeRow): Piece {
  if (target === null) return markup('none');
  const { comparator, value, from } = target;
  return comparator === 'at-least'
    ? say`at least ${figure(`${key}.target`, value * 100, '%', `${atMostDigits(value * 100, 8)} %`)} (${from})`
    : say`at most ${number(`${key}.target`, value, unit)} ${unit} (${from})`;
}

function analytePiece({ bench }: NotesInput, { analyte }: { readonly analyte: string }): Piece {
  return quoted(bench.analytes.byKey(analyte)?.name ?? analyte);
}

function eventPiece({ event, kind }: Pick<SumRow, 'event' | 'kind'>): Piece {
  return kind === 'spiked' ? say`${event} (spiked)` : quoted(event);
}
