import type { Bench, BenchRow } from '../../model/index.ts';
import { type ReplacedPart, replacementInterval } from './ownership.ts';

/** Seconds of a year of 365.2425 days, as in the table of units. */
const YEAR_S = 31_556_952;

/** A part of a device and how often it is replaced. */
export interface PartCost extends ReplacedPart {
  readonly row: BenchRow<'parts'>;
  /** What ends its life first. */
  readonly limit: 'time' | 'capacity';
}

/**
 * The parts of a device with their intervals, the earlier of time and capacity.
 *
 * Capacity is held against the clean water: what a maker means by it is rarely said.
 * @returns `isWhole` false where a part states neither, so that its cost is not known; null without
 *   any part in parts.csv
 */
export function partCosts(
  bench: Bench,
  device: string,
  litresPerYear: number | null,
): { readonly parts: readonly PartCost[]; readonly isWhole: boolean } | null {
  const rows = bench.tables.parts.filter(({ values }) => values.device === device);
  if (rows.length === 0) return null;
  const parts = rows.flatMap((row): PartCost[] => {
    const { lasts, capacity, price, count } = row.values;
    const lastsYears = lasts === null ? null : lasts.value / YEAR_S;
    const intervalYears = replacementInterval(lastsYears, capacity?.value ?? null, litresPerYear);
    if (intervalYears === null) return [];
    const limit = intervalYears === lastsYears ? 'time' : 'capacity';
    return [{ row, price: price.amount * (count ?? 1), intervalYears, limit }];
  });
  return { parts, isWhole: parts.length === rows.length };
}
