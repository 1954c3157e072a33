import type { CostFact } from './compute-costs.ts';
import { type Ownership, replacementYears } from './ownership.ts';

/** What was spent by a moment, for a chart over time. */
export interface SpentBy {
  readonly year: number;
  readonly amount: number;
}

/**
 * Money spent up to each moment: the purchase at 0, parts as they are bought, the rest evenly.
 * @returns two points at every purchase, before and after it
 */
export function spentOverTime(
  input: Pick<Ownership, 'purchase' | 'parts' | 'runningPerYear' | 'years'>,
): SpentBy[] {
  const { purchase, parts, runningPerYear, years } = input;
  const purchases = parts
    .flatMap(({ price, intervalYears }) =>
      replacementYears(intervalYears, years).map((year) => ({ year, price })),
    )
    .sort((a, b) => a.year - b.year);
  const points: SpentBy[] = [{ year: 0, amount: purchase }];
  let bought = purchase;
  for (const { year, price } of purchases) {
    points.push({ year, amount: bought + runningPerYear * year });
    bought += price;
    points.push({ year, amount: bought + runningPerYear * year });
  }
  points.push({ year: years, amount: bought + runningPerYear * years });
  return points;
}

/** What a device in one state costs over time in one scenario. */
export interface CostSeries {
  readonly device: string;
  readonly variant: string;
  /** False: something is not counted, so that the curve is a lower bound. */
  readonly isWhole: boolean;
  readonly points: readonly SpentBy[];
}

/**
 * The curves of a scenario; a device without a known purchase price has none, as its curve would
 * start at 0.
 */
export function costSeries(facts: readonly CostFact[], scenario: string): CostSeries[] {
  return facts.flatMap(({ row, parts, runningPerYear }) => {
    if (row.scenario !== scenario || row.purchase === null) return [];
    return {
      device: row.device,
      variant: row.variant,
      isWhole: row.not_counted.length === 0,
      points: spentOverTime({
        purchase: row.purchase,
        parts,
        runningPerYear: runningPerYear.value,
        years: row.years,
      }),
    };
  });
}
