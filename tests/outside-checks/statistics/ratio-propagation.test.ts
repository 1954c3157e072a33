import { describe, it } from 'vitest';
import {
  arithmeticMean,
  ratioUncertainty,
  sampleCovariance,
  sampleSd,
} from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

interface Case {
  id: string;
  source: string;
  seen: string;
  inputs: Record<string, unknown>;
  expected: Record<string, { value: number; tol_abs: number; origin: string }>;
}

const cases = readJson<Case[]>('uncertainty-cases.json');

function find(id: string): Case {
  const found = cases.find((item) => item.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
}

/** Tolerance: that of the case, which is half a unit of the last printed digit or rounder. */
function check({ expected }: Case, name: string, actual: number): void {
  const {
    value,
    tol_abs: absolute,
    origin,
  } = expected[name] ?? {
    value: Number.NaN,
    tol_abs: 0,
    origin: 'no such figure',
  };
  expectClose(actual, value, { absolute, reason: `${origin} digits, as stated with the case` });
}

const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);
const triangular = (halfWidth: number): number => halfWidth / Math.sqrt(6);
/** Relative standard uncertainty of a product of independent factors. */
const ofProduct = (...relative: number[]): number => Math.hypot(...relative);

describe('Uncertainty of a quotient, published examples', () => {
  const standard = find('quam_a1_calibration_standard');
  it(`${standard.source} (${standard.seen}): c = 1000 m P / V`, () => {
    const numerator = 1000 * 100.28 * 0.9999;
    const uNumerator = numerator * ofProduct(rectangular(0.0001) / 0.9999, 0.05 / 100.28);
    const uDenominator = Math.hypot(triangular(0.1), 0.02, rectangular(0.084));
    check(standard, 'value', numerator / 100);
    check(
      standard,
      'u',
      ratioUncertainty({ numerator, denominator: 100, uNumerator, uDenominator }),
    );
  });

  const hydroxide = find('quam_a2_naoh');
  it(`${hydroxide.source} (${hydroxide.seen}): c = R 1000 m P / (M V)`, () => {
    // Potassium hydrogen phthalate; the atoms of one element share their error.
    const molar = 8 * 12.0107 + 5 * 1.00794 + 4 * 15.9994 + 39.0983;
    const uMolar = Math.hypot(
      8 * rectangular(0.0008),
      5 * rectangular(0.00007),
      4 * rectangular(0.0003),
      rectangular(0.0001),
    );
    const volume = 18.64;
    const uVolume = Math.hypot(triangular(0.03), 0.006);
    const numerator = 1000 * 0.3888;
    const uMass = Math.hypot(rectangular(0.15e-3), rectangular(0.15e-3));
    const denominator = molar * volume;
    check(hydroxide, 'value', numerator / denominator);
    const u = ratioUncertainty({
      numerator,
      denominator,
      uNumerator: numerator * ofProduct(uMass / 0.3888, rectangular(0.0005), 0.0005),
      uDenominator: denominator * ofProduct(uMolar / molar, uVolume / volume),
    });
    check(hydroxide, 'u', u);
  });

  const cadmium = find('quam_a5_cadmium');
  it(`${cadmium.source} (${cadmium.seen}): r = c0 VL / aV and three factors`, () => {
    const numerator = 0.26 * 0.3303;
    const factors = [0.0008, rectangular(0.0015), rectangular(0.1)];
    const uNumerator = numerator * ofProduct(0.018 / 0.26, 0.0018 / 0.3303, ...factors);
    check(cadmium, 'value', numerator / 5.73);
    check(
      cadmium,
      'u',
      ratioUncertainty({ numerator, denominator: 5.73, uNumerator, uDenominator: 0.15 }),
    );
  });

  const expansion = find('tn1900_e13_expansion');
  it(`${expansion.source} (${expansion.seen}): (L1 - L0) / (L0 (T1 - T0)), correlated through L0`, () => {
    const [before, warmer] = [1.4999, 373.1 - 288.15];
    const numerator = 1.5021 - before;
    const denominator = before * warmer;
    check(expansion, 'value', numerator / denominator);
    const u = ratioUncertainty({
      numerator,
      denominator,
      uNumerator: Math.hypot(0.0001, 0.0002),
      uDenominator: Math.hypot(warmer * 0.0001, before * Math.hypot(0.02, 0.05)),
      covariance: -warmer * 0.0001 ** 2,
    });
    check(expansion, 'u', u);
  });

  const impedance = find('gum_h2_impedance');
  it(`${impedance.source} (${impedance.seen}): resistance and reactance, correlated means`, () => {
    const { V, I_mA, phi } = impedance.inputs as Record<string, number[]>;
    const volts = V ?? [];
    const amperes = (I_mA ?? []).map((value) => value / 1000);
    const phase = phi ?? [];
    const n = volts.length;
    const [v, i, angle] = [volts, amperes, phase].map(arithmeticMean) as [number, number, number];
    const covariance = (a: number[], b: number[]): number => sampleCovariance(a, b) / n;
    const u = (values: number[]): number => sampleSd(values) / Math.sqrt(n);
    // Numerator v f(angle), f cosine or sine: its uncertainty and covariance with the current.
    const part = (f: number, slope: number): [number, number] => {
      const variance =
        (f * u(volts)) ** 2 +
        (v * slope * u(phase)) ** 2 +
        2 * f * v * slope * covariance(volts, phase);
      const shared = f * covariance(volts, amperes) + v * slope * covariance(phase, amperes);
      const ratio = {
        numerator: v * f,
        denominator: i,
        uNumerator: Math.sqrt(variance),
        uDenominator: u(amperes),
        covariance: shared,
      };
      return [ratio.numerator / i, ratioUncertainty(ratio)];
    };
    const [resistance, uResistance] = part(Math.cos(angle), -Math.sin(angle));
    const [reactance, uReactance] = part(Math.sin(angle), Math.cos(angle));
    check(impedance, 'R', resistance);
    check(impedance, 'u_R', uResistance);
    check(impedance, 'X', reactance);
    check(impedance, 'u_X', uReactance);
  });
});
