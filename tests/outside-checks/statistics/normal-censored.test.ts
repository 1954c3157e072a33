import { describe, it } from 'vitest';
import { normalMle } from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

const example = readJson<{
  source: string;
  detects: number[];
  published: { mean: number; sd: number; variance: number };
  exact_mle: { mean: number; sd: number };
  tol_abs: number;
}>('normal-censored-case.json');

const fit = normalMle([
  ...example.detects.map((value) => ({ low: value, high: value })),
  ...Array.from({ length: 4 }, () => ({ low: -Infinity, high: 6 })),
]);

describe(example.source, () => {
  const table = {
    absolute: example.tol_abs,
    reason: 'Cohen’s method with interpolation in a printed table, as stated with the case',
  };

  it('mean 7.51 and standard deviation 1.36 of 27 results, 4 of them below 6', () => {
    expectClose(fit.mean, example.published.mean, table);
    expectClose(fit.sd, example.published.sd, table);
  });

  it('R survreg gaussian: the exact maximum of the same likelihood', () => {
    const iterated = { relative: 1e-6, reason: 'survreg, printed to 12 figures' };
    expectClose(fit.mean, example.exact_mle.mean, iterated);
    expectClose(fit.sd, example.exact_mle.sd, iterated);
  });
});
