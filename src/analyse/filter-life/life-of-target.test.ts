import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lifeOfTarget } from './life-of-target.ts';

const at = (throughputL: number, decision: 'meets' | 'misses' | 'cannot-say') => ({
  throughputL,
  decision,
});

describe('the life of a target', () => {
  it('ends between the last volume shown to meet it and the first shown to miss it', () => {
    expect(lifeOfTarget([at(40, 'meets'), at(60, 'cannot-say'), at(90, 'misses')])).toEqual({
      last_met_L: 40,
      first_missed_L: 90,
      life: 'ends-between',
    });
  });

  it('is met as far as it was tested where nothing misses it', () => {
    expect(lifeOfTarget([at(40, 'meets'), at(90, 'cannot-say')])).toEqual({
      last_met_L: 40,
      first_missed_L: null,
      life: 'met-throughout',
    });
  });

  it('is missed from the first volume on', () => {
    expect(lifeOfTarget([at(0, 'misses'), at(90, 'misses')])).toMatchObject({
      last_met_L: null,
      first_missed_L: 0,
      life: 'missed-throughout',
    });
  });

  it('is not in order where a later volume meets it again, and stops at the first miss', () => {
    expect(lifeOfTarget([at(10, 'meets'), at(40, 'misses'), at(90, 'meets')])).toEqual({
      last_met_L: 10,
      first_missed_L: 40,
      life: 'not-in-order',
    });
  });

  it('cannot be said without a volume that decides', () => {
    expect(lifeOfTarget([]).life).toBe('cannot-say');
    expect(lifeOfTarget([at(10, 'cannot-say')]).life).toBe('cannot-say');
  });

  it('does not depend on the order of the volumes, and ends before it is missed', () => {
    const decision = fc.constantFrom('meets' as const, 'misses' as const, 'cannot-say' as const);
    const point = fc.tuple(fc.nat(500), decision).map(([litres, word]) => at(litres, word));
    fc.assert(
      fc.property(fc.array(point, { maxLength: 8 }), (points) => {
        const life = lifeOfTarget(points);
        expect(lifeOfTarget([...points].reverse())).toEqual(life);
        if (life.last_met_L !== null && life.first_missed_L !== null) {
          expect(life.last_met_L).toBeLessThan(life.first_missed_L);
        }
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
