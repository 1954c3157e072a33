import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import { checkDevice } from './check-device.ts';
import type { DrainDevice } from './drain-device.ts';

function refusal(device: unknown): string {
  try {
    checkDevice(device as DrainDevice);
  } catch (thrown) {
    if (thrown instanceof BenchError) return `${thrown.code}: ${thrown.message}`;
    throw thrown;
  }
  return 'accepted';
}

const withRule = (rule: object) => ({
  drainRatio: 1,
  flushRules: [{ rule: 'r', volumeL: 1, ...rule }],
});

describe('checkDevice', () => {
  it('accepts a device without rules, and rules with just what their trigger needs', () => {
    expect(refusal({ drainRatio: 0, flushRules: [] })).toBe('accepted');
    const rules = [
      { trigger: 'idle', afterS: 0 },
      { trigger: 'interval', afterS: 1 },
      { trigger: 'start' },
      { trigger: 'produced', afterL: 0.1 },
      { trigger: 'power-on' },
      { trigger: 'dump', afterL: 1 },
      { trigger: 'dump', afterS: 1 },
    ];
    for (const rule of rules) expect(refusal(withRule(rule)), rule.trigger).toBe('accepted');
  });

  it('ignores settings the trigger has no use for, once they are numbers', () => {
    const spare = { afterS: 5, afterL: 5, repeat: true, anchor: 'pour', minIntervalS: 5 };
    expect(refusal(withRule({ trigger: 'power-on', ...spare }))).toBe('accepted');
    expect(refusal(withRule({ trigger: 'power-on', afterS: Number.NaN }))).toMatch('afterS is NaN');
  });

  it.each([
    ['drainRatio', { drainRatio: -1 }],
    ['drainRatio', { drainRatio: Number.NaN }],
    ['drainRatio', { drainRatio: undefined }],
    ['drainRatio', { drainRatio: '0.5' }],
    ['perStartL', { perStartL: Number.POSITIVE_INFINITY }],
    ['cleanFlowLPerMin', { cleanFlowLPerMin: 0 }],
    ['cleanFlowLPerMin', { cleanFlowLPerMin: 5e-324 }],
    ['cleanFlowLPerMin', { cleanFlowLPerMin: null }],
  ])('refuses a device whose %s is no usable number', (name, part) => {
    expect(refusal({ drainRatio: 1, flushRules: [], ...part })).toMatch(
      `simulation-input: ${name} is `,
    );
  });

  it.each([
    ['volumeL', { trigger: 'start', volumeL: -1 }],
    ['volumeL', { trigger: 'start', volumeL: undefined }],
    ['drainFraction', { trigger: 'start', drainFraction: 1.1 }],
    ['drainFraction', { trigger: 'start', drainFraction: Number.NaN }],
    ['minIntervalS', { trigger: 'start', minIntervalS: -1 }],
    ['afterS', { trigger: 'start', afterS: -1 }],
    ['afterS', { trigger: 'idle' }],
    ['afterS', { trigger: 'idle', afterS: 0, repeat: true }],
    ['afterS', { trigger: 'interval' }],
    ['afterS', { trigger: 'interval', afterS: 1e-6 }],
    ['afterS', { trigger: 'dump', afterS: 0 }],
    ['afterL', { trigger: 'dump', afterL: 0 }],
    ['afterL', { trigger: 'produced' }],
    ['afterL', { trigger: 'produced', afterL: 0 }],
    ['quiet.fromS', { trigger: 'idle', afterS: 1, quiet: { fromS: -1, toS: 5, mode: 'skip' } }],
    ['quiet.toS', { trigger: 'idle', afterS: 1, quiet: { fromS: 1, toS: 86_401, mode: 'skip' } }],
  ])('refuses a rule whose %s is missing or outside: %j', (name, rule) => {
    expect(refusal(withRule(rule))).toMatch(`simulation-input: flushRules[0] (r) ${name} is `);
  });

  it.each([
    ['trigger', { trigger: 'sometimes' }],
    ['trigger', { trigger: 'toString' }],
    ['water', { trigger: 'start', water: 'grey' }],
    ['anchor', { trigger: 'start', anchor: 'moon' }],
    ['anchor of idle', { trigger: 'idle', afterS: 1, anchor: 'last-flush' }],
    ['anchor of interval', { trigger: 'interval', afterS: 1, anchor: 'pour' }],
    ['anchor of dump', { trigger: 'dump', afterS: 1, anchor: 'last-flush' }],
    ['quiet.mode', { trigger: 'start', quiet: { fromS: 1, toS: 2, mode: 'hush' } }],
  ])('refuses a rule whose %s is no word it knows: %j', (name, rule) => {
    expect(refusal(withRule(rule))).toMatch(`simulation-input: flushRules[0] (r): ${name} is "`);
  });

  it('asks for either litres or hours of a dump', () => {
    expect(refusal(withRule({ trigger: 'dump' }))).toMatch('neither afterS nor afterL');
    expect(refusal(withRule({ trigger: 'dump', afterS: 1, afterL: 1 }))).toMatch('both');
  });

  it('names the row of the rule', () => {
    const good = { rule: 'a', trigger: 'start', volumeL: 1 };
    const bad = { rule: 'b', trigger: 'start', volumeL: Number.NaN };
    expect(refusal({ drainRatio: 1, flushRules: [good, bad] })).toMatch('flushRules[1] (b)');
    expect(refusal({ drainRatio: 1, flushRules: [{ trigger: 'start', volumeL: 1 }] })).toMatch(
      'flushRules[0] has no name',
    );
  });
});
