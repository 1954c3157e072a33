import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import {
  combineUncertainties,
  resultUncertainties,
  standardUncertainty,
  type Uncertainty,
} from './index.ts';
import { lowerLimit, upperLimit } from './true-value-limits.ts';

const STATED: Uncertainty = {
  relative: 0.1,
  additive: 0,
  counting: 0,
  from: 'stated',
  degreesOfFreedom: Number.POSITIVE_INFINITY,
};

const METALS = ['Lead', 'Copper', 'Zinc', 'Nickel', 'Antimony', 'Cadmium'];

/** A feed and its duplicate for so many metals, and one more analyte without a duplicate. */
function firstUncertainty(pairs: number, duplicateFactor: number, settings = '') {
  const metals = METALS.slice(0, pairs);
  const texts = {
    'bench.json': `{"title":"t"${settings}}`,
    'samples.csv': csv('sample,position,device,event,of', 'F,feed,,day,', 'D,feed,,day,F'),
    'lab/lab.csv': csv(
      'Sample ID,Analyte,Result,Units,MDL,RL',
      'F,Arsenic,100.0000,ug/L,,',
      ...metals.flatMap((metal) => [
        `F,${metal},100.0000,ug/L,0.1,0.5`,
        `D,${metal},${(100 * duplicateFactor).toFixed(4)},ug/L,0.1,0.5`,
      ]),
    ),
  };
  return withBench(texts, (folder) => resultUncertainties(readBench(folder))(0));
}

describe('the uncertainty of a result', () => {
  it('comes from duplicates of the group where there are six pairs', () => {
    const found = firstUncertainty(6, 1.1);
    expect(found).toMatchObject({ from: 'duplicates', degreesOfFreedom: 6 });
    // Pairs of 100 and 110: standard deviation 10 / sqrt(2) over a mean of 105.
    expect(found.relative).toBeCloseTo(10 / Math.SQRT2 / 105, 12);
  });

  it('is assumed with fewer pairs: half of the usual scatter between labs', () => {
    const found = firstUncertainty(5, 1.1);
    expect(found.from).toBe('assumed');
    // 0.02 c^-0.1505 at 100 ug/L, c = 1e-7: below 1.2e-7 the rule is 22 %.
    expect(found.relative).toBeCloseTo(0.11, 12);
  });

  it('is not taken from duplicates that agree to the last digit', () => {
    expect(firstUncertainty(6, 1).from).toBe('assumed');
  });

  it('follows the share that bench.json gives', () => {
    const found = firstUncertainty(0, 1, ',"uncertainty":{"repeatability_fraction":1}');
    expect(found.relative).toBeCloseTo(0.22, 12);
  });

  it('holds the rounding of the printed figure', () => {
    // 100.0000 has steps of 0.0001.
    expect(firstUncertainty(0, 1).additive).toBeCloseTo(0.0001 / Math.sqrt(12), 12);
  });
});

describe('uncertainty near the limits', () => {
  it('joins a relative and an additive part in quadrature', () => {
    expect(standardUncertainty({ ...STATED, additive: 0.3 }, 4)).toBeCloseTo(0.5, 12);
    expect(standardUncertainty(STATED, 0)).toBe(0);
  });

  it('puts the true value behind a reading where its own scatter reaches the reading', () => {
    const uncertainty = { ...STATED, additive: 0.3, counting: 0.2 };
    for (const reading of [0, 0.1, 1, 50]) {
      const high = upperLimit(uncertainty, reading, 2);
      expect(high - 2 * standardUncertainty(uncertainty, high)).toBeCloseTo(reading, 9);
      expect(lowerLimit(uncertainty, reading, 2)).toBeLessThanOrEqual(reading);
    }
  });

  it('has no upper limit where the scatter is as large as the value, and no negative lower one', () => {
    expect(upperLimit({ ...STATED, relative: 0.6 }, 1, 2)).toBe(Number.POSITIVE_INFINITY);
    expect(upperLimit(STATED, Number.POSITIVE_INFINITY, 2)).toBe(Number.POSITIVE_INFINITY);
    expect(lowerLimit({ ...STATED, relative: 0.6 }, 1, 2)).toBe(0);
  });

  it('bounds a count of none at about three, as a Poisson count', () => {
    const counted = { ...STATED, relative: 0, counting: 1 };
    // One-sided 95 % Poisson limit of a count of 0: 2.996; the normal form gives 1.645² = 2.706.
    expect(upperLimit(counted, 0, 1.6448536)).toBeCloseTo(2.7055, 3);
  });
});

describe('the uncertainty of a mean', () => {
  const parts = (uncertainty: Uncertainty, sizes: readonly number[]) =>
    sizes.map((size) => ({ uncertainty, size }));

  it('shrinks with the number of results where it is scatter within the lab', () => {
    const own = { ...STATED, from: 'assumed' } as const;
    expect(combineUncertainties(parts(own, [10, 10, 10, 10]), 'mean').relative).toBeCloseTo(
      0.05,
      12,
    );
  });

  it('does not shrink where the lab states it, nor over a span', () => {
    expect(combineUncertainties(parts(STATED, [10, 10]), 'mean').relative).toBe(0.1);
    const own = { ...STATED, from: 'duplicates' } as const;
    expect(combineUncertainties(parts(own, [10, 10]), 'span').relative).toBe(0.1);
  });

  it('is as weak as its weakest part', () => {
    const mixed = [
      { uncertainty: STATED, size: 1 },
      { uncertainty: { ...STATED, from: 'assumed' } as const, size: 1 },
    ];
    expect(combineUncertainties(mixed, 'mean').from).toBe('assumed');
  });
});
