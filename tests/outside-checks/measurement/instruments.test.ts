import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cylinderTolerance, scaleToleranceG } from '../../../src/reference/index.ts';
import {
  arithmeticMean,
  leastSquaresLine,
  meanInterval,
  ratioUncertainty,
  sampleSd,
  studentTQuantile,
} from '../../../src/statistics/index.ts';

type Figures = Readonly<Record<string, number & readonly number[]>>;

const { cases } = JSON.parse(
  readFileSync(new URL('measurement.json', import.meta.url), 'utf8'),
) as {
  cases: readonly {
    readonly id: string;
    readonly inputs: Figures;
    readonly expected: Figures;
  }[];
};

function caseOf(id: string) {
  const found = cases.find((item) => item.id === id);
  if (found === undefined) throw new RangeError(`no case ${id}`);
  return {
    input: (name: string): number => found.inputs[name] ?? Number.NaN,
    inputs: (name: string): readonly number[] => found.inputs[name] ?? [],
    expected: (name: string): number => found.expected[name] ?? Number.NaN,
  };
}

/** The cases print nine digits; their stated tolerance is 1e-6 of the figure. */
function expectClose(got: number, expected: number) {
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-6 * Math.abs(expected) + 1e-12);
}

describe('relative uncertainties in quadrature (JCGM 100:2008, derived cases)', () => {
  it.each(['MEA-03', 'MEA-04'])('%s: flow of a timed pour and its uncertainty', (id) => {
    const { input, expected } = caseOf(id);
    const flow = input('V_mL') / input('t_s');
    expectClose(flow, expected('Q_mL_s'));
    const uncertainty = ratioUncertainty({
      numerator: input('V_mL'),
      denominator: input('t_s'),
      uNumerator: input('u_V_mL'),
      uDenominator: input('u_t_s'),
    });
    expectClose(uncertainty, expected('u_Q_mL_s'));
    if (id === 'MEA-04') expectClose((100 * uncertainty) / flow, expected('relative_percent'));
  });

  it('MEA-05: a drain ratio of 1525 +-10 mL to 236.6 +-2 mL', () => {
    const { input, expected } = caseOf('MEA-05');
    expectClose(input('drain_mL') / input('clean_mL'), expected('ratio'));
    const uncertainty = ratioUncertainty({
      numerator: input('drain_mL'),
      denominator: input('clean_mL'),
      uNumerator: input('u_drain'),
      uDenominator: input('u_clean'),
    });
    expectClose(uncertainty, expected('u_ratio'));
  });

  it('MEA-06: a rejection of 95.6 % from pen readings of 320 +-6.4 and 14 +-2', () => {
    const { input, expected } = caseOf('MEA-06');
    expectClose(1 - input('product_TDS') / input('feed_TDS'), expected('rejection'));
    const uncertainty = ratioUncertainty({
      numerator: input('product_TDS'),
      denominator: input('feed_TDS'),
      uNumerator: input('u_product'),
      uDenominator: input('u_feed'),
    });
    expectClose(uncertainty, expected('u_rejection'));
  });
});

describe('repeats and lines (Student t and least squares, derived cases)', () => {
  it('MEA-08: mean, standard deviation and 95 % half-width of five times', () => {
    const { inputs, expected, input } = caseOf('MEA-08');
    const times = inputs('times_s');
    const { mean, high } = meanInterval(times);
    expectClose(arithmeticMean(times), expected('mean'));
    expectClose(sampleSd(times), expected('sd'));
    expectClose(high - mean, expected('half_width_95'));
    expectClose(studentTQuantile(0.975, 4), input('t_quantile_0.975_df4'));
  });

  it('MEA-09: flow as the slope of cumulative volume against time, with standard errors', () => {
    const { inputs, expected } = caseOf('MEA-09');
    const line = leastSquaresLine({ x: inputs('t_s'), y: inputs('V_L') });
    expectClose(line.slope, expected('slope'));
    // Zero but for rounding.
    expect(Math.abs(line.intercept)).toBeLessThan(1e-12);
    expectClose(line.uSlope ?? Number.NaN, expected('se_slope'));
    expectClose(line.uIntercept ?? Number.NaN, expected('se_intercept'));
    expectClose(line.residualSd ?? Number.NaN, expected('s'));
  });
});

describe('graduated cylinders (ASTM E1272-02 (2012), Table 1; 1000 and 2000 mL from memory)', () => {
  const rows = readFileSync(new URL('cylinder-tolerance.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').slice(0, 4).map(Number));

  it.each(rows)('%s mL, least graduation %s mL: class A %s mL, class B %s mL', (...figures) => {
    const [capacity = 0, graduation = 0, classA = 0, classB = 0] = figures;
    const a = cylinderTolerance(capacity / 1000, 'A');
    const b = cylinderTolerance(capacity / 1000, 'B');
    // The same decimals, so exact but for the division by 1000.
    expect(a.vesselL * 1000).toBeCloseTo(classA, 12);
    expect(b.vesselL * 1000).toBeCloseTo(classB, 12);
    expect(a.readingL * 1000).toBeCloseTo(graduation / 2, 12);
  });

  it('uses the smallest cylinder that holds a volume, and several fillings of the largest', () => {
    expect(cylinderTolerance(0.101, 'A').vesselL * 1000).toBeCloseTo(1, 12);
    expect(cylinderTolerance(4, 'A').vesselL * 1000).toBeCloseTo(12, 12);
    expect(cylinderTolerance(4.1, 'A').vesselL * 1000).toBeCloseTo(18, 12);
    expect(cylinderTolerance(0, 'B').vesselL).toBeGreaterThan(0);
    expect(() => cylinderTolerance(Number.NaN, 'A')).toThrow();
    expect(() => cylinderTolerance(-1, 'A')).toThrow();
  });
});

describe('scales (NIST Handbook 44, class III maintenance tolerance, from memory)', () => {
  it.each([
    [500, 1],
    [501, 2],
    [950, 2],
    [2000, 2],
    [4000, 3],
    [4001, 5],
  ])('%d g on a 1 g scale may be off by %d g', (mass, tolerance) => {
    expect(scaleToleranceG(mass, 1)).toBe(tolerance);
  });
});
