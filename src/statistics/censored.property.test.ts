import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CensoredResult } from './censored-results.ts';
import { kaplanMeier } from './kaplan-meier.ts';
import { lognormalMle } from './lognormal-mle.ts';
import { ordinaryQuantile } from './ordinary-quantile.ts';
import { robustRos } from './robust-ros.ts';

const SEED = { seed: 1, numRuns: 300 };

// Values to three digits, so that ties and values equal to limits occur.
const value = fc.integer({ min: 1, max: 999 }).map((digits) => digits / 100);
const exactResult = value.map((x) => ({ low: x, high: x }));
const result: fc.Arbitrary<CensoredResult> = fc.oneof(
  exactResult,
  value.map((high) => ({ low: 0, high })),
  fc.tuple(value, value).map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) })),
);
const mixed = fc
  .tuple(
    fc.uniqueArray(value, { minLength: 3, maxLength: 12 }),
    fc.array(result, { maxLength: 25 }),
  )
  .map(([exact, rest]) => [...exact.map((x) => ({ low: x, high: x })), ...rest]);
// Any size, to six digits: numbers a unit of the last bit apart are no case to be met.
const wide = fc
  .double({ min: -12, max: 12, noNaN: true })
  .map((log) => Number(Math.exp(log).toPrecision(6)));
const anyResults = fc.array(
  fc.oneof(
    wide.map((high) => ({ low: 0, high })),
    wide.map((low) => ({ low, high: Infinity })),
    wide.map((low) => ({ low, high: low * (1 + 1e-9) })),
    fc.tuple(wide, wide).map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) })),
  ),
  { maxLength: 12 },
);
const plain = fc.array(value, { minLength: 2, maxLength: 30 });

/** Every figure of the three methods that carries the unit of the results. */
function scaled(results: readonly CensoredResult[]): number[] {
  const km = kaplanMeier(results);
  const ros = robustRos(results);
  const mle = lognormalMle(results);
  expect(mle.converged).toBe(true);
  const ofKm = [km.mean.zero, km.mean.lowest, km.mean.smallestDetect, km.sd, km.quantile(0.8)];
  return [
    ...ofKm.map((figure) => figure ?? -1),
    ...[ros.mean, ros.sd, ros.median, ros.quantile(0.3)],
    ...[mle.median, mle.mean, mle.sd, mle.quantile(0.9)],
  ];
}

function expectAlike(
  actual: readonly number[],
  expected: readonly number[],
  relative: number,
): void {
  actual.forEach((figure, i) => {
    const other = expected[i] as number;
    expect(Math.abs(figure - other)).toBeLessThanOrEqual(relative * Math.abs(other) + 1e-12);
  });
}

const alternating = (results: readonly CensoredResult[]): CensoredResult[] => {
  const reversed = [...results].reverse();
  return [...reversed.filter((_, i) => i % 2 === 0), ...reversed.filter((_, i) => i % 2 === 1)];
};

