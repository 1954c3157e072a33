import { describe, expect, it } from 'vitest';
import { readTariff } from './tariff-text.ts';

const amount = (text: string, per: 'volume' | 'energy' = 'volume'): number | string => {
  const reading = readTariff(text, per, 'us');
  return 'problem' in reading ? reading.problem : reading.value.amount;
};

describe('a tariff', () => {
  it('is a price per litre or kilowatt-hour, whatever the bill counts in', () => {
    expect(amount('2.20 USD/m3')).toBeCloseTo(0.0022, 12);
    expect(amount('USD 2.20 per m3')).toBeCloseTo(0.0022, 12);
    expect(amount('3.785411784 USD/1000 gal')).toBeCloseTo(0.001, 12);
    expect(amount('0.16 EUR/kWh', 'energy')).toBeCloseTo(0.16, 12);
  });

  it('may be 0, where water is not paid for', () => {
    expect(amount('0 USD/m3')).toBe(0);
  });

  it.each(['2.20', '2.20 USD', '2.20/m3', '$2.20/m3', 'two USD/m3', '-1 USD/m3', ''])(
    '"%s" is asked about',
    (text) => {
      expect(amount(text)).toBe('tariff-unreadable');
    },
  );

  it('does not take a unit of something else', () => {
    expect(amount('2.20 USD/kWh')).toBe('dimension-wrong');
    expect(amount('0.16 USD/m3', 'energy')).toBe('dimension-wrong');
    expect(amount('0.16 USD/blob')).toBe('unit-unknown');
  });

  it('does not guess the country of a gallon', () => {
    const reading = readTariff('8 USD/gal', 'volume', null);
    expect('problem' in reading && reading.problem).toBe('measures-missing');
  });
});
