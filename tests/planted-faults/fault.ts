import type { FindingCode } from '../../src/findings/index.ts';
import type { BenchText, CellPlace } from './bench-text.ts';

/** One fault: what went wrong, how it comes into a clean bench, and what has to be said about it. */
export interface Fault {
  readonly name: string;
  readonly code: FindingCode;
  /** Changes the bench and gives the place of the cell that the finding has to name. */
  readonly plant: (bench: BenchText) => CellPlace;
}
