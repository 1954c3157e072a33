/** Non-exceedance probabilities, in the order of the ascending values they belong to. */
export interface PlottingPositions {
  readonly exact: Float64Array;
  readonly limits: Float64Array;
}

/**
 * Plotting positions of results censored at several limits.
 *
 * What: the probability of exceeding each limit comes from the results that can tell, those below it
 * and those between it and the next; exact numbers spread evenly between two limits, results below
 * a limit evenly between zero and that limit. Plotting constant 0 (Weibull).
 * @param exact ascending; ties get one position each, in order
 * @param limits ascending, none above the largest exact number
 * Edge cases: no limit gives r / (n + 1).
 * Source: D. R. Helsel & T. A. Cohn (1988), Estimation of descriptive statistics for multiply
 * censored water quality data, Water Resources Research 24, 1997-2004, equations 2 to 6, after
 * R. M. Hirsch & J. R. Stedinger (1987), same journal 23, 715-727.
 * Checked by: tests/outside-checks/statistics/censored.test.ts (appendix B of the source)
 */
export function plottingPositions(exact: Float64Array, limits: Float64Array): PlottingPositions {
  const positions: PlottingPositions = {
    exact: new Float64Array(exact.length),
    limits: new Float64Array(limits.length),
  };
  // From the highest limit down: each group holds the exact numbers from its limit to the next.
  let exceedNext = 0;
  let exactEnd = exact.length;
  let limitEnd = limits.length;
  while (limitEnd > 0 || exactEnd > 0) {
    const limit = limitEnd > 0 ? (limits[limitEnd - 1] as number) : -Infinity;
    let exactStart = exactEnd;
    while (exactStart > 0 && (exact[exactStart - 1] as number) >= limit) exactStart--;
    let limitStart = limitEnd;
    while (limitStart > 0 && limits[limitStart - 1] === limit) limitStart--;

    const inGroup = exactEnd - exactStart;
    const below = exactStart + limitEnd;
    const exceed = exceedNext + (inGroup / (inGroup + below)) * (1 - exceedNext);
    for (let r = 1; r <= inGroup; r++) {
      positions.exact[exactStart + r - 1] =
        1 - exceed + ((exceed - exceedNext) * r) / (inGroup + 1);
    }
    const atLimit = limitEnd - limitStart;
    for (let r = 1; r <= atLimit; r++) {
      positions.limits[limitStart + r - 1] = ((1 - exceed) * r) / (atLimit + 1);
    }
    exceedNext = exceed;
    exactEnd = exactStart;
    limitEnd = limitStart;
  }
  return positions;
}
