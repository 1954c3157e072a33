import { describe, expect, it } from 'vitest';
import { kaplanMeier } from './kaplan-meier.ts';

const exact = (...values: number[]) => values.map((value) => ({ low: value, high: value }));
const below = (...limits: number[]) => limits.map((high) => ({ low: 0, high }));

describe('Kaplan-Meier distribution of censored results', () => {
  it('places the leftover at zero, at the lowest number and at the smallest detect', () => {
    const { mean, leftover, nonDetects, n } = kaplanMeier([...below(1), ...exact(2, 4)]);
    expect({ n, nonDetects }).toEqual({ n: 3, nonDetects: 1 });
    // By hand: 1/3 at 4, 1/3 at 2, 1/3 left over. Tolerance: a few roundings.
    expect(leftover).toBeCloseTo(1 / 3, 15);
    expect(mean.zero).toBeCloseTo(2, 14);
    expect(mean.lowest).toBeCloseTo(7 / 3, 14);
    expect(mean.smallestDetect).toBeCloseTo(8 / 3, 14);
  });

  it('counts a "< x" tied with an exact x as below it', () => {
    // At 2 three results are at risk, the two exact ones and the one below.
    const { quantile, leftover } = kaplanMeier([...below(2), ...exact(2, 2)]);
    expect(leftover).toBeCloseTo(1 / 3, 15);
    expect(quantile(0.9)).toBe(2);
    expect(quantile(0.2)).toBeNull();
  });

  it('treats a result between two limits as below the upper one', () => {
    const trace = kaplanMeier([{ low: 1, high: 3 }, ...exact(2, 5)]);
    const plain = kaplanMeier([{ low: 0, high: 3 }, ...exact(2, 5)]);
    expect(trace.mean).toEqual(plain.mean);
    expect(trace.nonDetects).toBe(1);
  });

  it('lets a limit above the largest detect, or an open end, drop out but counts it in n', () => {
    const plain = kaplanMeier(exact(2, 5));
    for (const extra of [
      { low: 0, high: 9 },
      { low: 7, high: Infinity },
    ]) {
      const more = kaplanMeier([...exact(2, 5), extra]);
      expect(more.mean).toEqual(plain.mean);
      expect(more.n).toBe(3);
    }
  });

  it('gives the ordinary median of an odd and an even number of plain results', () => {
    expect(kaplanMeier(exact(3, 1, 2)).median).toBe(2);
    expect(kaplanMeier(exact(4, 1, 3, 2)).median).toBe(2.5);
  });

  it('averages with the lowest number listed when a quantile equals the leftover', () => {
    // P(X < 2) = 1/4 exactly: the convention of R's quantile.survfit is (2 + 1) / 2.
    expect(kaplanMeier([...below(1), ...exact(2, 3, 4)]).quantile(0.25)).toBe(1.5);
  });

  it('gives the ends of an uncensored list for the quantiles 0 and 1', () => {
    const { quantile } = kaplanMeier(exact(3, 1, 2));
    expect([quantile(0), quantile(1)]).toEqual([1, 3]);
  });

  it('gives one value back, with no spread', () => {
    expect(kaplanMeier(exact(7))).toMatchObject({ leftover: 0, sd: 0, median: 7 });
  });

  it('accepts equal results and results of zero', () => {
    expect(kaplanMeier(exact(4, 4, 4))).toMatchObject({ median: 4, sd: 0 });
    expect(kaplanMeier(exact(0, 0, 6)).mean.zero).toBeCloseTo(2, 14);
  });

  it('has no mean, spread or quantile when nothing was quantified', () => {
    const nothing = kaplanMeier(below(1, 2, 2));
    expect(nothing).toMatchObject({ leftover: 1, sd: null, median: null, nonDetects: 3 });
    expect(nothing.mean).toEqual({ zero: null, lowest: null, smallestDetect: null });
    expect(nothing.quantile(1)).toBeNull();
  });

  it('refuses an empty list, NaN, negative numbers and ends in the wrong order', () => {
    for (const results of [
      [],
      [{ low: Number.NaN, high: 1 }],
      [{ low: 0, high: Number.NaN }],
      [{ low: -1, high: 1 }],
      [{ low: 2, high: 1 }],
      [{ low: Infinity, high: Infinity }],
    ]) {
      expect(() => kaplanMeier(results)).toThrow(
        expect.objectContaining({ code: 'statistics-input' }),
      );
    }
  });

  it('refuses a quantile of what is not a probability, with or without detects', () => {
    expect(() => kaplanMeier(exact(1)).quantile(1.5)).toThrow('probability');
    expect(() => kaplanMeier(below(1)).quantile(Number.NaN)).toThrow('probability');
  });
});
