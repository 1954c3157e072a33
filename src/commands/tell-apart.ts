import {
  type AnalyteComparison,
  type Margin,
  toldApartGroupRows,
  toldApartRows,
} from '../compare/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { toldApartGroupViews, toldApartViews } from '../report/views/index.ts';
import { benchComparisons, benchReductions } from './bench-facts.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { type CheckedFilters, checkFilters, type Filters } from './filters.ts';
import { readMargin } from './margin-setting.ts';
import { reductionSettings } from './reduction-settings.ts';

export interface ToldApartOptions extends Filters {
  /** `5 %` or `1.5x`; null or left out: the setting of the bench. */
  readonly margin?: string | null;
}

/**
 * Which devices differ on which analyte, pair by pair: rows of `told-apart/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown, option-unknown for the margin
 */
export function toldApart(bench: Bench, options: ToldApartOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const { comparisons, margin, findings } = comparisonsOf(bench, options, keep);
  const { confidence } = bench.settings;
  const rows = comparisons.flatMap((comparison) =>
    toldApartRows(comparison, { confidence, margin }),
  );
  const kept = rows.filter(
    (row) =>
      keep.keepsDevice(row.device_a, row.variant_a) ||
      keep.keepsDevice(row.device_b, row.variant_b),
  );
  return benchOutcome(bench, {
    schema: 'told-apart/1',
    settings: {
      ...reductionSettings(bench),
      ...tellingSettings(margin),
      ...filterSettings(options),
    },
    rows: kept,
    findings,
    views: toldApartViews(kept, { confidence, margin }),
  });
}

/**
 * The groups of devices not told apart, by analyte: rows of `told-apart-groups/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function toldApartGroups(bench: Bench, options: ToldApartOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const { comparisons, margin, findings } = comparisonsOf(bench, options, keep);
  const { confidence } = bench.settings;
  const rows = comparisons
    .flatMap((comparison) => toldApartGroupRows(comparison, { confidence }))
    .filter(({ members }) =>
      members.some(({ device, variant }) => keep.keepsDevice(device, variant)),
    );
  return benchOutcome(bench, {
    schema: 'told-apart-groups/1',
    settings: {
      ...reductionSettings(bench),
      ...tellingSettings(margin),
      ...filterSettings(options),
    },
    rows,
    findings,
    views: toldApartGroupViews(rows),
  });
}

/** Every device enters the comparison, so that a filter changes nothing but what is shown. */
function comparisonsOf(bench: Bench, options: ToldApartOptions, keep: CheckedFilters) {
  const { findings } = benchReductions(bench);
  const margin = marginOf(bench, options);
  return {
    comparisons: benchComparisons(bench, margin).filter(({ analyte }) =>
      keep.keepsAnalyte(analyte.key),
    ),
    margin,
    findings,
  } satisfies { comparisons: AnalyteComparison[]; margin: Margin; findings: unknown };
}

export function marginOf(bench: Bench, { margin }: ToldApartOptions): Margin {
  return margin === undefined || margin === null
    ? { kind: 'points', value: bench.settings.equivalence_margin }
    : readMargin(margin);
}

/** How devices are told apart, and the margin in force. */
export function tellingSettings(margin: Margin): Record<string, unknown> {
  return {
    told_apart: {
      pairs: 'intervals of the difference of products on shared feeds',
      many_pairs: 'Bonferroni over the pairs of an analyte and kind of feed',
      margin:
        margin.kind === 'points'
          ? { difference_of_reductions: margin.value }
          : { ratio_of_passages: margin.value },
    },
  };
}
