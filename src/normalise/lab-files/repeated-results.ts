import type { LabResult } from '../../model/index.ts';
import type { LayoutPlan } from './layout-plan.ts';

/** A result with what decides between it and another for the same sample and analyte. */
export interface Candidate {
  readonly analyte: number;
  /** Index of the distinct result. */
  readonly result: number;
  readonly figure: LabResult;
  readonly fraction: 'total' | 'dissolved' | null;
  /** Reported on the basis the analyte is kept in. */
  readonly isOwnBasis: boolean;
  readonly dilution: number | null;
  readonly method: string;
  /** Date of the report, ISO; null where the export gives none. */
  readonly reported: string | null;
}

export interface Choice {
  readonly keepsFirst: boolean;
  /** Why the other is left out, in the words of the count. */
  readonly reason: string;
}

/** Rounding of a figure that was printed on two bases. */
const SAME_WITHIN = 0.02;

/**
 * Which of two results for one sample and analyte counts; null where no rule tells.
 *
 * The first rule that holds, never the order of rows:
 * 1. the total before the dissolved fraction, or as the sidecar prefers;
 * 2. both print the same: one of them;
 * 3. the later report;
 * 4. on two bases and equal within the rounding of the print, or within 2 %: the one on the basis
 *    the analyte is kept in;
 * 5. of two runs, a figure before one that was above the range, then the lower dilution;
 * 6. the method the sidecar prefers;
 * 7. both not detected: the lower limit.
 */
export function chooseResult(
  first: Candidate,
  second: Candidate,
  plan: Pick<LayoutPlan, 'preferFraction' | 'preferMethods'>,
): Choice | null {
  if (first.fraction !== null && second.fraction !== null && first.fraction !== second.fraction) {
    const keepsFirst = first.fraction === plan.preferFraction;
    const other = plan.preferFraction === 'total' ? 'dissolved' : 'total';
    return { keepsFirst, reason: `${other} beside ${plan.preferFraction}` };
  }
  if (first.result === second.result || same(first.figure, second.figure)) {
    return { keepsFirst: true, reason: 'the same result again' };
  }
  if (first.reported !== null && second.reported !== null && first.reported !== second.reported) {
    return { keepsFirst: first.reported > second.reported, reason: 'superseded by a later report' };
  }
  return (
    byBasis(first, second) ??
    byRun(first, second) ??
    byMethod(first, second, plan.preferMethods) ??
    byLimit(first, second)
  );
}

function same(a: LabResult, b: LabResult): boolean {
  return (
    a.kind === b.kind &&
    a.stated === b.stated &&
    a.mdl === b.mdl &&
    a.rl === b.rl &&
    a.text === b.text
  );
}

function byBasis(first: Candidate, second: Candidate): Choice | null {
  if (first.isOwnBasis === second.isOwnBasis) return null;
  const [a, b] = [first.figure, second.figure];
  if (a.kind !== b.kind) return null;
  const [x, y] = a.kind === 'quantified' ? [a.stated, b.stated] : [a.rl ?? a.mdl, b.rl ?? b.mdl];
  if (x === null || y === null) return null;
  const rounding = Math.max(halfDigit(a, x), halfDigit(b, y), SAME_WITHIN * Math.max(x, y));
  if (Math.abs(x - y) > rounding) return null;
  return { keepsFirst: first.isOwnBasis, reason: 'the same result on another basis' };
}

/** Half a unit in the last printed digit of a figure, in its canonical unit. */
function halfDigit(figure: LabResult, canonical: number): number {
  const printed = /\d+(?:[.,](\d+))?/.exec(figure.text);
  const value = Number((printed?.[0] ?? '').replace(',', '.'));
  if (printed === null || value === 0) return 0;
  return (0.5 * 10 ** -(printed[1]?.length ?? 0) * canonical) / value;
}

function byRun(first: Candidate, second: Candidate): Choice | null {
  const [a, b] = [isDiluted(first), isDiluted(second)];
  if (a === b && first.dilution === second.dilution) return null;
  const reason = 'another run of the same sample';
  const over = (candidate: Candidate) => candidate.figure.kind === 'aboveRange';
  if (over(first) !== over(second)) return { keepsFirst: over(second), reason };
  const [x, y] = [first.dilution ?? (a ? 2 : 1), second.dilution ?? (b ? 2 : 1)];
  return x === y ? null : { keepsFirst: x < y, reason };
}

function isDiluted(candidate: Candidate): boolean {
  return candidate.figure.qualifiers.some((letter) => /^D\d?$/i.test(letter));
}

function byMethod(first: Candidate, second: Candidate, methods: readonly string[]): Choice | null {
  const [a, b] = [methods.indexOf(first.method), methods.indexOf(second.method)];
  if (a === b) return null;
  const keepsFirst = b === -1 || (a !== -1 && a < b);
  return { keepsFirst, reason: 'by a method the sidecar puts behind' };
}

function byLimit(first: Candidate, second: Candidate): Choice | null {
  const [a, b] = [first.figure, second.figure];
  if (a.kind !== 'notDetected' || b.kind !== 'notDetected') return null;
  const [x, y] = [a.rl ?? a.mdl ?? 0, b.rl ?? b.mdl ?? 0];
  return { keepsFirst: x <= y, reason: 'not detected at a higher limit' };
}
