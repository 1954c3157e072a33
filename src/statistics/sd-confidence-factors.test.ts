import { describe, expect, it } from 'vitest';
import { sdConfidenceFactors } from './sd-confidence-factors.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Interval of a standard deviation', () => {
  it('runs from 0.64 to 2.20 times the estimate for six degrees of freedom', () => {
    const { low, high } = sdConfidenceFactors(6);
    // To the digits of the example.
    expect(low).toBeCloseTo(0.6444, 4);
    expect(high).toBeCloseTo(2.2021, 4);
  });

  it('narrows to 1 as the degrees of freedom grow', () => {
    const { low, high } = sdConfidenceFactors(1e6);
    expect(high - low).toBeLessThan(0.003);
  });

  it('refuses degrees of freedom of zero and impossible confidences', () => {
    expect(() => sdConfidenceFactors(0)).toThrow(refused);
    expect(() => sdConfidenceFactors(Number.NaN)).toThrow(refused);
    expect(() => sdConfidenceFactors(5, 1)).toThrow(refused);
  });
});
