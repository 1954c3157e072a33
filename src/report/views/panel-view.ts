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
      { head: 'Verdict', align: 'left' },
      { head: 'Answers to plan for', align: 'right' },
    ],
    rows: rows.map((row) => [
      row.device,
      row.against,
      row.test,
      row.attribute ?? '',
      `${row.correct} of ${row.assessors}`,
      row.correct_needed === null ? 'too few answers' : String(row.correct_needed),
      probability(row.p_value),
      row.p_value_two_sided === null ? '' : probability(row.p_value_two_sided),
      `${percent(row.distinguishers.low)} to ${percent(row.distinguishers.high)}`,
      row.verdict === 'told-apart' ? 'told apart' : 'not told apart',
      row.assessors_needed === null ? 'none' : String(row.assessors_needed),
    ]),
    legend: [
      'p: chance of so many correct answers by guessing alone (exact binomial test).',
      'Share who tell: each limit holds with 95 % on its own side. Not told apart is not the same as equal.',
      plan,
      'Several answers of one person are not independent.',
    ],
  };
}

function probability(value: number): string {
  return value < 0.0001 ? 'below 0.0001' : significant(value, 2);
}

function percent(share: number): string {
  return significant(share * 100, 2);
}
