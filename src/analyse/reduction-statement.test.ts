import { describe, expect, it } from 'vitest';
import { readJson } from '../../tests/outside-checks/statistics/read-fixture.ts';
import {
  riseLevel,
  riseProbability,
  stateReduction,
  type UncertainSide,
} from './reduction-statement.ts';
import type { Uncertainty } from './uncertainty/index.ts';

const OPTIONS = { confidence: 0.95, correlation: 0 };

function scatter(relative: number, additive = 0): Uncertainty {
  return {
    relative,
    additive,
    counting: 0,
    from: 'stated',
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  };
}

function figure(value: number, relative: number): UncertainSide {
  const point = { low: value, high: value };
  return {
    interval: point,
    readings: point,
    state: 'quantified',
    estimate: value,
    uncertainty: scatter(relative),
    isDecisionBound: false,
  };
}

function notDetected(mdl: number, rl: number, relative: number): UncertainSide {
  return {
    interval: { low: 0, high: rl },
    readings: { low: 0, high: mdl },
    state: 'notDetected',
    estimate: null,
    uncertainty: scatter(relative, mdl / 3.14),
    isDecisionBound: false,
  };
}

describe('a reduction between two figures', () => {
  it('has the interval of Fieller around it', () => {
    // Feed 150, product 3, both 6 %, normal factor 1.959964: 97.6358404805 to 98.308066792 %.
    const stated = stateReduction(figure(150, 0.06), figure(3, 0.06), OPTIONS, false);
    expect(stated.outcome).toBe('measured');
    expect(stated.intervalLow).toBeCloseTo(0.976358404805, 8);
    expect(stated.intervalHigh).toBeCloseTo(0.98308066792, 8);
  });

  it('is not shown where the interval holds zero', () => {
    expect(stateReduction(figure(10, 0.1), figure(9, 0.1), OPTIONS, false).outcome).toBe(
      'not-shown',
    );
  });

  it('reaches complete removal where the product is not told apart from nothing', () => {
    const stated = stateReduction(figure(100, 0.05), figure(1, 0.6), OPTIONS, false);
    expect(stated).toMatchObject({ outcome: 'measured', intervalHigh: null });
  });

  it('is untestable where the feed is not told apart from zero', () => {
    const stated = stateReduction(figure(1, 0.6), figure(0.1, 0.1), OPTIONS, false);
    expect(stated).toMatchObject({ outcome: 'untestable', intervalLow: null });
  });

  it('is narrower where feed and product share their errors', () => {
    const own = stateReduction(figure(10, 0.1), figure(5, 0.1), OPTIONS, false);
    const shared = stateReduction(
      figure(10, 0.1),
      figure(5, 0.1),
      { ...OPTIONS, correlation: 0.8 },
      false,
    );
    expect(shared.intervalLow ?? 0).toBeGreaterThan(own.intervalLow ?? 1);
  });

  it('of a feed of zero has no figure', () => {
    const stated = stateReduction(figure(0, 0), figure(1, 0.1), OPTIONS, false);
    expect(stated).toMatchObject({ outcome: 'untestable', estimate: null });
  });
});

describe('a bound', () => {
  it('is widened by the uncertainty of the feed: 1 - RL / (b (1 - k u))', () => {
    const stated = stateReduction(figure(100, 0.1), notDetected(0.1, 1, 0.1), OPTIONS, false);
    expect(stated.outcome).toBe('at-least');
    expect(stated.low).toBeCloseTo(1 - 1 / (100 * (1 - 1.6448536269514722 * 0.1)), 12);
    expect(stated.confidence).toBe(0.95);
  });

  it('at the only limit a lab gives reaches above it, because readings scatter about it', () => {
    const one = { ...notDetected(0.1, 1, 0.1), readings: { low: 0, high: 1 } };
    const stated = stateReduction(figure(100, 0), one, OPTIONS, false);
    expect(stated.low ?? 1).toBeLessThan(1 - 1 / 100);
  });

  it('is untestable where the feed may be no higher than the limit', () => {
    expect(stateReduction(figure(1.1, 0.1), notDetected(0.1, 1, 0.1), OPTIONS, false).outcome).toBe(
      'untestable',
    );
  });

  it('of no use stays unbounded instead of infinite', () => {
    const stated = stateReduction(
      notDetected(0.1, 1, 0.1),
      notDetected(0.1, 1, 0.1),
      OPTIONS,
      false,
    );
    expect(stated).toMatchObject({ outcome: 'untestable', low: null, high: null });
  });
});

describe('a rise', () => {
  it('is told by the difference in standard uncertainties', () => {
    // z = 2 / sqrt(0.98² + 0.84²) = 1.5495, one-sided p 0.0606.
    expect(riseProbability(figure(12, 0.07), figure(14, 0.07), OPTIONS)).toBeCloseTo(0.0606, 4);
  });

  it('above a feed that was not detected needs the product above its limit', () => {
    const feed = notDetected(0.1, 0.5, 0.1);
    expect(riseProbability(feed, figure(0.4, 0.1), OPTIONS)).toBe(1);
    expect(riseProbability(feed, figure(5, 0.1), OPTIONS) ?? 1).toBeLessThan(1e-6);
  });

  it('has no probability without both sides, and none of two bounds', () => {
    expect(riseProbability(null, figure(1, 0.1), OPTIONS)).toBeNull();
    expect(riseProbability(notDetected(0.1, 1, 0.1), notDetected(1, 5, 0.1), OPTIONS)).toBe(1);
  });

  it('is called at two fifths of what the confidence leaves', () => {
    expect(riseLevel(0.95)).toBeCloseTo(0.02, 12);
  });
});

describe('a pair of figures stated with its uncertainty', () => {
  const { cases } = readJson<{
    cases: {
      id: string;
      inputs: { a: number; b: number; rel_u_a: number; rel_u_b: number; rho: number };
      expected: { fieller95_capped_pct: [number, number] };
    }[];
  }>('reduction-uncertainty.json');
  // Own derivation recomputed in R and numpy, see SOURCE.md of the fixture; tolerance 5e-8 percent, the
  // multiplier of the fixture is rounded to seven digits.
  it.each(cases)(
    'has the interval of Fieller, cut at complete removal: $id',
    ({ inputs, expected }) => {
      const stated = stateReduction(
        figure(inputs.b, inputs.rel_u_b),
        figure(inputs.a, inputs.rel_u_a),
        { confidence: 0.95, correlation: inputs.rho },
        false,
      );
      const [low, high] = expected.fieller95_capped_pct;
      expect(100 * (stated.intervalLow ?? Number.NaN)).toBeCloseTo(low, 7);
      expect(100 * (stated.intervalHigh ?? 1)).toBeCloseTo(high, 7);
    },
  );
});
