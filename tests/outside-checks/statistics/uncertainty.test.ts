import { describe, it } from 'vitest';
import {
  arithmeticMean,
  chiSquareQuantile,
  normalQuantile,
  ratioUncertainty,
  sampleCovariance,
  sampleSd,
  studentTQuantile,
  welchSatterthwaite,
} from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

interface Expected {
  value: number;
  tol_abs: number;
  origin: string;
}

/** Value, standard uncertainty, degrees of freedom. */
type Triple = [number, number, number];

/** `inputs` differ from case to case; each test takes those of its own case. */
interface Case {
  id: string;
  source: string;
  inputs: {
    coverage: number;
    df: number;
    V: number[];
    I_mA: number[];
    phi: number[];
    X1: Triple;
    X2: Triple;
    Yu: Triple;
  };
  expected: Record<string, Expected>;
}

const cases = readJson<Case[]>('uncertainty-cases.json');

function find(id: string): Case {
  const found = cases.find((item) => item.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
}

/** Checks one figure of a case against the value and tolerance the case states. */
function check({ expected }: Case, name: string, actual: number): void {
  const { value, tol_abs: absolute, origin } = expected[name] as Expected;
  expectClose(actual, value, { absolute, reason: `${origin} digits, as stated with the case` });
}

describe('Combined uncertainty', () => {
  const gauge = find('gum_h1_end_gauge');
  it(`${gauge.source}: effective degrees of freedom and U99`, () => {
    const parts = [
      { u: 25, degreesOfFreedom: 18 },
      { u: 9.7, degreesOfFreedom: 25.6 },
      { u: 2.9, degreesOfFreedom: 50 },
      { u: 16.6, degreesOfFreedom: 2 },
    ];
    const nu = welchSatterthwaite(parts);
    check(gauge, 'nu_eff', nu);
    // The source cuts the degrees of freedom to a whole number before it takes the factor.
    const u = Math.sqrt(parts.reduce((sum, part) => sum + part.u ** 2, 0));
    check(gauge, 'U99', studentTQuantile(0.995, Math.trunc(nu)) * u);
  });

  const impedance = find('gum_h2_impedance');
  it(`${impedance.source}: ratio of correlated means and its uncertainty`, () => {
    const volts = impedance.inputs.V;
    const amperes = impedance.inputs.I_mA.map((value) => value / 1000);
    const phase = impedance.inputs.phi;
    const n = volts.length;
    const ratio = {
      numerator: arithmeticMean(volts),
      denominator: arithmeticMean(amperes),
      uNumerator: sampleSd(volts) / Math.sqrt(n),
      uDenominator: sampleSd(amperes) / Math.sqrt(n),
    };
    const covariance = sampleCovariance(volts, amperes) / n;
    check(impedance, 'Z', ratio.numerator / ratio.denominator);
    check(impedance, 'u_Z', ratioUncertainty({ ...ratio, covariance }));
    check(impedance, 'u_Z_if_correlation_ignored', ratioUncertainty(ratio));
    const correlation = (first: number[], second: number[]): number =>
      sampleCovariance(first, second) / (sampleSd(first) * sampleSd(second));
    check(impedance, 'r_VI', correlation(volts, amperes));
    check(impedance, 'r_Vphi', correlation(volts, phase));
    check(impedance, 'r_Iphi', correlation(amperes, phase));
  });

  const fluorescence = find('xrf_ratio_welch');
  it(`${fluorescence.source}: ratio, degrees of freedom and U95`, () => {
    const [x1, u1, df1] = fluorescence.inputs.X1;
    const [x2, u2, df2] = fluorescence.inputs.X2;
    const [y, uY, dfY] = fluorescence.inputs.Yu;
    const value = (x1 / x2) * y;
    const relative = [u1 / x1, u2 / x2, uY / y];
    const ofRatio = ratioUncertainty({
      numerator: x1,
      denominator: x2,
      uNumerator: u1,
      uDenominator: u2,
    });
    const u = Math.hypot(ofRatio * y, (x1 / x2) * uY);
    const nu = welchSatterthwaite([
      { u: relative[0] ?? 0, degreesOfFreedom: df1 },
      { u: relative[1] ?? 0, degreesOfFreedom: df2 },
      { u: relative[2] ?? 0, degreesOfFreedom: dfY },
    ]);
    check(fluorescence, 'value', value);
    check(fluorescence, 'u', u);
    check(fluorescence, 'nu_eff', nu);
    check(fluorescence, 'U95', studentTQuantile(0.975, nu) * u);
  });

  const two = find('welch_two_components');
  it(`${two.source}: effective degrees of freedom with one part known`, () => {
    check(
      two,
      'nu_eff',
      welchSatterthwaite([
        { u: 0.57, degreesOfFreedom: 9 },
        { u: 0.25, degreesOfFreedom: Infinity },
      ]),
    );
  });

  for (const factor of cases.filter((item) => item.id.startsWith('gum_g2_t_'))) {
    const coverage = factor.inputs.coverage;
    const df = factor.inputs.df;
    it(`${factor.source}: t factor for ${coverage} and ${df} degrees of freedom`, () => {
      check(factor, 'value', studentTQuantile((1 + coverage) / 2, df));
    });
  }
});

describe('Coverage intervals with a closed form', () => {
  const intervals =
    readJson<
      {
        id: string;
        source: string;
        exact?: { hi95?: number; shortest95?: [number, number] };
        published?: { hi95?: number };
        tol_abs?: number;
      }[]
    >('coverage-intervals.json');

  const normals = intervals.find(({ id }) => id === 's1_sum_of_four_normals');
  it(`${normals?.source}: 95 % of a sum of four normal variables`, () => {
    const high = 2 * normalQuantile(0.975);
    expectClose(high, normals?.published?.hi95 ?? Number.NaN, {
      absolute: normals?.tol_abs ?? 0,
      reason: 'published digits',
    });
    expectClose(high, normals?.exact?.hi95 ?? Number.NaN, {
      absolute: 5e-7,
      reason: 'half a unit of the last digit',
    });
  });

  const squares = intervals.find(({ id }) => id === 's1_sum_of_squares_x1_0');
  it(`${squares?.source}: shortest 95 % of a sum of two squares, a scaled chi-square`, () => {
    expectClose(
      0.005 ** 2 * chiSquareQuantile(0.95, 2),
      squares?.exact?.shortest95?.[1] ?? Number.NaN,
      { relative: 1e-9, reason: 'derived exactly, printed to 12 figures' },
    );
  });
});
