import { STANDARD } from '../../model/index.ts';
import { efficiencyThresholds, type WaterEfficiencyFigure } from '../../reference/index.ts';
import type { WaterUseFact } from '../water-use.ts';
import type { Claim } from './claim.ts';

/** A threshold of water use that a claim names, beside one scenario of the bench. */
export interface EfficiencyAgainstUse {
  readonly threshold: WaterEfficiencyFigure;
  /** Null where the bench has no scenario. */
  readonly scenario: string | null;
  /** Drain per clean volume, or percent of the inlet, as the threshold counts it; null when unknown. */
  readonly measured: number | null;
  /** By the estimate. A scenario of a bench is no rating, so nothing is contradicted by it. */
  readonly bench: 'reached' | 'not-reached' | 'not-tested';
}

/**
 * What the certificate of a claim asks of water use, against what the device with its settings as
 * delivered drained in every scenario of the bench.
 *
 * @param facts water use of all devices
 * @returns an empty list where the claim names no such standard
 */
export function efficiencyAgainstUse(
  { row }: Claim,
  facts: readonly WaterUseFact[],
): EfficiencyAgainstUse[] {
  const { device, standard } = row.values;
  const thresholds = efficiencyThresholds(standard ?? '');
  const own = facts.filter((fact) => fact.row.device === device && fact.row.variant === STANDARD);
  return thresholds.flatMap((threshold) =>
    own.length === 0
      ? [{ threshold, scenario: null, measured: null, bench: 'not-tested' as const }]
      : own.map((fact) => against(threshold, fact)),
  );
}

function against(threshold: WaterEfficiencyFigure, { row }: WaterUseFact): EfficiencyAgainstUse {
  const { estimate: ratio } = row.total_drain_ratio;
  const { estimate: recovery } = row.recovery;
  const isRatio = threshold.metric === 'maximum reject ratio';
  const measured = isRatio ? ratio : recovery === null ? null : recovery * 100;
  const { value, comparator } = threshold;
  const common = { threshold, scenario: row.scenario, measured };
  if (measured === null || value === null) return { ...common, bench: 'not-tested' };
  const isReached = comparator === '<=' ? measured <= value : measured >= value;
  return { ...common, bench: isReached ? 'reached' : 'not-reached' };
}
