import { describe, expect, it } from 'vitest';
import { twoSamplePower, twoSampleSize } from '../../../src/statistics/index.ts';
import { readJson } from './read-fixture.ts';

const { powers, sizes } = readJson<{
  powers: { n: number; difference: number; level: number; power: number }[];
  sizes: { difference: number; level: number; power: number; n: number }[];
}>('r-power/fixture.json');

describe('R Core Team (2022), R 4.2.2 stats::power.t.test, two-sample power, computed', () => {
  it.each(powers)('n $n, difference $difference sd, level $level', (one) => {
    const { n, difference, level, power } = one;
    // R's noncentral t is good to about 1e-10; Simpson's rule here to 1e-8, checked to 5e-9.
    expect(twoSamplePower(n, { difference, sd: 1, level })).toBeCloseTo(power, 8);
  });
});

describe('R Core Team (2022), R 4.2.2 stats::power.t.test, results needed, computed', () => {
  it.each(sizes)('difference $difference sd, level $level, power $power', (one) => {
    const { difference, level, power, n } = one;
    // R solves for a real number to 1e-4 or so; the next whole number is exact unless n is nearly one.
    const needed = twoSampleSize({ difference, sd: 1, level }, power);
    expect(needed).toBe(Math.max(2, Math.ceil(n - 1e-3)));
  });
});
