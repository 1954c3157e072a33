import type { Bench, LabResult } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { joinFigures } from '../reduction-side.ts';
import {
  type ReductionStatement,
  type StatementOptions,
  stateReduction,
  type UncertainSide,
} from '../reduction-statement.ts';
import { statementOptions } from '../reductions.ts';
import type { Uncertainty } from '../uncertainty/index.ts';
import { isCounted, plannedUncertainties } from '../uncertainty/index.ts';

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

/**
 * Planned results are judged as measured ones are: same intervals, uncertainty, confidence and
 * statement.
 */
export function plannedBench(bench: Bench): PlannedBench {
  const options = statementOptions(bench);
  const uncertaintyOf = plannedUncertainties(bench);
  const bound = bench.settings.nondetect_bound;
  const sideOf = (result: LabResult, analyte: Analyte): UncertainSide =>
    joinFigures(
      [{ result, uncertainty: uncertaintyOf(result, analyte), isCount: isCounted(analyte) }],
      'mean',
      bound,
    );
  return {
    options,
    uncertaintyOf,
    sideOf,
    statementOf: (feed, product, analyte) =>
      stateReduction(sideOf(feed, analyte), sideOf(product, analyte), options, false),
  };
}
