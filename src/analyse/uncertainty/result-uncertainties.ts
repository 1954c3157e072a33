import { type Bench, type LabResult, resultAt } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { additivePart } from './additive-part.ts';
import { assumedUncertainty } from './assumed-uncertainty.ts';
import { poolDuplicates } from './duplicate-scatter.ts';
import type { Uncertainty } from './uncertainty.ts';

/**
 * The uncertainty of every result of a bench, in order of preference: stated by the lab, pooled from
 * the duplicates of the bench, assumed.
 *
 * What a lab states is taken as it stands. To the other two an additive part joins in quadrature: what the
 * limits say, because a constant percentage is too small near them, and the rounding of the figure.
 * @returns a function of the index of a result
 */
export function resultUncertainties(bench: Bench): (index: number) => Uncertainty {
  const uncertaintyOf = plannedUncertainties(bench);
  return (index) => {
    const { results } = bench;
    const at = results.analyte[index] ?? -1;
    const analyte = results.analytes[at];
    if (analyte === undefined) throw new RangeError(`no analyte ${at}`);
    return uncertaintyOf(resultAt(results, index), analyte);
  };
}

/**
 * The uncertainty that a result, also one that is only planned, would have on this bench.
 * @returns a function of a result and its analyte
 */
export function plannedUncertainties(
  bench: Bench,
): (result: LabResult, analyte: Analyte) => Uncertainty {
  const scatterOf = poolDuplicates(bench);
  const fraction = bench.settings.uncertainty.repeatability_fraction;
  const indexOf = new Map(bench.results.analytes.map(({ key }, at) => [key, at]));
  return (result, analyte) => {
    const stated = statedUncertainty(result);
    if (stated !== null) return stated;
    const scatter = scatterOf(indexOf.get(analyte.key) ?? -1);
    return scatter === null
      ? assumedUncertainty(analyte, result, sizeOf(result), fraction)
      : { ...scatter, additive: additivePart(result), counting: 0, from: 'duplicates' };
  };
}

/** The interval of a most probable number holds all its uncertainty. */
const IN_THE_INTERVAL: Uncertainty = {
  relative: 0,
  additive: 0,
  counting: 0,
  from: 'stated',
  degreesOfFreedom: Number.POSITIVE_INFINITY,
};

function statedUncertainty(result: LabResult): Uncertainty | null {
  if (result.kind === 'mostProbable') return IN_THE_INTERVAL;
  if (result.kind !== 'quantified' || result.standardUncertainty === null) return null;
  const { value, standardUncertainty } = result;
  return {
    relative: value > 0 ? standardUncertainty / value : 0,
    additive: value > 0 ? 0 : standardUncertainty,
    counting: 0,
    from: 'stated',
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  };
}

/** A figure of the size of a result: its value, else the largest reading it can have been. */
function sizeOf(result: LabResult): number {
  switch (result.kind) {
    case 'quantified':
      return result.value;
    case 'aboveRange':
      return result.limit;
    case 'notQuantified':
      return result.rl ?? result.mdl ?? 0;
    case 'notDetected':
      return result.mdl ?? result.rl ?? 0;
    case 'mostProbable':
      return result.value ?? 0;
    case 'missing':
      return 0;
    default:
      return result satisfies never;
  }
}
