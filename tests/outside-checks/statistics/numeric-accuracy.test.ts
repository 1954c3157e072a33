import { describe, it } from 'vitest';
import { arithmeticMean, sampleSd } from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

interface Case {
  id: string;
  source: string;
  data?: number[];
  data_rule?: string;
  mean: number;
  sd: number;
}

/** The data as listed, or made by the rule "first, then 500 times (a, b)". */
function dataOf({ data, data_rule: rule = '' }: Case): number[] {
  if (data !== undefined) return data;
  const [first = Number.NaN, , a = Number.NaN, b = Number.NaN] = (
    rule.match(/\d+(\.\d+)?/g) ?? []
  ).map(Number);
  return [first, ...Array.from({ length: 500 }, () => [a, b]).flat()];
}

describe('Mean and standard deviation of data sets that break naive formulas', () => {
  for (const item of readJson<Case[]>('numeric-accuracy.json')) {
    it(`${item.source}: mean ${item.mean}, standard deviation ${item.sd}`, () => {
      const data = dataOf(item);
      expectClose(arithmeticMean(data), item.mean, {
        relative: 1e-15,
        reason: 'the sum is compensated; one rounding of the quotient remains',
      });
      // Each value is itself rounded to a double, which moves it by up to half a unit of its size.
      const rounding = (Number.EPSILON / 2) * item.mean;
      expectClose(sampleSd(data), item.sd, {
        absolute: 1e-14 + rounding,
        reason: 'the decimal data are not doubles; the rounding of the data bounds the error',
      });
    });
  }
});
