import { describe, it } from 'vitest';
import { meanInterval, normalMle, pairedRatio } from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

interface Side {
  kind: string;
  lo: number;
  hi: number;
}

interface Case {
  id: string;
  note: string;
  pairs: { before: Side; after: Side }[];
  expected: {
    log_ratio_t95_pct?: [number, number];
    fieller_paired?: { df: number; g: number; R95_not_capped_pct: [number, number] };
    r_survreg_log_passage?: {
      mean_log_passage_mle?: number;
      sd_log_passage_mle?: number;
      se_mean_mle?: number;
    };
  };
}

const { cases } = readJson<{ cases: Case[] }>('paired-cases.json');
const PRINTED = { relative: 1e-6, absolute: 1e-7, reason: 'printed to 8 figures; stated 1e-6' };
const percentLess = (ratio: number): number => 100 * (1 - ratio);

describe('Paired cases derived with R 4.2.2 and survival 3.5-3', () => {
  for (const { id, note, pairs, expected } of cases) {
    const after = pairs.map((pair) => pair.after.hi);
    const before = pairs.map((pair) => pair.before.hi);
    const { log_ratio_t95_pct: logRatio, fieller_paired: paired } = expected;

    if (logRatio !== undefined) {
      it(`derived, Student t on log ratios: ${id} (${note})`, () => {
        const interval = meanInterval(after.map((value, i) => Math.log(value / (before[i] ?? 0))));
        expectClose(percentLess(Math.exp(interval.high)), logRatio[0], PRINTED);
        expectClose(percentLess(Math.exp(interval.low)), logRatio[1], PRINTED);
      });
    }

    if (paired !== undefined) {
      it(`derived, Fieller on paired means: ${id} (${note})`, () => {
        const interval = pairedRatio(after, before);
        expectClose(interval.g, paired.g, { ...PRINTED, absolute: 1e-10 });
        expectClose(
          percentLess(interval.high ?? Number.NaN),
          paired.R95_not_capped_pct[0],
          PRINTED,
        );
        expectClose(percentLess(interval.low ?? Number.NaN), paired.R95_not_capped_pct[1], PRINTED);
      });
    }

    const survreg = expected.r_survreg_log_passage;
    if (survreg?.mean_log_passage_mle !== undefined) {
      it(`R survreg gaussian on log ratios with intervals: ${id} (${note})`, () => {
        const fit = normalMle(
          pairs.map((pair) => ({
            low: Math.log(pair.after.lo / pair.before.hi),
            high: Math.log(pair.after.hi / pair.before.lo),
          })),
        );
        expectClose(fit.mean, survreg.mean_log_passage_mle ?? Number.NaN, PRINTED);
        expectClose(fit.sd, survreg.sd_log_passage_mle ?? Number.NaN, PRINTED);
        expectClose(fit.uMean, survreg.se_mean_mle ?? Number.NaN, PRINTED);
      });
    }
  }
});
