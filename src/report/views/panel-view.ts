import type { PanelRow } from '../../model/index.ts';
import { significant } from '../format-number.ts';
import type { View } from '../view.ts';

/** The sensory tests: what the panel could tell, and how large a panel would have to be. */
export function panelView(rows: readonly PanelRow[], plan: string): View {
  const told = rows.filter((row) => row.verdict === 'told-apart').length;
  return {
    caption:
      rows.length === 0
        ? 'No sensory test'
        : `The panel told the waters apart in ${told} of ${rows.length} tests`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Against', align: 'left' },
      { head: 'Test', align: 'left' },
      { head: 'Attribute', align: 'left' },
      { head: 'Correct', align: 'right' },
      { head: 'Needed', align: 'right' },
      { head: 'p', align: 'right' },
      { head: 'p, two-sided', align: 'right' },
      { head: 'Share who tell, %', align: 'right' },
      { head: 'Both sides, %', align: 'right' },
      { head: 'Verdict', align: 'left' },
      { head: 'Answers to plan for', align: 'right' },
    ],
    rows: rows.map((row) => [
      row.device,
      row.against,
      row.test,
      row.attribute ?? '',
      `${row.correct} of ${row.assessors}`,
      counts(row.correct_needed, row.correct_needed_two_sided, 'too few answers'),
      probability(row.p_value),
      row.p_value_two_sided === null ? '' : probability(row.p_value_two_sided),
      `${percent(row.distinguishers.low)} to ${percent(row.distinguishers.high)}`,
      `${percent(row.distinguishers_two_sided.low)} to ${percent(row.distinguishers_two_sided.high)}`,
      row.verdict === 'told-apart' ? 'told apart' : 'not told apart',
      counts(row.assessors_needed, row.assessors_needed_two_sided, 'none'),
    ]),
    legend: [
      'p: chance of so many correct answers by guessing alone (exact binomial test).',
      'Share who tell: each limit holds with 95 % on its own side; both sides: the two together. Not told apart is not the same as equal.',
      'Of paired tests a second number in parentheses: two-sided, where the right answer was not fixed beforehand.',
      plan,
      'Several answers of one person are not independent.',
    ],
  };
}

function counts(one: number | null, two: number | null, none: string): string {
  const first = one === null ? none : String(one);
  return two === null ? first : `${first} (${two})`;
}

function probability(value: number): string {
  return value < 0.0001 ? 'below 0.0001' : significant(value, 2);
}

function percent(share: number): string {
  return significant(share * 100, 2);
}
