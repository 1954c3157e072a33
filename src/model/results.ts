import type { Analyte } from '../reference/index.ts';
import type { LabLayoutFile } from './lab-layout.ts';

/** Why a cell of a lab file holds no result. */
export type MissingReason = 'blank' | 'not-tested' | 'rejected' | 'verdict' | 'not-applicable';

/**
 * One lab figure in the analyte's canonical unit and basis. It is shared by every row with the same
 * text, limits and unit, and never changed.
 *
 * `mdl` and `rl` are the lab's detection and reporting limit, `stated` the number printed in the
 * cell or in the sign column's value; null where the lab gives none.
 */
interface Figure {
  readonly mdl: number | null;
  readonly rl: number | null;
  readonly stated: number | null;
  readonly text: string;
  /** Letters the lab put beside the figure, kept as they are. */
  readonly qualifiers: readonly string[];
  /** How the printed figure became the canonical one; index into `ResultTable.conversions`. */
  readonly conversion: number;
}

export interface Quantified extends Figure {
  readonly kind: 'quantified';
  readonly value: number;
  /** Standard uncertainty in the canonical unit, as stated by the lab; null when it states none. */
  readonly standardUncertainty: number | null;
  /** The lab marks the figure as estimated. */
  readonly isEstimate: boolean;
}

export interface NotDetected extends Figure {
  readonly kind: 'notDetected';
}

/** Detected, not quantified: between the two limits. */
export interface NotQuantified extends Figure {
  readonly kind: 'notQuantified';
}

export interface AboveRange extends Figure {
  readonly kind: 'aboveRange';
  readonly limit: number;
}

export interface Missing extends Figure {
  readonly kind: 'missing';
  readonly reason: MissingReason;
}

/**
 * A most probable number whose tubes are known: an interval that holds the chance of the tubes.
 *
 * `value` is null where no tube or every tube grew; `low` is 0 and `high` is Infinity there.
 */
export interface MostProbable extends Figure {
  readonly kind: 'mostProbable';
  readonly value: number | null;
  readonly low: number;
  readonly high: number;
  /** Standard uncertainty of the natural logarithm of the value; null without one. */
  readonly uLog: number | null;
  /** `2 of 3, 1 of 3, 0 of 3`, the largest volume first. */
  readonly tubes: string;
}

export type LabResult =
  | Quantified
  | NotDetected
  | NotQuantified
  | AboveRange
  | MostProbable
  | Missing;

/** Which limit bounds a result that was not detected. */
export type NondetectBound = 'reporting' | 'detection';

/** All that is known of a true value: `low <= value <= high`; `high` may be Infinity. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * The interval of a result.
 *
 * Not detected: from 0 to the reporting limit (`reporting`) or to the detection limit
 * (`detection`); where the lab gives one limit only, that one. Detected, not quantified: from the
 * detection limit (0 without one) to the reporting limit. A half-limit never stands for a value.
 *
 * @returns null for a missing result
 */
export function intervalOf(result: LabResult, bound: NondetectBound): Interval | null {
  switch (result.kind) {
    case 'quantified':
      return { low: result.value, high: result.value };
    case 'notDetected': {
      const limit = bound === 'reporting' ? (result.rl ?? result.mdl) : (result.mdl ?? result.rl);
      return { low: 0, high: limit ?? Number.POSITIVE_INFINITY };
    }
    case 'notQuantified':
      return { low: result.mdl ?? 0, high: result.rl ?? Number.POSITIVE_INFINITY };
    case 'aboveRange':
      return { low: result.limit, high: Number.POSITIVE_INFINITY };
    case 'mostProbable':
      return { low: result.low, high: result.high };
    case 'missing':
      return null;
    default:
      return result satisfies never;
  }
}

/** How figures of one unit and basis become canonical: value x factor + offset. */
export interface ResultConversion {
  readonly fromUnit: string;
  readonly toUnit: string;
  readonly steps: readonly string[];
}

/** A lab file as it was read. */
export interface LabFile {
  readonly path: string;
  /** The file name without its ending; `bottles.csv` refers to it. */
  readonly stem: string;
  readonly header: readonly string[];
  readonly layout: string;
  /** Figures looked at: one a row of a long export, one a cell of a wide one. */
  readonly rowsRead: number;
  readonly results: number;
  /** Rows that are no results, by reason; with `results` they make up `rowsRead`. */
  readonly leftOut: readonly { readonly reason: string; readonly count: number }[];
  /** A sidecar that states how the file was read, where none rules; ready to be written. */
  readonly proposal: LabLayoutFile | null;
  /** Local date, or date and time, of sampling as the lab prints it, by index of the sample. */
  readonly collected: ReadonlyMap<number, string>;
}

/**
 * All results of a bench in columns, one entry a result, so that a million rows stay small.
 * Places are integers; `resultPlace` makes the object when somebody asks.
 */
export interface ResultTable {
  readonly length: number;
  readonly files: readonly LabFile[];
  readonly analytes: readonly Analyte[];
  readonly conversions: readonly ResultConversion[];
  /** Distinct results, shared. */
  readonly distinct: readonly LabResult[];
  readonly file: Int32Array;
  readonly line: Int32Array;
  /** 0-based field index of the cell that holds the result. */
  readonly field: Int32Array;
  /** Index into `Bench.samples`; -1 where the sample is unknown. */
  readonly sample: Int32Array;
  readonly analyte: Int32Array;
  readonly result: Int32Array;
}
