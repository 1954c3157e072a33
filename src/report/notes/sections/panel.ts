import type { PanelRow } from '../../../model/index.ts';
import { significant } from '../../format-number.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  figure,
  joined,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** Sensory tests: what the panel could tell, and how many answers a next one would need. */
export function panelSection(input: NotesInput): Piece {
  const rows = panelRows(input);
  if (rows.length === 0) return NOTHING;
  const names = deviceNames(input.bench);
  const nameOf = (key: string): Piece =>
    key === 'feed' ? markup('the feed') : quoted(names.get(key) ?? key);
  const key = (row: PanelRow, part: string): string =>
    `${row.device}.${row.against}.${row.test}.${part}`;
  return blocks([
    markup('## Taste'),
    toldByPanel(input, rows),
    tablePiece({
      caption: markup('Sensory tests, by the exact binomial test'),
      columns: [
        left('Device'),
        left('Against'),
        left('Test'),
        left('Attribute'),
        right('Correct'),
        right('Needed'),
        right('p'),
        right('Share who tell, %'),
        left('Verdict'),
        right('Answers to plan for'),
      ],
      rows: rows.map((row) => [
        nameOf(row.device),
        nameOf(row.against),
        markup(row.test),
        quoted(row.attribute ?? ''),
        correctOf(row),
        row.correct_needed === null
          ? markup('too few answers')
          : count(key(row, 'needed'), row.correct_needed),
        probability(key(row, 'p'), row.p_value),
        share(key(row, 'share'), row.distinguishers),
        markup(row.verdict === 'told-apart' ? 'told apart' : 'not told apart'),
        row.assessors_needed === null
          ? markup('none')
          : count(key(row, 'planned'), row.assessors_needed),
      ]),
      legend: [
        markup('p: chance of so many correct answers, or more, by guessing alone.'),
        markup(
          'Share who tell: each limit holds at the confidence of the test on its own side. Not told apart is not the same as equal.',
        ),
        markup('Several answers of one person are not independent.'),
      ],
    }),
  ]);
}

export function panelRows(input: NotesInput): readonly PanelRow[] {
  return input.outcomes.panel.rows as readonly PanelRow[];
}

/** One sentence a verdict, each test with its count and its p. */
export function toldByPanel(input: NotesInput, rows: readonly PanelRow[]): Piece {
  const names = deviceNames(input.bench);
  const against = (row: PanelRow): Piece =>
    row.against === 'feed' ? markup('the feed') : quoted(names.get(row.against) ?? row.against);
  const tests = (own: readonly PanelRow[]): Piece =>
    joined(
      own.map(
        (row) =>
          say`${names.get(row.device) ?? row.device} from ${against(row)} (${correctOf(row)}, ${markup(row.test)})`,
      ),
      '; ',
    );
  const apart = rows.filter(({ verdict }) => verdict === 'told-apart');
  const rest = rows.filter(({ verdict }) => verdict !== 'told-apart');
  return bullets([
    apart.length === 0 ? NOTHING : say`The panel told apart: ${tests(apart)}.`,
    rest.length === 0
      ? NOTHING
      : say`It did not tell apart: ${tests(rest)}; that does not show that they taste the same.`,
  ]);
}

function correctOf(row: PanelRow): Piece {
  const key = `${row.device}.${row.against}.${row.test}`;
  return say`${count(`${key}.correct`, row.correct)} of ${count(`${key}.assessors`, row.assessors)}`;
}

function probability(key: string, value: number): Piece {
  return value < 0.0001
    ? figure(key, value, '1', 'below 0.0001')
    : figure(key, value, '1', significant(value, 2));
}

function share(key: string, { low, high }: PanelRow['distinguishers']): Piece {
  const text = (value: number): string => significant(value * 100, 2);
  return figure(key, [low * 100, high * 100], '%', `${text(low)} to ${text(high)}`);
}
