import { bench, describe } from 'vitest';
import type { CensoredResult } from './censored-results.ts';
import { kaplanMeier } from './kaplan-meier.ts';
import { lognormalMle } from './lognormal-mle.ts';
import { robustRos } from './robust-ros.ts';

const SETS = 10_000;
const sets = makeSets(20260);

/** Sets of 12 to 40 invented results with non-detects and results between two limits. */
function makeSets(seed: number): CensoredResult[][] {
  const next = uniform(seed);
  const sets: CensoredResult[][] = [];
  while (sets.length < SETS) {
    const size = 12 + Math.floor(29 * next());
    const centre = -3 + 8 * next();
    const spread = 0.3 + 1.7 * next();
    const limits = Array.from({ length: 1 + Math.floor(3 * next()) }, () =>
      Math.exp(centre + spread * (1.6 * next() - 1)),
    );
    const set = Array.from({ length: size }, () => {
      const normal = Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
      const value = Math.exp(centre + spread * normal);
      const high = limits[Math.floor(limits.length * next())] ?? 1;
      if (value >= high) return { low: value, high: value };
      return value < high / 3 ? { low: 0, high: high / 3 } : { low: high / 3, high };
    });
    if (set.filter(({ low, high }) => low === high).length >= 3) sets.push(set);
  }
  return sets;
}

/** Uniform numbers from a seed: a 32-bit congruential generator, good enough to vary input. */
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('10,000 sets of 12 to 40 censored results', () => {
  const options = { iterations: 3, warmupIterations: 1, time: 0, warmupTime: 0 };
  bench('Kaplan-Meier, robust regression and likelihood together', () => runAll(), options);
  bench('Kaplan-Meier', () => sets.forEach(kaplanMeier), options);
  bench('robust regression on order statistics', () => sets.forEach(robustRos), options);
  bench('lognormal likelihood', () => sets.forEach(lognormalMle), options);
});

function runAll(): void {
  for (const set of sets) {
    kaplanMeier(set);
    robustRos(set);
    lognormalMle(set);
  }
}
