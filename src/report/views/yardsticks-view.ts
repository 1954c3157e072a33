import type { WaterUseRow, YardstickVerdict } from '../../model/index.ts';
import { significant } from '../format-number.ts';
import type { View } from '../view.ts';

const NONE = 'not tested';

/** Every reverse-osmosis device with a drain line beside the published yardsticks. */
export function yardsticksViews(rows: readonly WaterUseRow[]): View[] {
  const concerned = rows.filter((row) => row.yardsticks !== null);
  const states = [...new Set(concerned.map(stateOf))];
  if (states.length === 0) return [];
  const told = states.map((state) => concerned.filter((row) => stateOf(row) === state));
  const within = told.filter((own) => own.every((row) => row.yardsticks?.within_2_3 === 'meets'));
  return [
    {
      caption:
        `Beside published yardsticks: ${within.length} of ${states.length} drain at most 2.3 L per ` +
        'clean litre in every scenario of this bench',
      columns: [
        { head: 'Device', align: 'left' },
        { head: 'Variant', align: 'left' },
        { head: 'Recovery while producing, %', align: 'right' },
        { head: 'Efficiency in use, %', align: 'right' },
        { head: 'At most 2.3 to drain per 1', align: 'left' },
        { head: 'At least 40 %', align: 'left' },
      ],
      rows: told.map((own) => [
        own[0]?.device ?? '',
        own[0]?.variant ?? '',
        percent(own[0]?.yardsticks?.recovery_tank_bypassed ?? null),
        percentRange(own.flatMap((row) => row.yardsticks?.efficiency_in_use ?? [])),
        scenariosText(own.map((row) => row.yardsticks?.within_2_3 ?? null)),
        scenariosText(own.map((row) => row.yardsticks?.reaches_40_percent ?? null)),
      ]),
      legend: [
        'Recovery: product of the inlet with the tank absent or bypassed. Efficiency: product the user gets of the inlet, in use (definitions of NSF/ANSI 58).',
        '2.3 L to drain per litre treated, 30.3 %: US EPA WaterSense. 40 %: ASSE 1086-2020, from memory. Meets, misses: with the whole range; cannot say: the range holds the figure, or there is none.',
        'A scenario of a bench is no rating: ratings are measured under the conditions of their standards.',
      ],
    },
  ];
}

function stateOf(row: WaterUseRow): string {
  return `${row.device}\t${row.variant}`;
}

function percent(share: number | null): string {
  return share === null ? NONE : significant(share * 100, 3);
}

function percentRange(shares: readonly number[]): string {
  if (shares.length === 0) return NONE;
  const [low, high] = [percent(Math.min(...shares)), percent(Math.max(...shares))];
  return low === high ? low : `${low} to ${high}`;
}

/** In how many scenarios a device meets and misses a yardstick, and in how many it cannot be said. */
export function verdictCounts(verdicts: readonly (YardstickVerdict | null)[]): {
  readonly words: string;
  readonly count: number;
}[] {
  const words = { meets: 'meets', misses: 'misses', 'cannot-say': 'cannot say' } as const;
  return (['meets', 'misses', 'cannot-say'] as const).flatMap((verdict) => {
    const count = verdicts.filter((each) => each === verdict).length;
    return count === 0 ? [] : { words: words[verdict], count };
  });
}

function scenariosText(verdicts: readonly (YardstickVerdict | null)[]): string {
  const counts = verdictCounts(verdicts);
  const [only] = counts;
  if (only === undefined) return NONE;
  if (counts.length > 1) return counts.map(({ words, count }) => `${words} in ${count}`).join(', ');
  return only.count === 1 || only.words === 'cannot say'
    ? only.words
    : `${only.words} in every scenario`;
}
