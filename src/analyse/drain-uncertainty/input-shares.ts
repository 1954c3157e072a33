import type { WaterInputRow } from '../../model/index.ts';
import { sampleCovariance, sampleSd } from '../../statistics/index.ts';
import type { BenchUncertainty } from './device-uncertainty.ts';
import type { SpreadFact, UseDraws } from './spread-use.ts';
import { tankInputRows } from './tank-inputs.ts';

/**
 * The inputs of a device's water use in a scenario, with their standard uncertainties and the share
 * each has in the variance of the total drain ratio.
 *
 * The share is the squared correlation of input and answer over the draws: what a straight line in
 * that input explains. What none explains (how years differ, and inputs acting together) is the row
 * `year`. Drain ratio and drain per start come from one fit and share one share, which stands at the
 * ratio. With a thousand draws a share is good to a few hundredths.
 * Source: squared correlation as first-order sensitivity; I. M. Sobol' (1993), Sensitivity estimates
 *   for nonlinear mathematical models, for what a share means (from memory).
 */
export function inputRows(fact: SpreadFact, uncertainty: BenchUncertainty): WaterInputRow[] {
  const { drain, scenario, spread, simulated } = fact;
  const { fit, flushes, tank } = uncertainty.of(drain);
  const base = {
    device: fact.row.device,
    variant: fact.row.variant,
    scenario: fact.row.scenario,
  };
  const rows: WaterInputRow[] = [];
  const share = (column: Float64Array): number | null =>
    spread === null ? null : shareOf(column, spread);
  if (drain.tank !== null && tank !== null) {
    const drawn = spread?.inputs.tank ?? null;
    rows.push(...tankInputRows(drain.tank, tank, drawn, share).map((row) => ({ ...base, ...row })));
  } else if (drain.fit !== null && fit !== null) {
    rows.push({
      ...base,
      input: 'drain-ratio',
      unit: 'L/L',
      estimate: drain.fit.ratio,
      standard_uncertainty: fit.uRatio,
      rests_on: 'runs',
      share: spread === null ? null : shareOf(producing(spread, fact), spread),
    });
    rows.push({
      ...base,
      input: 'per-start',
      unit: 'L',
      estimate: drain.fit.perStartL,
      standard_uncertainty: drain.fit.method === 'pooled' ? null : fit.uPerStartL,
      rests_on: 'runs',
      share: null,
    });
  }
  for (const [index, { rule, volumeL }] of drain.flushVolumes.entries()) {
    const open = flushes[index];
    const column = spread?.inputs.flushL[index];
    rows.push({
      ...base,
      input: `flush.${rule.values.rule}.volume`,
      unit: 'L',
      estimate: volumeL,
      standard_uncertainty: open?.uVolumeL ?? null,
      rests_on: open?.restsOn ?? 'stated',
      share: spread === null || column === undefined ? null : shareOf(column, spread),
    });
  }
  rows.push({
    ...base,
    input: 'pour-factor',
    unit: '1',
    estimate: 1,
    standard_uncertainty: spread === null ? null : sampleSdOr0(spread.pourFactor),
    rests_on: 'assumed',
    share: spread === null ? null : shareOf(spread.pourFactor, spread),
  });
  const told = rows.reduce((sum, row) => sum + (row.share ?? 0), 0);
  const isOpen = spread !== null && simulated !== null && sampleSdOr0(spread.totalDrainRatio) > 0;
  rows.push({
    ...base,
    input: 'year',
    unit: null,
    estimate: null,
    standard_uncertainty: null,
    rests_on: scenario.isRandom ? 'random pours' : 'inputs acting together',
    share: isOpen ? Math.max(0, 1 - told) : spread === null ? null : 0,
  });
  return rows;
}

/** Drain per clean litre of production alone, at the starts of the year of the estimate. */
function producing({ inputs }: UseDraws, { drain, simulated }: SpreadFact): Float64Array {
  const { ratio, perStartL } = inputs;
  const cleanL = simulated?.cleanL ?? 0;
  const perStart = drain.model?.perStartL ?? 0;
  const startsL = (simulated?.producingDrainL ?? 0) - (drain.model?.drainRatio ?? 0) * cleanL;
  const startsPerL = perStart > 0 && cleanL > 0 ? startsL / perStart / cleanL : 0;
  return ratio.map((each, draw) => each + (perStartL[draw] as number) * startsPerL);
}

function shareOf(input: Float64Array, { totalDrainRatio }: UseDraws): number {
  const own = sampleSdOr0(input);
  const answer = sampleSdOr0(totalDrainRatio);
  if (own === 0 || answer === 0) return 0;
  return Math.min(1, (sampleCovariance(input, totalDrainRatio) / own / answer) ** 2);
}

function sampleSdOr0(values: Float64Array): number {
  const first = values[0];
  return values.length < 2 || values.every((value) => value === first) ? 0 : sampleSd(values);
}
