import { type Bench, intervalOf, type LabResult, type NondetectBound } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import {
  type ReductionStatement,
  type StatementOptions,
  stateReduction,
  type UncertainSide,
} from '../reduction-statement.ts';
import { statementOptions } from '../reductions.ts';
import type { Uncertainty } from '../uncertainty/index.ts';
import { isCounted, plannedUncertainties, readingsOf } from '../uncertainty/index.ts';

/** What planned results of a bench would be taken to say: its own settings and its own scatter. */
export interface PlannedBench {
  readonly options: StatementOptions;
  readonly uncertaintyOf: (result: LabResult, analyte: Analyte) => Uncertainty;
  readonly sideOf: (result: LabResult, analyte: Analyte) => UncertainSide;
  /** What would be printed of a planned feed and product. */
  readonly statementOf: (
    feed: LabResult,
    product: LabResult,
    analyte: Analyte,
  ) => ReductionStatement;
}

const STATES = {
  quantified: 'quantified',
  notDetected: 'notDetected',
  notQuantified: 'between',
  aboveRange: 'aboveRange',
} as const;

/**
 * Planned results are judged as measured ones are: same intervals, uncertainty, confidence and
 * statement.
 */
export function plannedBench(bench: Bench): PlannedBench {
  const options = statementOptions(bench);
  const uncertaintyOf = plannedUncertainties(bench);
  const bound = bench.settings.nondetect_bound;
  const sideOf = (result: LabResult, analyte: Analyte): UncertainSide =>
    sideOfResult(result, analyte, uncertaintyOf(result, analyte), bound);
  return {
    options,
    uncertaintyOf,
    sideOf,
    statementOf: (feed, product, analyte) =>
      stateReduction(sideOf(feed, analyte), sideOf(product, analyte), options, false),
  };
}

function sideOfResult(
  result: LabResult,
  analyte: Analyte,
  uncertainty: Uncertainty,
  bound: NondetectBound,
): UncertainSide {
  const interval = intervalOf(result, bound);
  if (interval === null || result.kind === 'missing') {
    throw new RangeError('a missing result has no interval');
  }
  return {
    interval,
    readings: readingsOf(result, isCounted(analyte)),
    state: STATES[result.kind],
    estimate: result.kind === 'quantified' ? result.value : null,
    uncertainty,
    isDecisionBound: bound === 'detection' && result.kind === 'notDetected',
  };
}
