import { describe, expect, it } from 'vitest';
import type { Analyte } from '../../reference/index.ts';
import { randomStream } from '../../simulate/index.ts';
import { normalQuantile } from '../../statistics/index.ts';
import type { Side } from '../reduction-side.ts';
import {
  type ReductionStatement,
  riseLevel,
  riseProbability,
  stateReduction,
} from '../reduction-statement.ts';
import { sumSide } from './sum-sides.ts';

const MDL = 0.15;
const RL = 0.5;
const ADDITIVE = MDL / 3.14;
const TRIALS = 2000;
const OPTIONS = { confidence: 0.95, correlation: 0 };
const ANALYTE: Analyte = {
  key: 'member',
  name: 'Member',
  cas: null,
  group: 'dbp-thm',
  kind: 'contaminant',
  molarMass: null,
  charge: null,
  unit: 'ug/L',
  basis: null,
  bases: [],
  aliases: [],
  aliasBasis: {},
  members: [],
  note: null,
};

/** What a lab would report of a reading: nothing, a trace or a figure. */
function reported(reading: number, relative: number): Side {
  const uncertainty = {
    relative,
    additive: ADDITIVE,
    counting: 0,
    from: 'stated',
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  } as const;
  const common = { uncertainty, isDecisionBound: false, results: [], samples: [], method: '' };
  const held = (low: number, high: number, readings = { low, high }) => {
    return { ...common, interval: { low, high }, readings, estimate: null };
  };
  if (reading < MDL) {
    const atDetectionLimit = { low: 0, high: MDL };
    return { ...held(0, RL, atDetectionLimit), atDetectionLimit, state: 'notDetected' };
  }
  if (reading < RL) {
    return { ...held(MDL, RL), atDetectionLimit: { low: MDL, high: RL }, state: 'between' };
  }
  const atDetectionLimit = { low: reading, high: reading };
  return { ...held(reading, reading), atDetectionLimit, state: 'quantified', estimate: reading };
}

function isFalse(statement: ReductionStatement, truth: number): boolean {
  const { outcome, estimate, low, high, intervalLow, intervalHigh } = statement;
  const [from, to] = estimate === null ? [low, high] : [intervalLow, intervalHigh];
  switch (outcome) {
    case 'rise':
      return truth >= 0;
    case 'measured':
    case 'between':
      return truth < (from ?? Number.NEGATIVE_INFINITY) || truth > (to ?? 1);
    case 'at-least':
      return truth < (from ?? Number.NEGATIVE_INFINITY);
    default:
      return false;
  }
}

/** Share of false statements about a sum whose members err together or apart. */
function falseShare(feed: readonly number[], truth: number, relative: number, together: boolean) {
  const stream = randomStream(7);
  const gauss = (): number => normalQuantile(stream.nextFraction() || 0.5);
  const sideOf = (trueValues: readonly number[]) => {
    const shared = gauss();
    return sumSide(
      trueValues.map((value) => {
        const scatter = value * relative * (together ? shared : gauss());
        const side = reported(value + ADDITIVE * gauss() + scatter, relative);
        return { member: { analyte: ANALYTE, weight: 1 }, side };
      }),
    );
  };
  let wrong = 0;
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const before = sideOf(feed);
    const after = sideOf(feed.map((value) => value * (1 - truth)));
    const p = riseProbability(before, after, OPTIONS) ?? 1;
    const statement = stateReduction(before, after, OPTIONS, p <= riseLevel(OPTIONS.confidence));
    if (isFalse(statement, truth)) wrong += 1;
  }
  return wrong / TRIALS;
}

describe('what is printed of a sum at 95 %', () => {
  const cells = [
    [48, 14, 5, 0.3],
    [3, 1, 0.6, 0.4],
    [5, 5, 5, 5],
  ].flatMap((feed) =>
    [0, 0.5, 0.9, 0.98].flatMap((truth) =>
      [0.05, 0.2].flatMap((relative) =>
        [true, false].map((together) => ({ feed, truth, relative, together })),
      ),
    ),
  );

  it.each(cells)(
    'is false at most that often: $feed ug/L, reduction $truth, uncertainty $relative, together: $together',
    ({ feed, truth, relative, together }) => {
      // 5 % and three standard errors of 2,000 trials.
      expect(falseShare(feed, truth, relative, together)).toBeLessThan(0.05 + 3 * 0.0049);
    },
  );
});
