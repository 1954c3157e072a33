import { describe, it } from 'vitest';
import { fieller, logRatioInterval, ratioUncertainty } from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

interface Case {
  id: string;
  inputs: { a: number; b: number; rel_u_a: number; rel_u_b: number; rho: number };
  expected: {
    u_R_delta_pct: number;
    log95_pct: [number, number];
    fieller95_pct: [number, number];
    fieller_g: number;
  };
  monte_carlo_normal: { p2_5_pct: number; p97_5_pct: number };
}

const { cases } = readJson<{ cases: Case[] }>('reduction-uncertainty.json');
const CLOSED = { absolute: 1e-8, reason: 'closed form in percent, printed to 12 figures' };
const Z = 1.959963984540054;

describe('Ratio of two uncertain numbers, derived closed forms and a normal Monte Carlo', () => {
  for (const { id, inputs, expected, monte_carlo_normal: simulated } of cases) {
    const { a, b, rel_u_a, rel_u_b, rho } = inputs;
    const ratio = {
      numerator: a,
      denominator: b,
      uNumerator: a * rel_u_a,
      uDenominator: b * rel_u_b,
      covariance: rho * a * rel_u_a * b * rel_u_b,
      multiplier: Z,
    };
    const percentLess = (value: number | null): number => 100 * (1 - (value ?? Number.NaN));

    it(`derived, first order, logarithm and Fieller: ${id}`, () => {
      expectClose(100 * ratioUncertainty(ratio), expected.u_R_delta_pct, CLOSED);
      const logarithm = logRatioInterval(ratio);
      expectClose(percentLess(logarithm.high), expected.log95_pct[0], CLOSED);
      expectClose(percentLess(logarithm.low), expected.log95_pct[1], CLOSED);
      const interval = fieller(ratio);
      expectClose(interval.g, expected.fieller_g, CLOSED);
      expectClose(percentLess(interval.high), expected.fieller95_pct[0], CLOSED);
      expectClose(percentLess(interval.low), expected.fieller95_pct[1], CLOSED);
    });

    it(`simulated, 4,000,000 normal trials against Fieller: ${id}`, () => {
      const interval = fieller(ratio);
      const noise = {
        relative: 0.0001,
        absolute: 0.02,
        reason: 'percentiles of four million trials, printed to five figures',
      };
      expectClose(percentLess(interval.high), simulated.p2_5_pct, noise);
      expectClose(percentLess(interval.low), simulated.p97_5_pct, noise);
    });
  }
});
