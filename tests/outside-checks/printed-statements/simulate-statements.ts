import { riseLevel, riseProbability, stateReduction } from '../../../src/analyse/index.ts';
import type { NondetectBound, ReductionOutcome } from '../../../src/model/index.ts';
import { randomStream } from '../../../src/simulate/index.ts';
import { figuresAreFalse, printedIsFalse } from './judge-statement.ts';
import { type ErrorShape, reading, reported } from './lab-readings.ts';

/** One cell of the grid. */
export interface Cell {
  /** True reduction, a fraction. */
  readonly reduction: number;
  /** True feed in reporting limits. */
  readonly feed: number;
  /** Relative standard uncertainty of one result, a fraction. */
  readonly relative: number;
}

export const REDUCTIONS = [0, 0.2, 0.5, 0.8, 0.9, 0.95, 0.99, 0.999];
export const FEEDS = [0.5, 0.9, 1.1, 2, 5, 10, 30, 100, 300, 1000];
export const RELATIVES = [0.03, 0.05, 0.1, 0.2, 0.3, 0.4];

/** Every cell of the published grid. */
export const GRID: readonly Cell[] = RELATIVES.flatMap((relative) =>
  FEEDS.flatMap((feed) => REDUCTIONS.map((reduction) => ({ reduction, feed, relative }))),
);

export interface Simulation {
  readonly seed: number;
  readonly trials: number;
  readonly shape: ErrorShape;
  readonly bound: NondetectBound;
}

export interface CellCount {
  readonly cell: Cell;
  readonly trials: number;
  /** Trials by outcome. */
  readonly outcomes: ReadonlyMap<ReductionOutcome, number>;
  /** Trials whose printed statement is false, by outcome. */
  readonly falseOutcomes: ReadonlyMap<ReductionOutcome, number>;
  /** Trials whose printed statement is false. */
  readonly falsePrinted: number;
  /** Trials whose figures are false before they are rounded for print. */
  readonly falseFigures: number;
}

const OPTIONS = { confidence: 0.95, correlation: 0 };

/** Draws feed and product of a cell again and again and judges what would be printed of them. */
export function simulateCell(cell: Cell, index: number, simulation: Simulation): CellCount {
  const { seed, trials, shape, bound } = simulation;
  const { nextFraction } = randomStream(seed, index);
  const truth = { feed: cell.feed, product: cell.feed * (1 - cell.reduction) };
  const outcomes = new Map<ReductionOutcome, number>();
  const falseOutcomes = new Map<ReductionOutcome, number>();
  let falseFigures = 0;
  for (let trial = 0; trial < trials; trial += 1) {
    const feed = reported(
      reading(truth.feed, cell.relative, shape, nextFraction),
      cell.relative,
      bound,
    );
    const product = reported(
      reading(truth.product, cell.relative, shape, nextFraction),
      cell.relative,
      bound,
    );
    const p = riseProbability(feed, product, OPTIONS);
    const isRise = p !== null && p <= riseLevel(OPTIONS.confidence);
    const statement = stateReduction(feed, product, OPTIONS, isRise);
    count(outcomes, statement.outcome);
    if (!figuresAreFalse(statement, truth)) continue;
    falseFigures += 1;
    if (printedIsFalse(statement, feed, product, truth)) count(falseOutcomes, statement.outcome);
  }
  const falsePrinted = [...falseOutcomes.values()].reduce((sum, one) => sum + one, 0);
  return { cell, trials, outcomes, falseOutcomes, falsePrinted, falseFigures };
}

function count(counts: Map<ReductionOutcome, number>, outcome: ReductionOutcome): void {
  counts.set(outcome, (counts.get(outcome) ?? 0) + 1);
}
