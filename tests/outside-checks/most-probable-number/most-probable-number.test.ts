import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mostProbableNumber } from '../../../src/statistics/index.ts';

interface Tubes {
  volumes: number[];
  tubes: number[];
  positive: number[];
}

interface Published {
  estimates: (Tubes & { source: string; quantity: string; printed: number; digits: number })[];
  normal_limits: (Tubes & {
    source: string;
    low: number;
    factor: number;
    low_digits: number;
    high: number;
    high_digits: number;
  })[];
  solver_limits: Tubes & { source: string; low: number; high: number };
  log10_uncertainty: Tubes & { source: string; printed: number; digits: number };
  one_sided: (Tubes & { source: string; end: 'low' | 'high'; printed: number; digits: number })[];
}

interface Fixture {
  rows: (Tubes & {
    confidence: number;
    estimate: number | 'Infinity';
    low: number;
    high: number | 'Infinity';
  })[];
}

function read<T>(path: string): T {
  return JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')) as T;
}

const published = read<Published>('./published.json');
const fixture = read<Fixture>('./r-uniroot/fixture.json');

function sets({ volumes, tubes, positive }: Tubes) {
  return volumes.map((volume, at) => ({
    volume,
    tubes: tubes[at] ?? 0,
    positive: positive[at] ?? 0,
  }));
}

/** Half a unit in the last printed digit. */
function halfDigit(printed: number, digits: number): number {
  return 0.5 * 10 ** (Math.floor(Math.log10(printed)) - digits + 1);
}

// Tolerance of every published number: half a unit in its last printed digit.
function expectPrinted(actual: number | null, printed: number, digits: number): void {
  expect(Math.abs((actual ?? Number.NaN) - printed)).toBeLessThanOrEqual(
    halfDigit(printed, digits) * (1 + 1e-9),
  );
}

describe('published most probable numbers', () => {
  it.each(published.estimates)(
    '$source: $quantity, positive $positive: $printed',
    ({ printed, digits, ...tubes }) => {
      expectPrinted(mostProbableNumber(sets(tubes)).estimate, printed, digits);
    },
  );

  it.each(published.normal_limits)(
    '$source: limits of a normal logarithm, positive $positive: $low to $high',
    ({ factor, low, low_digits, high, high_digits, ...tubes }) => {
      const { estimate, uLog } = mostProbableNumber(sets(tubes));
      const reach = factor * (uLog ?? Number.NaN);
      expectPrinted((estimate ?? 0) * Math.exp(-reach), low, low_digits);
      expectPrinted((estimate ?? 0) * Math.exp(reach), high, high_digits);
    },
  );

  const haldane = published.log10_uncertainty;
  it(`${haldane.source}: standard error of log10 MPN, positive ${haldane.positive}`, () => {
    const { uLog } = mostProbableNumber(sets(haldane));
    expectPrinted((uLog ?? Number.NaN) / Math.LN10, haldane.printed, haldane.digits);
  });

  const solver = published.solver_limits;
  it(`${solver.source}: 95 % limits ${solver.low} to ${solver.high}, positive ${solver.positive}`, () => {
    const { estimate, uLog } = mostProbableNumber(sets(solver));
    const reach = 1.959964 * (uLog ?? Number.NaN);
    // Relative 1e-3: the sheet iterates, and its own limits lie about 9.955 and not about its 9.951.
    const off = (actual: number, printed: number): number => Math.abs(actual / printed - 1);
    expect(off((estimate ?? 0) * Math.exp(-reach), solver.low)).toBeLessThan(1e-3);
    expect(off((estimate ?? 0) * Math.exp(reach), solver.high)).toBeLessThan(1e-3);
  });

  it.each(published.one_sided)(
    '$source: the $end limit of all tubes alike, positive $positive: $printed',
    ({ end, printed, digits, ...tubes }) => {
      const found = mostProbableNumber(sets(tubes));
      expect(found.estimate).toBeNull();
      expectPrinted(found[end], printed, digits);
    },
  );
});

describe('R 4.2.2, uniroot on score and binomial sums', () => {
  it('every outcome of five sets of tubes: estimate and exact limits', () => {
    expect(fixture.rows).toHaveLength(64 + 12 + 11 + 30 + 52);
    for (const { confidence, estimate, low, high, ...tubes } of fixture.rows) {
      const ours = mostProbableNumber(sets(tubes), confidence);
      // Relative 1e-6: uniroot stops on the logarithm of the rate, good to about 1e-9.
      const close = (actual: number | null, wanted: number | 'Infinity'): void => {
        if (wanted === 'Infinity') expect(actual).toBe(Number.POSITIVE_INFINITY);
        else expect(Math.abs((actual ?? Number.NaN) - wanted)).toBeLessThanOrEqual(1e-6 * wanted);
      };
      if (estimate === 0 || estimate === 'Infinity') expect(ours.estimate).toBeNull();
      else close(ours.estimate, estimate);
      close(ours.low, low);
      close(ours.high, high);
    }
  });
});
