import { describe, expect, it } from 'vitest';
import { atLeast, finding } from '../findings/index.ts';
import { exitCodeOf } from './exit-codes.ts';

const error = finding('unit-missing', 'm', 'r');
const warning = finding('file-unknown', 'm', 'r');
const note = finding('interests-blank', 'm', 'r');

describe('the exit code of a call that ran to its end', () => {
  it('is 0 without findings, and with warnings nobody asked to fail on', () => {
    expect(exitCodeOf([], 'done', 'note', atLeast)).toBe(0);
    expect(exitCodeOf([warning, note], 'done', null, atLeast)).toBe(0);
    expect(exitCodeOf([note], 'done', 'warning', atLeast)).toBe(0);
  });

  it('is 1 when a finding reaches the level, or a number moved', () => {
    expect(exitCodeOf([warning], 'done', 'note', atLeast)).toBe(1);
    expect(exitCodeOf([note], 'done', 'note', atLeast)).toBe(1);
    expect(exitCodeOf([], 'moved', null, atLeast)).toBe(1);
  });

  it('is 2 when there is an error, whatever else there is', () => {
    expect(exitCodeOf([note, error], 'done', null, atLeast)).toBe(2);
    expect(exitCodeOf([error], 'moved', 'note', atLeast)).toBe(2);
  });
});
