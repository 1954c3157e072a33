import type { LabResult, LetterMeaning } from '../../model/index.ts';
import { notDetected, notQuantified } from './judge-limits.ts';
import { readLabDecimal, UNPROVEN_MARKS } from './lab-decimal.ts';
import type { Figure, JudgementFinding, ResultCells } from './result-cells.ts';

/** A printed number that no sign, word or letter calls a limit. */
export function plainNumber(
  value: number,
  plusMinus: number | null,
  meanings: ReadonlySet<LetterMeaning>,
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  const spread = plusMinus ?? columnUncertainty(cells, findings);
  if (value < 0 && cells.mayBeNegative !== true) {
    return negative(value, spread, figure, cells, findings);
  }
  if (value === 0 && cells.mayBeNegative !== true) return zero(figure, cells, findings);
  if (meanings.has('upper-bound') || meanings.has('biased-high')) {
    note('is an upper bound by its letters', figure, findings);
    return { ...figure, mdl: null, rl: value, kind: 'notQuantified' };
  }
  if (meanings.has('biased-low')) {
    note('is a lower bound by its letters', figure, findings);
    return { ...figure, kind: 'aboveRange', limit: value };
  }
  if (cells.rl !== null && value < cells.rl) return notQuantified(figure, value, findings);
  const isEstimate = meanings.has('estimated');
  if (isEstimate && cells.rl === null) {
    note('is estimated and has no reporting limit; the figure itself bounds it', figure, findings);
    const isAbove = figure.mdl !== null && figure.mdl <= value;
    return { ...figure, mdl: isAbove ? figure.mdl : null, rl: value, kind: 'notQuantified' };
  }
  if (isEstimate) note('is marked as estimated above the reporting limit', figure, findings);
  return {
    ...figure,
    kind: 'quantified',
    value,
    standardUncertainty: standardUncertainty(spread, figure, cells, findings),
    isEstimate: isEstimate || meanings.has('doubtful'),
  };
}

function note(what: string, figure: Figure, findings: JudgementFinding[]): void {
  findings.push({
    code: 'result-estimated',
    message: `"${figure.text}" ${what}`,
    remedy: 'ask the lab why; a retest makes the figure firm',
  });
}

/** A printed plus-minus is no standard uncertainty until its coverage factor is known. */
function standardUncertainty(
  spread: number | null,
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): number | null {
  if (spread === null) return null;
  const factor = cells.coverageFactor ?? null;
  if (factor !== null) return spread / factor;
  findings.push({
    code: 'uncertainty-coverage-unknown',
    message: `"${figure.text}" states plus-minus ${spread} and not what it covers`,
    remedy: 'set coverage_factor in the sidecar: 2 for 95 %, 1 for a standard uncertainty',
    subject: 'coverage',
  });
  return null;
}

function columnUncertainty(cells: ResultCells, findings: JudgementFinding[]): number | null {
  const text = (cells.uncertainty ?? '').replace(/^(?:±|\+\/?-)\s*/, '').trim();
  if (text === '' || /^(?:-+|n\/?a|none)$/i.test(text)) return null;
  const reading = readLabDecimal(text, cells.marks ?? UNPROVEN_MARKS);
  if (reading.kind === 'number' && reading.value >= 0) return reading.value;
  findings.push({
    code: 'number-unreadable',
    message: `the uncertainty "${text}" is not a number`,
    remedy: 'ask the lab for the export with uncertainties as plain numbers',
  });
  return null;
}

/**
 * A figure below zero is a reading below background: not detected, up to the figure plus its stated
 * uncertainty, or up to the limits beside it.
 */
function negative(
  value: number,
  spread: number | null,
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  const hasLimit = cells.mdl !== null || cells.rl !== null;
  const upper = spread === null ? 0 : value + spread;
  if (!hasLimit && upper <= 0) {
    findings.push({
      code: 'result-unreadable',
      message: `"${figure.text}" is below zero`,
      remedy:
        'ask the lab for the limit; where it stands for "no result", name it among the sentinels ' +
        'of the sidecar',
    });
    return null;
  }
  findings.push({
    code: 'result-negative',
    message: `"${figure.text}" is below zero; it was taken as not detected`,
    remedy: 'none needed where the lab subtracts a blank or a background',
  });
  const below = { ...figure, stated: null };
  return hasLimit
    ? notDetected(below, null, null, findings)
    : notDetected({ ...below, rl: upper }, null, null, findings);
}

/** A zero is a real count of organisms and no measurement of a chemical. */
function zero(figure: Figure, cells: ResultCells, findings: JudgementFinding[]): LabResult | null {
  if (cells.isCount) return { ...figure, kind: 'notDetected', rl: cells.rl ?? 1 };
  if (cells.rl !== null || cells.mdl !== null) {
    findings.push({
      code: 'result-zero',
      message: `the lab reports "${figure.text}" for a chemical; it was taken as not detected`,
      remedy: 'ask the lab whether zero stands for not detected',
    });
  }
  return notDetected({ ...figure, stated: null }, null, null, findings);
}
