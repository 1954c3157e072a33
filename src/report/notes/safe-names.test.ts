import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { safeNames } from './safe-names.ts';

describe('file names for keys of a bench', () => {
  it('keep a plain key as it is', () => {
    expect(safeNames(['tank-a']).get('tank-a')).toBe('tank-a');
  });

  it('tell apart keys that differ by case or sign only', () => {
    expect([...safeNames(['tank-a', 'Tank A', 'tank_a']).values()]).toEqual([
      'tank-a',
      'tank-a-2',
      'tank-a-3',
    ]);
  });

  it('make a name of a key without letters, and of a name some systems keep', () => {
    expect([...safeNames(['../..', '膜', 'con', '']).values()]).toEqual([
      'device',
      'device-2',
      'device-con',
      'device-3',
    ]);
  });

  it('are safe and distinct for any keys', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.string({ unit: 'binary' })), (keys) => {
        const names = safeNames(keys);
        expect(new Set(names.values()).size).toBe(keys.length);
        for (const name of names.values()) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
