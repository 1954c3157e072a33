import { describe, expect, it } from 'vitest';
import { detectionLimit } from './detection-limit.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

const spikes = [[2.5, 2.7, 2.2, 2.2, 3.1, 2.6, 2.8]];

describe('Detection limit from repeats', () => {
  it('is the spread of the spikes times the one-sided t factor', () => {
    // s 0.32367 times 3.14267; to the digits of the example.
    expect(detectionLimit({ spikes }).limit).toBeCloseTo(1.017, 3);
  });

  it('leaves blanks out when there are none or none gave a number', () => {
    expect(detectionLimit({ spikes }).fromBlanks).toBeNull();
    expect(detectionLimit({ spikes, blanks: [null, null] }).fromBlanks).toBeNull();
  });

  it('takes the highest blank when some gave a number, and the larger of both limits', () => {
    const limit = detectionLimit({ spikes, blanks: [null, 1.4, 0.2] });
    expect(limit).toMatchObject({ fromBlanks: 1.4, limit: 1.4 });
  });

  it('puts a negative mean of the blanks at zero', () => {
    const { fromBlanks } = detectionLimit({ spikes, blanks: [-5, -5, -5] });
    expect(fromBlanks).toBe(0);
  });

  it('is zero for equal spikes', () => {
    expect(detectionLimit({ spikes: [[2, 2, 2]] }).limit).toBe(0);
  });

  it('refuses no spikes, one spike, NaN and a single numeric blank', () => {
    expect(() => detectionLimit({ spikes: [] })).toThrow(refused);
    expect(() => detectionLimit({ spikes: [[1]] })).toThrow(refused);
    expect(() => detectionLimit({ spikes: [[1, Number.NaN]] })).toThrow(refused);
    expect(() => detectionLimit({ spikes, blanks: [0.1] })).toThrow(refused);
    expect(() => detectionLimit({ spikes, blanks: [Number.NaN, null] })).toThrow(refused);
  });
});
