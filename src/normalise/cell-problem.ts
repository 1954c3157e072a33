import type { FindingCode } from '../findings/index.ts';

/** Why a cell could not be read; the reader of the row adds the place. */
export interface CellProblem {
  readonly problem: FindingCode;
  readonly message: string;
  readonly remedy: string;
}

export type CellReading<T> = { readonly value: T } | CellProblem;

export function problem(code: FindingCode, message: string, remedy: string): CellProblem {
  return { problem: code, message, remedy };
}
