import { describe, expect, it } from 'vitest';
import { REFUSALS } from '../../model/index.ts';
import {
  boundsText,
  otherFeedText,
  passageText,
  REFUSAL_WORDS,
  rangeText,
} from './other-feed-words.ts';

describe('bounds in words', () => {
  it('round outward, so that they are never stronger than the figures', () => {
    expect(boundsText(0.12349, 0.45671)).toBe('0.123 to 0.457');
    expect(boundsText(99.96, 100.04)).toBe('99.9 to 101');
    expect(passageText({ low: 0.0123456, high: 0.0123456 })).toBe('1.23 to 1.24 %');
  });

  it('say at most where nothing bounds them from below', () => {
    expect(boundsText(0, 0.441)).toBe('at most 0.441');
    expect(boundsText(null, 2)).toBe('at most 2');
    expect(passageText({ low: 0, high: 0.2 })).toBe('at most 20 %');
  });

  it('are not known without an upper end', () => {
    expect(boundsText(1, null)).toBe('not known');
    expect(passageText({ low: null, high: null })).toBe('not known');
  });

  it('hold nothing where there is nothing', () => {
    expect(boundsText(0, 0)).toBe('at most 0');
  });
});

describe('a tested range in words', () => {
  it('is one figure where both ends print alike', () => {
    expect(rangeText({ low: 42, high: 42 })).toBe('42');
    expect(rangeText({ low: 1.7099, high: 152.57 })).toBe('1.71 to 153');
    expect(rangeText({ low: null, high: null })).toBe('not known');
  });
});

describe('another feed in words', () => {
  const feed = {
    low: 0,
    high: 0,
    estimate: null,
    reported_low: null,
    reported_high: null,
    uncertainty_from: 'assumed',
  } as const;

  it('is the reported figure, a limit or a range, never the widened ends', () => {
    expect(otherFeedText({ ...feed, estimate: 12.0, low: 6, high: 21 })).toBe('12');
    expect(otherFeedText({ ...feed, reported_low: 0, reported_high: 0.5 })).toBe('< 0.5');
    expect(otherFeedText({ ...feed, reported_low: 2419.6 })).toBe('> 2420');
    expect(otherFeedText({ ...feed, reported_low: 0.8, reported_high: 2 })).toBe('0.8 to 2');
  });
});

describe('reasons', () => {
  it('each have words of their own', () => {
    const words = REFUSALS.map((reason) => REFUSAL_WORDS[reason]);
    expect(new Set(words).size).toBe(REFUSALS.length);
  });
});
