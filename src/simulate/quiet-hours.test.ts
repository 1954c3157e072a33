import { describe, expect, it } from 'vitest';
import { quietWait } from './quiet-hours.ts';

const H = 3600;
const DAY = 24 * H;

describe('quietWait', () => {
  it('gives the example of its description', () => {
    expect(quietWait(79_200, 79_200, 25_200)).toBe(32_400);
  });

  it('is quiet from the start up to, but not at, the end', () => {
    expect(quietWait(1 * H - 1, 1 * H, 2 * H)).toBe(0);
    expect(quietWait(1 * H, 1 * H, 2 * H)).toBe(H);
    expect(quietWait(2 * H - 1, 1 * H, 2 * H)).toBe(1);
    expect(quietWait(2 * H, 1 * H, 2 * H)).toBe(0);
  });

  it('runs across midnight', () => {
    expect(quietWait(23 * H, 22 * H, 7 * H)).toBe(8 * H);
    expect(quietWait(0, 22 * H, 7 * H)).toBe(7 * H);
    expect(quietWait(7 * H, 22 * H, 7 * H)).toBe(0);
    expect(quietWait(12 * H, 22 * H, 7 * H)).toBe(0);
  });

  it('takes 24:00 as an end and as a start', () => {
    expect(quietWait(23 * H, 22 * H, DAY)).toBe(H);
    expect(quietWait(23 * H, DAY, 7 * H)).toBe(0);
    expect(quietWait(1 * H, DAY, 7 * H)).toBe(6 * H);
  });

  it('is never quiet from an hour to the same hour, and always from 00:00 to 24:00', () => {
    for (const hour of [0, 7, 24]) expect(quietWait(7 * H, hour * H, hour * H)).toBe(0);
    expect(quietWait(0, 0, DAY)).toBe(DAY);
    expect(quietWait(DAY - 1, 0, DAY)).toBe(1);
  });

  it('does not mind whole days more', () => {
    expect(quietWait(23 * H + 500 * DAY, 22 * H, 7 * H)).toBe(8 * H);
  });

  it('counts less than a microsecond before a border as the border', () => {
    expect(quietWait(1 * H - 5e-7, 1 * H, 2 * H)).toBeCloseTo(H, 5);
    expect(quietWait(2 * H - 5e-7, 1 * H, 2 * H)).toBe(0);
    expect(quietWait(DAY - 5e-7, 0, 7 * H)).toBeCloseTo(7 * H, 5);
    expect(quietWait(DAY - 5e-7, 22 * H, DAY)).toBe(0);
  });
});
