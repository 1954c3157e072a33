import { describe, expect, it } from 'vitest';
import { plannedFigure, repeatedResult } from './planned-figure.ts';

const TERMS = { limit: 1, detectionLimit: 0.2, uncertainty: null };
const ONE_LIMIT = { limit: 1, detectionLimit: null, uncertainty: 0.05 };

describe('what a lab would print of a content', () => {
  it('is a figure from the reporting limit, with the uncertainty the lab states', () => {
    expect(plannedFigure(1, TERMS)).toMatchObject({
      kind: 'quantified',
      value: 1,
      standardUncertainty: null,
    });
    expect(plannedFigure(40, ONE_LIMIT)).toMatchObject({ standardUncertainty: 2 });
  });

  it('is a trace between two limits, and not detected below the lower or the only one', () => {
    expect(plannedFigure(0.5, TERMS).kind).toBe('notQuantified');
    expect(plannedFigure(0.5, ONE_LIMIT).kind).toBe('notDetected');
    expect(plannedFigure(0, TERMS).kind).toBe('notDetected');
  });
});

describe('a result repeated at another lab', () => {
  const trace = plannedFigure(0.5, TERMS);

  it('keeps its figure, and is no figure below the new limit', () => {
    expect(repeatedResult(plannedFigure(3, TERMS), ONE_LIMIT, 'product')).toMatchObject({
      kind: 'quantified',
      value: 3,
    });
    const coarse = { limit: 5, detectionLimit: null, uncertainty: null };
    expect(repeatedResult(plannedFigure(3, TERMS), coarse, 'feed').kind).toBe('notDetected');
  });

  it('stays not detected, at the new limit', () => {
    const fine = { limit: 0.1, detectionLimit: null, uncertainty: null };
    expect(repeatedResult(plannedFigure(0, TERMS), fine, 'product')).toMatchObject({
      kind: 'notDetected',
      rl: 0.1,
    });
  });

  it('stays a trace where the new lab sees no more', () => {
    expect(repeatedResult(trace, TERMS, 'product')).toMatchObject({ kind: 'notQuantified', rl: 1 });
  });

  it('of a trace is the end that speaks against a reduction where the new lab could quantify it', () => {
    const fine = { limit: 0.1, detectionLimit: 0.02, uncertainty: null };
    expect(repeatedResult(trace, fine, 'product')).toMatchObject({ value: 1 });
    expect(repeatedResult(trace, fine, 'feed')).toMatchObject({ value: 0.2 });
  });

  it('of a trace without a detection limit may be a feed of nothing', () => {
    const bare = { ...trace, mdl: null };
    expect(repeatedResult(bare, ONE_LIMIT, 'feed').kind).toBe('notDetected');
  });
});
