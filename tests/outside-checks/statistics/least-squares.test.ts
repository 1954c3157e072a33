import { describe, it } from 'vitest';
import { leastSquaresLine } from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

const example = readJson<{
  source: string;
  tol_rel: number;
  x: number[];
  y: number[];
  expected: {
    slope: number;
    intercept: number;
    uSlope: number;
    uIntercept: number;
    residualSd: number;
  };
}>('least-squares-case.json');

describe(`Straight line: ${example.source}`, () => {
  it('slope, intercept, standard errors and scatter of seven readings', () => {
    const line = leastSquaresLine(example);
    const { expected } = example;
    const printed = { relative: example.tol_rel, reason: 'printed to 9 figures; stated 1e-6' };
    expectClose(line.slope, expected.slope, printed);
    expectClose(line.intercept, expected.intercept, {
      absolute: 1e-15,
      reason: 'zero but for rounding',
    });
    expectClose(line.uSlope, expected.uSlope, printed);
    expectClose(line.uIntercept, expected.uIntercept, printed);
    expectClose(line.residualSd, expected.residualSd, printed);
  });
});
