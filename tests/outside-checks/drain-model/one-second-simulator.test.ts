import { describe, expect, it } from 'vitest';
import { type FlushTrigger, simulateDrain } from '../../../src/simulate/index.ts';
import { playSecondBySecond } from './one-second-simulator.ts';
import { randomCase } from './random-cases.ts';

const CASES = 1000;

// Flush lists and counts must be equal. Volumes are sums of up to some thousand terms taken in
// another order: 1e-9 relative is far above their rounding and far below one flush.
const VOLUME_DIGITS = 9;

describe('event rules R1 to R14, no published source: engine against a one-second simulator', () => {
  it(`fires the same flushes at the same seconds in ${CASES} random cases`, () => {
    for (let seed = 1; seed <= CASES; seed++) {
      const { device, pours, horizon } = randomCase(seed);
      const engine = simulateDrain(device, pours, horizon);
      const slow = playSecondBySecond(device, pours, horizon);
      const title = `case ${seed}: ${JSON.stringify({ device, pours, horizon })}`;

      const rounded = engine.flushes?.map(({ rule, atS }) => ({ rule, atS: roundToMicro(atS) }));
      expect(rounded, title).toEqual(slow.flushes);
      expect(engine.flushCounts, title).toEqual(slow.flushCounts);
      expect(engine.cleanL, title).toBeCloseTo(slow.cleanL, VOLUME_DIGITS);
      expect(engine.producingDrainL, title).toBeCloseTo(slow.producingDrainL, VOLUME_DIGITS);
      const allowed = 1e-9 * Math.max(1, slow.flushDrainL);
      expect(Math.abs(engine.flushDrainL - slow.flushDrainL), title).toBeLessThanOrEqual(allowed);
    }
  });

  it('draws cases in which every trigger fires, and every setting changes the result', () => {
    const fired = new Map<string, number>();
    const changed = new Map<string, number>();
    const count = (map: Map<string, number>, key: string) => map.set(key, (map.get(key) ?? 0) + 1);
    for (let seed = 1; seed <= CASES; seed++) {
      const { device, pours, horizon } = randomCase(seed);
      const result = simulateDrain(device, pours, horizon);
      for (const [row, rule] of device.flushRules.entries()) {
        if ((result.flushCounts[rule.rule] ?? 0) > 0) count(fired, rule.trigger);
        for (const setting of SETTINGS) {
          if (!(setting in rule)) continue;
          const { [setting]: left, ...without } = rule;
          const others = device.flushRules.with(row, without);
          const other = simulateDrain({ ...device, flushRules: others }, pours, horizon);
          const isChanged =
            other.totalDrainL !== result.totalDrainL ||
            JSON.stringify(other.flushes) !== JSON.stringify(result.flushes);
          if (isChanged)
            count(changed, setting === 'quiet' ? `quiet ${rule.quiet?.mode}` : setting);
          if (isChanged && setting === 'anchor') count(changed, `anchor ${String(left)}`);
        }
      }
    }
    const triggers: FlushTrigger[] = ['idle', 'interval', 'start', 'produced', 'power-on', 'dump'];
    for (const trigger of triggers) expect(fired.get(trigger), trigger).toBeGreaterThan(50);
    for (const setting of [
      'repeat',
      'minIntervalS',
      'quiet skip',
      'quiet defer',
      'drainFraction',
      'water',
      'anchor power-on',
      'anchor last-flush',
    ]) {
      expect(changed.get(setting), setting).toBeGreaterThan(30);
    }
  });
});

const SETTINGS = ['repeat', 'minIntervalS', 'quiet', 'drainFraction', 'water', 'anchor'] as const;

/** Durations such as 0.3 L at 6 L/min miss a whole second by a rounding error. */
function roundToMicro(seconds: number): number {
  const whole = Math.round(seconds);
  return Math.abs(seconds - whole) < 1e-6 ? whole : seconds;
}
