import { describe, expect, it } from 'vitest';
import { decimalEvidence, readLabDecimal } from './lab-decimal.ts';

const read = (text: string, decimal: '.' | ',' | null) => {
  const reading = readLabDecimal(text, { decimal, thousands: null });
  return reading.kind === 'number' ? reading.value : reading.kind;
};

describe('a number of a lab export', () => {
  it('has one reading under either mark where it holds none', () => {
    for (const mark of ['.', ',', null] as const) {
      expect(read('12', mark)).toBe(12);
      expect(read('9E-05', mark)).toBe(9e-5);
      expect(read("1'234", mark)).toBe(1234);
    }
  });

  it('with one reading is read without proof', () => {
    expect(read('0.5', null)).toBe(0.5);
    expect(read('.50', null)).toBe(0.5);
    expect(read('0,5', null)).toBe(0.5);
    expect(read('1,234.5', null)).toBe(1234.5);
    expect(read('1.234.567,8', null)).toBe(1234567.8);
    expect(read('1 234,5', null)).toBe(1234.5);
  });

  it('with two readings is unclear until the mark of the file is proven', () => {
    for (const text of ['1,234', '313.174', '12,500', '5 100']) {
      expect(read(text, null)).toBe('unclear');
    }
    expect(read('1,234', '.')).toBe(1234);
    expect(read('1,234', ',')).toBe(1.234);
    expect(read('313.174', ',')).toBe(313174);
    expect(read('313.174', '.')).toBe(313.174);
  });

  it('that contradicts the proven mark is unclear', () => {
    expect(read('0,5', '.')).toBe('unclear');
    expect(read('0.5', ',')).toBe('unclear');
    expect(read('1.234.567', '.')).toBe('unclear');
  });

  it('with broken groups, or none at all, is no number', () => {
    for (const text of ['1,23,456', '1..2', '', '.', 'abc', 'NaN', 'Infinity', '1e999']) {
      expect(read(text, null)).toBe('none');
    }
  });

  it('keeps a stated thousands mark and refuses every other', () => {
    const none = { decimal: '.', thousands: 'none' } as const;
    expect(readLabDecimal('1,234', none).kind).toBe('unclear');
    expect(readLabDecimal('1,234.5', none).kind).toBe('unclear');
    const blank = { decimal: '.', thousands: ' ' } as const;
    expect(readLabDecimal('5 100', blank)).toEqual({ kind: 'number', value: 5100 });
  });

  it('reads a minus sign of any kind', () => {
    expect(read('-0.2', '.')).toBe(-0.2);
    expect(read('\u22120.2', '.')).toBe(-0.2);
  });
});

describe('the evidence of one cell', () => {
  it('is the mark of a number with one reading', () => {
    expect(decimalEvidence('0.5')).toBe('.');
    expect(decimalEvidence('12,34')).toBe(',');
    expect(decimalEvidence('1,234.5')).toBe('.');
    expect(decimalEvidence('1,234,567')).toBe('.');
  });

  it('is none where a cell has no mark or two readings', () => {
    for (const text of ['12', '1,234', '313.174', "1'234", 'ND', '']) {
      expect(decimalEvidence(text)).toBeNull();
    }
  });
});