describe('Properties of the three censored methods', () => {
  it('the order of the results never matters', () =>
    fc.assert(
      fc.property(mixed, (results) => {
        // Tolerance: sums are formed in another order.
        expectAlike(scaled(alternating(results)), scaled(results), 1e-9);
      }),
      SEED,
    ));

  it('another unit scales every figure by the same factor', () =>
    fc.assert(
      fc.property(mixed, fc.constantFrom(1e-6, 0.125, 1000, 3.7e5), (results, factor) => {
        const other = results.map(({ low, high }) => ({ low: low * factor, high: high * factor }));
        const expected = scaled(results).map((figure) => (figure === -1 ? -1 : figure * factor));
        const actual = scaled(other);
        actual.forEach((figure, i) => {
          const target = expected[i] as number;
          // Tolerance: logarithms are shifted, which costs digits of the fitted spread.
          expect(Math.abs(figure - target)).toBeLessThanOrEqual(
            1e-8 * Math.abs(target) + 1e-9 * factor,
          );
        });
      }),
      SEED,
    ));

  it('quantiles never fall as the probability rises', () =>
    fc.assert(
      fc.property(mixed, (results) => {
        const methods = [kaplanMeier(results), robustRos(results), lognormalMle(results)];
        for (const { quantile } of methods) {
          let last = 0;
          for (let p = 0.02; p < 1; p += 0.02) {
            const next = quantile(p);
            if (next === null) continue;
            expect(next).toBeGreaterThanOrEqual(last - 1e-12);
            last = next;
          }
        }
      }),
      SEED,
    ));

  it('Kaplan-Meier of plain results is their ordinary mean and median, with spread (n)', () =>
    fc.assert(
      fc.property(plain, (values) => {
        const km = kaplanMeier(values.map((x) => ({ low: x, high: x })));
        const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
        const squares = values.reduce((sum, x) => sum + (x - mean) ** 2, 0);
        // Tolerance: a product of up to 30 fractions.
        expect(km.mean.zero).toBeCloseTo(mean, 10);
        expect(km.median).toBeCloseTo(ordinaryQuantile(values, 0.5), 12);
        expect(km.sd).toBeCloseTo(Math.sqrt(squares / values.length), 7);
        expect(km.leftover).toBe(0);
      }),
      SEED,
    ));

  it('Kaplan-Meier means keep their order: zero, lowest, smallest detect', () =>
    fc.assert(
      fc.property(mixed, (results) => {
        const { zero, lowest, smallestDetect } = kaplanMeier(results).mean;
        expect(zero).toBeLessThanOrEqual(lowest ?? Number.NaN);
        expect(lowest).toBeLessThanOrEqual(smallestDetect ?? Number.NaN);
      }),
      SEED,
    ));

  it('the likelihood fit of plain results is the closed form', () =>
    fc.assert(
      fc.property(plain, (values) => {
        fc.pre(new Set(values).size > 1);
        const logs = values.map(Math.log);
        const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length;
        const squares = logs.reduce((sum, x) => sum + (x - mean) ** 2, 0);
        const fit = lognormalMle(values.map((x) => ({ low: x, high: x })));
        // Tolerance: roundings of a sum of 30.
        expect(fit.meanLog).toBeCloseTo(mean, 12);
        expect(fit.sdLog).toBeCloseTo(Math.sqrt(squares / logs.length), 12);
      }),
      SEED,
    ));

  it('the likelihood fit converges over any range, open ends and near-numbers included', () =>
    fc.assert(
      fc.property(
        fc.uniqueArray(wide, { minLength: 2, maxLength: 3 }),
        anyResults,
        (exact, rest) => {
          const fit = lognormalMle([...exact.map((x) => ({ low: x, high: x })), ...rest]);
          expect(fit.converged).toBe(true);
          expect(fit.sdLog).toBeGreaterThan(0);
        },
      ),
      { seed: 1, numRuns: 3000 },
    ));

  it('no neighbouring pair of parameters is likelier than the fit', () =>
    fc.assert(
      fc.property(mixed, (results) => {
        const { meanLog, sdLog } = lognormalMle(results);
        const best = logLikelihood(results, meanLog, sdLog);
        for (const [dm, ds] of [
          [0.01, 0],
          [-0.01, 0],
          [0, 0.01],
          [0, -0.01],
        ] as const) {
          const other = logLikelihood(results, meanLog + dm * sdLog, sdLog * (1 + ds));
          expect(other).toBeLessThan(best);
        }
      }),
      SEED,
    ));
});

/** The likelihood from its definition, by numerical integration of the density: no shared code. */
function logLikelihood(results: readonly CensoredResult[], mean: number, sd: number): number {
  const density = (z: number): number => Math.exp(-0.5 * z * z);
  let sum = 0;
  for (const { low, high } of results) {
    if (low === high) {
      const z = (Math.log(low) - mean) / sd;
      sum += -Math.log(sd) - 0.5 * z * z;
      continue;
    }
    const to = (Math.log(high) - mean) / sd;
    const from = Math.max((Math.log(low) - mean) / sd, to - 14);
    const steps = 800;
    let area = 0;
    for (let k = 0; k < steps; k++) {
      const a = from + ((to - from) * k) / steps;
      const b = from + ((to - from) * (k + 1)) / steps;
      area += ((b - a) / 6) * (density(a) + 4 * density((a + b) / 2) + density(b));
    }
    sum += Math.log(area);
  }
  return sum;
}
