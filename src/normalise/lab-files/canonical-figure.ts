import type { LabResult } from '../../model/index.ts';
import { applyLinear, applyRatio, type Conversion } from '../../reference/index.ts';

/** A result of the lab's unit in the canonical unit and basis of its analyte. */
export function inCanonicalUnit(
  result: LabResult,
  conversion: Conversion,
  index: number,
): LabResult {
  const convert = (value: number): number =>
    applyLinear(value, conversion.ratio, conversion.offset);
  const maybe = (value: number | null): number | null => (value === null ? null : convert(value));
  const figure = {
    ...result,
    mdl: maybe(result.mdl),
    rl: maybe(result.rl),
    stated: maybe(result.stated),
    conversion: index,
  };
  if (figure.kind === 'aboveRange') return { ...figure, limit: convert(figure.limit) };
  if (figure.kind !== 'quantified') return figure;
  const uncertainty = figure.standardUncertainty;
  return {
    ...figure,
    value: convert(figure.value),
    standardUncertainty: uncertainty === null ? null : applyRatio(uncertainty, conversion.ratio),
  };
}
