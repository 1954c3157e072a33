import { describe, expect, it } from 'vitest';
import { robustRos } from './robust-ros.ts';

const exact = (...values: number[]) => values.map((value) => ({ low: value, high: value }));

describe('Robust regression on order statistics', () => {
  it('completes one censored result from the line through two exact ones', () => {
    const ros = robustRos([{ low: 0, high: 1 }, ...exact(2, 4)]);
    // By hand: the limit is exceeded with 2/3; exact positions 5/9 and 7/9, the completed one 1/6.
    // Normal scores 0.13971, 0.76471 and -0.96742 put it at ln 2 - (ln 2) 1.10713 / 0.62500.
    expect(ros.quantile(0)).toBeCloseTo(2 ** (1 - 1.1071317 / 0.6249993), 4);
    expect(ros).toMatchObject({ n: 3, nonDetects: 1, median: 2 });
  });

  it('summarises plain results as they are', () => {
    const ros = robustRos(exact(1, 2, 4, 5));
    expect(ros.mean).toBe(3);
    expect(ros.sd).toBeCloseTo(Math.sqrt(10 / 3), 14);
    expect(ros.quantile(0.25)).toBe(1.75);
  });

  it('treats a result between two limits as below the upper one', () => {
    const trace = robustRos([{ low: 1, high: 3 }, ...exact(2, 5)]);
    expect(trace.mean).toBe(robustRos([{ low: 0, high: 3 }, ...exact(2, 5)]).mean);
  });

  it('drops limits above the largest exact number first, but counts them in n', () => {
    const ros = robustRos([...exact(2, 5, 6), { low: 0, high: 9 }, { low: 7, high: Infinity }]);
    expect(ros).toMatchObject({ n: 5, nonDetects: 2, mean: 13 / 3 });
  });

  it('gives equal results back with no spread', () => {
    const ros = robustRos([...exact(3, 3), { low: 0, high: 2 }]);
    expect(ros.sd).toBeCloseTo(0, 14);
    expect(ros.mean).toBeCloseTo(3, 14);
  });

  it('refuses fewer than two exact results, zero, nothing, NaN and negative numbers', () => {
    for (const results of [
      [],
      exact(1),
      [...exact(1), { low: 0, high: 2 }],
      exact(0, 1),
      exact(Number.NaN, 1, 2),
      exact(-1, 1, 2),
    ]) {
      expect(() => robustRos(results)).toThrow(
        expect.objectContaining({ code: 'statistics-input' }),
      );
    }
  });

  it('refuses a quantile of what is not a probability', () => {
    expect(() => robustRos(exact(1, 2)).quantile(-0.1)).toThrow('probability');
  });
});
