import {
  type CensoredResult,
  kaplanMeier,
  lognormalMle,
  robustRos,
} from '../../statistics/index.ts';
import { whereUsable } from './where-usable.ts';

/** Results from which a summary with non-detects is given, and single figures among them. */
const LEAST_RESULTS = 8;
const LEAST_FIGURES = 3;

/** Means of results of which some are not single figures, by three methods, in their unit. */
export interface CensoredSummary {
  readonly n: number;
  readonly censored: number;
  /** Leftover probability below the smallest figure placed at zero and at the lowest limit. */
  readonly kaplanMeier: { readonly low: number; readonly high: number };
  /** Null where the figures do not carry the regression. */
  readonly robustRos: number | null;
  /** Null where the likelihood did not converge. */
  readonly lognormalMle: number | null;
}

/**
 * A summary of results of which some are censored: from eight results with three single figures,
 * fewer say nothing but their bounds.
 *
 * Three methods stand side by side because each leans on something else: Kaplan–Meier on nothing but
 * the order, regression on order statistics on the shape of the censored part, the likelihood on the
 * shape of all.
 * @param results intervals with non-detects bounded by their detection limit
 * @returns null below eight results, below three figures, or without any censored result
 * Source: D. R. Helsel (2012), Statistics for Censored Environmental Data, memory; the counts are a
 * choice of this tool.
 */
export function summariseCensored(results: readonly CensoredResult[]): CensoredSummary | null {
  const figures = results.filter(({ low, high }) => low === high).length;
  if (results.length < LEAST_RESULTS || figures < LEAST_FIGURES) return null;
  if (figures === results.length) return null;
  const { mean } = kaplanMeier(results);
  if (mean.zero === null || mean.lowest === null) return null;
  return {
    n: results.length,
    censored: results.length - figures,
    kaplanMeier: { low: mean.zero, high: mean.lowest },
    robustRos: whereUsable(() => finite(robustRos(results).mean)),
    lognormalMle: whereUsable(() => {
      const fit = lognormalMle(results);
      return fit.converged ? finite(fit.mean) : null;
    }),
  };
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
