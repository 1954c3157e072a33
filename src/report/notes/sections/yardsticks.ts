import { efficiencyFloor } from '../../../analyse/yardsticks/index.ts';
import { plainNumber, significant } from '../../format-number.ts';
import { verdictCounts } from '../../views/yardsticks-view.ts';
import {
  blocks,
  count,
  figure,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';
import type { UseState, WaterNotes } from '../water-notes.ts';

/** Reverse-osmosis devices beside published yardsticks of water use; never a rating. */
export function yardsticksPart(water: WaterNotes): Piece {
  const states = water.states.filter(({ lines }) =>
    lines.some(({ row }) => row.yardsticks?.recovery_tank_bypassed != null),
  );
  if (states.length === 0) return NOTHING;
  const { mostDrainRatio, leastEfficiency } = efficiencyFloor();
  if (mostDrainRatio === null || leastEfficiency === null) return NOTHING;
  const most = figure('yardstick.drain', mostDrainRatio, 'L/L', plainNumber(mostDrainRatio));
  const least = figure(
    'yardstick.efficiency',
    leastEfficiency * 100,
    '%',
    `${plainNumber(leastEfficiency * 100)} %`,
  );
  const within = states.filter(({ lines }) =>
    lines.every(({ row }) => row.yardsticks?.within_2_3 === 'meets'),
  );
  return blocks([
    markup('### Beside published yardsticks'),
    tablePiece({
      caption: say`${count('within', within.length)} of ${count('concerned', states.length)} reverse-osmosis devices and states drain at most ${most} L per litre treated in every scenario of this bench`,
      columns: [
        left('Device'),
        right('Recovery while producing, %'),
        right('Efficiency in use, %'),
        left(say`At most ${most} L to drain per litre`),
        left(say`Efficiency of at least ${least}`),
      ],
      rows: states.map((state) => [
        quoted(state.name),
        shares(`${state.name}.recovery`, of(state, 'recovery_tank_bypassed').slice(0, 1)),
        shares(`${state.name}.efficiency`, of(state, 'efficiency_in_use')),
        answers(`${state.name}.within`, state, 'within_2_3'),
        answers(`${state.name}.forty`, state, 'reaches_40_percent'),
      ]),
      legend: [
        markup(
          'Recovery: clean water of the inlet, without the tank. Efficiency: clean water the user gets of the inlet, over a scenario; the range is that of the scenarios. Meets, misses: with the whole range of the figure; cannot say: the range holds the yardstick, or there is none.',
        ),
        say`Yardsticks: ${most} L to drain per litre treated, US EPA WaterSense; ${least}, an ASSE standard, from memory. A scenario of a bench is no rating: ratings are measured under the conditions of their standards.`,
      ],
    }),
  ]);
}

function of(state: UseState, key: 'recovery_tank_bypassed' | 'efficiency_in_use'): number[] {
  return state.lines.flatMap(({ row }) => row.yardsticks?.[key] ?? []);
}

function shares(key: string, values: readonly number[]): Piece {
  if (values.length === 0) return markup('not tested');
  const ends = [Math.min(...values), Math.max(...values)];
  const [low = '', high = ''] = ends.map((share) => significant(share * 100, 3));
  const all = ends.map((share) => share * 100);
  return low === high
    ? figure(key, all.slice(0, 1), '%', low)
    : figure(key, all, '%', `${low} to ${high}`);
}

function answers(
  key: string,
  { lines }: UseState,
  yardstick: 'within_2_3' | 'reaches_40_percent',
): Piece {
  const counts = verdictCounts(lines.map(({ row }) => row.yardsticks?.[yardstick] ?? null));
  const [only] = counts;
  if (only === undefined) return markup('not tested');
  if (counts.length === 1) {
    return markup(only.words === 'cannot say' ? only.words : `${only.words} in every scenario`);
  }
  return listed(
    counts.map(
      ({ words, count: number }) =>
        say`${markup(words)} in ${count(`${key}.${words.replace(' ', '-')}`, number)}`,
    ),
  );
}
