import { describe, expect, it } from 'vitest';
import { recovery, totalDrainRatio } from './drain-ratio.ts';

describe('totalDrainRatio and recovery', () => {
  it('give the examples of their descriptions', () => {
    expect(totalDrainRatio(2, 3)).toBe(1.5);
    expect(recovery(2, 3)).toBe(0.4);
  });

  it('are unknown without clean water', () => {
    expect(totalDrainRatio(0, 3)).toBeNull();
    expect(recovery(0, 3)).toBeNull();
    expect(recovery(0, 0)).toBeNull();
  });

  it('are unknown for a volume that is not a number, or negative', () => {
    expect(totalDrainRatio(Number.NaN, 3)).toBeNull();
    expect(recovery(-1, 3)).toBeNull();
  });

  it('are 0 and 1 when nothing drains', () => {
    expect(totalDrainRatio(2, 0)).toBe(0);
    expect(recovery(2, 0)).toBe(1);
  });
});
