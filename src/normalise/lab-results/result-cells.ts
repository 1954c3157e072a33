import type { FindingCode } from '../../findings/index.ts';
import type { LabResult } from '../../model/index.ts';
import type { NumberMarks } from './lab-decimal.ts';
import type { LetterReader } from './letter-meaning.ts';
import type { LimitKind } from './result-words.ts';

/** How the cells of one lab file are to be understood; what is left out has its usual meaning. */
export interface ResultRules {
  readonly marks?: NumberMarks;
  readonly meaningOf?: LetterReader;
  /** What stands behind ND; null where neither the file nor its sidecar says so. */
  readonly notDetected?: LimitKind | 'not-tested' | null;
  /** k of the printed plus-minus; null where nobody has said it. */
  readonly coverageFactor?: number | null;
  /** What "too numerous to count" is above. */
  readonly countableMaximum?: number | null;
}

/** The cells of a lab row that together make one result, limits already as numbers. */
export interface ResultCells extends ResultRules {
  readonly result: string;
  readonly sign: string;
  readonly qualifier: string;
  /** Why a result is blank, in words. */
  readonly condition?: string;
  /** The figure behind plus-minus where it has a column of its own. */
  readonly uncertainty?: string;
  readonly mdl: number | null;
  readonly rl: number | null;
  /** Counts of organisms: a zero is a real count, less than one in the volume examined. */
  readonly isCount: boolean;
  /** Temperatures and the like, for which zero and less are plain figures. */
  readonly mayBeNegative?: boolean;
  /** Tells whether a text behind a number is a unit rather than letters. */
  readonly isUnit: (text: string) => boolean;
}

export interface Judgement {
  /** In the unit of the lab; null when the cells cannot be read. */
  readonly result: LabResult | null;
  /** A unit written inside the result cell. */
  readonly cellUnit: string | null;
  readonly findings: readonly JudgementFinding[];
}

export interface JudgementFinding {
  readonly code: FindingCode;
  readonly message: string;
  readonly remedy: string;
  /** Reported once per file for each subject; without one, at every distinct row. */
  readonly subject?: string;
}

/** What all results of one row share; a figure that is read becomes one of the kinds. */
export type Figure = Omit<Extract<LabResult, { kind: 'notDetected' }>, 'kind'>;
