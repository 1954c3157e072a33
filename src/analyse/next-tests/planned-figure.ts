import type { LabResult } from '../../model/index.ts';

/** What a lab offers for one analyte, in the canonical unit. */
export interface LabTerms {
  /** Reporting limit. */
  readonly limit: number;
  /** Null where the lab gives one limit only. */
  readonly detectionLimit: number | null;
  /** Relative standard uncertainty; null where the lab states none. */
  readonly uncertainty: number | null;
}

/** A lab prints three significant digits: common practice, no source. */
const DIGITS = 3;

/** The result a lab with these terms would print of a content. */
export function plannedFigure(content: number, terms: LabTerms): LabResult {
  const { limit, detectionLimit, uncertainty } = terms;
  const figure = {
    mdl: detectionLimit,
    rl: limit,
    stated: null,
    text: content.toPrecision(DIGITS),
    qualifiers: [],
    conversion: 0,
  };
  if (content < (detectionLimit ?? limit)) return { ...figure, kind: 'notDetected' };
  if (content < limit) return { ...figure, kind: 'notQuantified' };
  return {
    ...figure,
    kind: 'quantified',
    value: content,
    standardUncertainty: uncertainty === null ? null : uncertainty * content,
    isEstimate: false,
  };
}

/**
 * What a lab with these terms would print of the water behind an earlier result, if nothing changed.
 *
 * A figure repeats. Not detected stays not detected, at the new limit. What was detected and not
 * quantified counts as the end that speaks against a reduction where the new lab could quantify it:
 * the detection limit of a feed, the reporting limit of a product. Above range and tubes stay.
 */
export function repeatedResult(
  result: LabResult,
  terms: LabTerms,
  side: 'feed' | 'product',
): LabResult {
  switch (result.kind) {
    case 'quantified': {
      const repeated = plannedFigure(result.value, terms);
      return repeated.kind === 'quantified' ? { ...repeated, text: result.text } : repeated;
    }
    case 'notDetected':
      return plannedFigure(0, terms);
    case 'notQuantified': {
      const { rl, mdl } = result;
      const isWider = terms.limit >= (rl ?? Number.POSITIVE_INFINITY);
      return isWider && (terms.detectionLimit ?? terms.limit) <= (mdl ?? 0)
        ? { ...plannedFigure(0, terms), kind: 'notQuantified' }
        : plannedFigure((side === 'feed' ? mdl : (rl ?? mdl ?? terms.limit)) ?? 0, terms);
    }
    case 'aboveRange':
    case 'mostProbable':
    case 'missing':
      return result;
    default:
      return result satisfies never;
  }
}
