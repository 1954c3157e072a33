import { describe, expect, it } from 'vitest';
import type { JudgedEvent } from './judge-event.ts';
import { missProbability } from './miss-probability.ts';

function event(parts: Partial<JudgedEvent>): JudgedEvent {
  return {
    evidence: {
      event: 'day',
      kind: 'natural',
      outcome: 'measured',
      firm: true,
      feed: null,
      product: null,
      reduction: { low: 0, high: 0.5 },
      feedSamples: [],
      productSamples: [],
      productResults: [],
      places: [],
      throughputL: null,
    },
    decision: 'misses',
    because: 'falls-short',
    firm: true,
    isInside: true,
    isRetested: false,
    interval: { low: 0, high: 0.5 },
    pValue: 0.001,
    estimateMisses: true,
    ...parts,
  };
}

describe('the probability behind a claim that is missed', () => {
  it('does not exist for no events, and for one event, which never contradicts', () => {
    expect(missProbability([])).toBeNull();
    expect(missProbability([event({ pValue: 0.001 })])).toBeNull();
  });

  it('exists for a claim that is met, so that the family holds what could have been missed', () => {
    const met = event({ decision: 'meets', pValue: 0.9 });
    expect(missProbability([met, met])).toBe(0.9);
  });

  it('is that of the second event, since two have to miss', () => {
    expect(missProbability([event({ pValue: 0.004 }), event({ pValue: 0.001 })])).toBe(0.004);
  });

  it('grows with the number of events looked at', () => {
    const events = [0.004, 0.001, 0.6].map((pValue) => event({ pValue }));
    expect(missProbability(events)).toBeCloseTo(2 * 0.004, 15);
  });

  it('takes one event where a retest confirmed it', () => {
    const events = [event({ pValue: 0.001, isRetested: true }), event({ pValue: 0.5 })];
    expect(missProbability(events)).toBeCloseTo(2 * 0.001, 15);
  });

  it('does not exist where bounds alone show both misses', () => {
    expect(missProbability([event({ pValue: null }), event({ pValue: null })])).toBeNull();
  });

  it('is that of one event where bounds show the other', () => {
    expect(missProbability([event({ pValue: null }), event({ pValue: 0.01 })])).toBe(0.01);
  });

  it('leaves out events outside the conditions of the claim, and never exceeds 1', () => {
    expect(missProbability([event({ pValue: 0.01 }), event({ isInside: false })])).toBeNull();
    const events = [0.6, 0.7, 0.8].map((pValue) => event({ pValue }));
    expect(missProbability(events)).toBe(1);
  });
});
