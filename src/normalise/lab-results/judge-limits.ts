import type { LabResult } from '../../model/index.ts';
import type { Figure, JudgementFinding, ResultCells } from './result-cells.ts';
import type { LimitKind } from './result-words.ts';

/**
 * A result that was not detected.
 *
 * A number behind `<` is one of the two limits: the one its word names, else the one it equals, else
 * the one that is missing. A text that says "below the reporting limit" says nothing about the
 * detection limit, so that one does not bound it.
 */
export function notDetected(
  figure: Figure,
  stated: number | null,
  of: LimitKind | null,
  findings: JudgementFinding[],
): LabResult | null {
  let { mdl, rl } = figure;
  if (stated !== null && of === 'detection') mdl = stated;
  else if (stated !== null && of === 'reporting') rl = stated;
  else if (stated !== null && stated !== mdl && stated !== rl) {
    if (rl === null) rl = stated;
    else if (stated > rl) {
      findings.push({
        code: 'result-limit-order',
        message: `"${figure.text}" is a higher limit than the reporting limit ${rl} beside it`,
        remedy: 'ask the lab whether the sample was diluted; the higher limit was used',
      });
      rl = stated;
    } else if (mdl === null || stated > mdl) mdl = stated;
  }
  if (of === 'reporting') mdl = null;
  if (mdl === null && rl === null) return limitMissing(figure, of, findings);
  return { ...figure, mdl, rl, kind: 'notDetected' };
}

function limitMissing(figure: Figure, of: LimitKind | null, findings: JudgementFinding[]): null {
  const which = of === 'reporting' ? 'reporting limit' : 'limit';
  findings.push({
    code: 'result-limit-missing',
    message: `"${figure.text}" comes without a ${which}`,
    remedy: 'ask the lab for its detection and reporting limit of this analyte',
  });
  return null;
}

/** Detected, not quantified: from the detection limit (0 without one) to the reporting limit. */
export function notQuantified(
  figure: Figure,
  value: number | null,
  findings: JudgementFinding[],
): LabResult | null {
  if (figure.rl === null) {
    findings.push({
      code: 'result-limit-missing',
      message: `"${figure.text}" was detected and not quantified, and no reporting limit is given`,
      remedy: 'ask the lab for the reporting limit; it is the upper bound of such a result',
    });
    return null;
  }
  if (value !== null && figure.mdl !== null && value < figure.mdl) {
    findings.push({
      code: 'result-limit-order',
      message: `"${figure.text}" lies below the detection limit ${figure.mdl} beside it`,
      remedy: 'ask the lab; the result was taken as anything up to the reporting limit',
    });
    return { ...figure, mdl: null, kind: 'notQuantified' };
  }
  return { ...figure, kind: 'notQuantified' };
}

/** Found and not counted, or not found and not counted, in the volume examined. */
export function presence(
  isPresent: boolean,
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  if (isPresent) {
    const limit = cells.isCount ? 1 : (cells.mdl ?? 0);
    return { ...figure, stated: limit, kind: 'aboveRange', limit };
  }
  if (!cells.isCount) return notDetected(figure, null, null, findings);
  return { ...figure, stated: 1, rl: 1, mdl: null, kind: 'notDetected' };
}

/** A printed range: several results, so that their interval stands for one sample only in doubt. */
export function range(
  low: number,
  high: number,
  figure: Figure,
  findings: JudgementFinding[],
): LabResult {
  findings.push({
    code: 'result-range',
    message: `"${figure.text}" is a range of several results and not the result of one sample`,
    remedy: 'ask the lab for the single results; the whole range was used',
  });
  return { ...figure, mdl: low > 0 ? low : null, rl: high, kind: 'notQuantified' };
}
