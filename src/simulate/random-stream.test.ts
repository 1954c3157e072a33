import { describe, expect, it } from 'vitest';
import { randomStream, splitMix64, xoshiro128 } from './random-stream.ts';

function take<Value>(count: number, next: () => Value): Value[] {
  return Array.from({ length: count }, next);
}

describe('randomStream', () => {
  it("rests on xoshiro128**: first outputs of the authors' program, version 1.1, from words 1 to 4", () => {
    // Blackman and Vigna, xoshiro128starstar.c; seen as reproduced in test suites of other ports.
    expect(take(10, xoshiro128([1, 2, 3, 4]).nextUint32)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
      4258142804,
    ]);
  });

  it('is seeded by splitmix64: first outputs of the reference program from 1234567', () => {
    // Vigna, splitmix64.c; seen as reproduced in test suites of other ports.
    expect(take(5, splitMix64(1_234_567n))).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ]);
  });

  it('gives the same numbers for the same seed, and others for another seed or stream', () => {
    const of = (seed: number, stream?: number) => take(4, randomStream(seed, stream).nextUint32);
    expect(of(1)).toEqual(of(1, 0));
    const all = [of(1), of(2), of(-1), of(0), of(1, 1), of(1, 2), of(2, 1)];
    expect(new Set(all.map(String)).size).toBe(all.length);
  });

  it('gives fractions from 0 up to but not including 1, spread evenly', () => {
    const { nextFraction } = randomStream(7);
    const count = 100_000;
    const tenths = new Array<number>(10).fill(0);
    for (const fraction of take(count, nextFraction)) {
      expect(fraction >= 0 && fraction < 1).toBe(true);
      const tenth = Math.floor(fraction * 10);
      tenths[tenth] = (tenths[tenth] ?? 0) + 1;
    }
    const expected = count / 10;
    const chiSquare = tenths.reduce((sum, seen) => sum + (seen - expected) ** 2 / expected, 0);
    // 99.9 % point of the chi-square distribution with nine degrees of freedom; the seed is fixed.
    expect(chiSquare).toBeLessThan(27.88);
  });

  it('makes a fraction of two whole numbers, 27 bits of the first and 26 of the second', () => {
    const whole = randomStream(3);
    const made = take(
      50,
      () => ((whole.nextUint32() >>> 5) * 2 ** 26 + (whole.nextUint32() >>> 6)) / 2 ** 53,
    );
    expect(take(50, randomStream(3).nextFraction)).toEqual(made);
  });

  it.each([0.5, Number.NaN, 2 ** 53])('refuses %d as a seed', (seed) => {
    expect(() => randomStream(seed)).toThrow(`seed is ${seed}`);
    expect(() => randomStream(1, seed)).toThrow(`stream is ${seed}`);
  });
});
