import { describe, expect, it } from 'vitest';
import type { ReductionOutcome } from '../../model/index.ts';
import { firstRelease } from './release.ts';

const at = (throughputL: number, outcome: ReductionOutcome, firm = true) => ({
  throughputL,
  outcome,
  firm,
});

describe('the release of what was held earlier', () => {
  it('is the first rise after a reduction', () => {
    const points = [at(10, 'measured'), at(80, 'not-shown'), at(120, 'rise'), at(200, 'rise')];
    expect(firstRelease(points)).toMatchObject({ throughputL: 120 });
  });

  it('is found whatever the order of the volumes', () => {
    expect(firstRelease([at(120, 'rise', false), at(10, 'at-least')])).toMatchObject({
      throughputL: 120,
      firm: false,
    });
  });

  it('is none where the rise was there from the start, or came before the reduction', () => {
    expect(firstRelease([at(10, 'rise'), at(80, 'rise')])).toBeNull();
    expect(firstRelease([at(10, 'rise'), at(80, 'between')])).toBeNull();
    expect(firstRelease([at(10, 'untestable'), at(80, 'rise')])).toBeNull();
  });

  it('is none without volumes, and none without a rise', () => {
    expect(firstRelease([])).toBeNull();
    expect(firstRelease([at(0, 'measured'), at(80, 'untested')])).toBeNull();
  });
});
