import { describe, expect, it } from 'vitest';
import { readMargin } from './margin-setting.ts';

describe('a margin of equivalence', () => {
  it.each([
    ['5 %', 'points', 0.05],
    ['0.5%', 'points', 0.005],
    [' 2 % ', 'points', 0.02],
    ['1.5x', 'ratio', 1.5],
    ['x 2', 'ratio', 2],
  ])('%s is read', (text, kind, value) => {
    expect(readMargin(text)).toEqual({ kind, value });
  });

  it.each(['', '5', '0 %', '100 %', '-5 %', '1x', '0.5x', 'x', '5 % points', 'NaN %'])(
    '"%s" is refused with the forms it takes',
    (text) => {
      expect(() => readMargin(text)).toThrow(expect.objectContaining({ code: 'option-unknown' }));
    },
  );
});
