import { describe, expect, it } from 'vitest';
import { analyteIndex } from '../../reference/index.ts';
import { holdingTime, isDueAtOnce } from './holding-time-table.ts';

function timeOf(key: string, preservative: string | null = null) {
  const analyte = analyteIndex([]).byKey(key);
  if (analyte === undefined) throw new RangeError(`no analyte ${key}`);
  return holdingTime(analyte, preservative);
}

describe('holding times', () => {
  it('are 15 minutes for chlorine and pH, which are due at once', () => {
    for (const key of ['chlorine-free', 'chlorine-total', 'ph']) {
      const time = timeOf(key);
      expect(time?.words).toBe('15 minutes');
      expect(time === null ? false : isDueAtOnce(time)).toBe(true);
    }
  });

  it('are 48 hours for nitrate, and 28 days for nitrate kept with sulfuric acid', () => {
    expect(timeOf('nitrate')?.hours).toBe(48);
    expect(timeOf('nitrate', 'nitric acid')?.hours).toBe(48);
    expect(timeOf('nitrate', 'Sulphuric acid to pH 2')?.hours).toBe(28 * 24);
    expect(timeOf('nitrite', 'sulfuric acid')?.hours).toBe(48);
  });

  it('are 30 hours for coliforms, 14 days for volatile organics, 6 months for metals', () => {
    expect(timeOf('e-coli')?.hours).toBe(30);
    expect(timeOf('benzene')?.words).toBe('14 days');
    expect(timeOf('chloroform')?.words).toBe('14 days');
    expect(timeOf('lead')?.words).toBe('6 months');
  });

  it('make an exception of mercury among the metals', () => {
    expect(timeOf('mercury')?.words).toBe('28 days');
  });

  it('ask no cooling for metals, and less for bacteria than for nitrate', () => {
    expect(timeOf('copper')?.warmestC).toBeNull();
    expect(timeOf('e-coli')?.warmestC).toBe(10);
    expect(timeOf('nitrate')?.warmestC).toBe(6);
  });

  it('are not known for what is no matter of time', () => {
    expect(timeOf('temperature')).toBeNull();
  });

  it('are known for most of what a lab measures', () => {
    const index = analyteIndex([]);
    const timed = index.analytes.filter((analyte) => holdingTime(analyte, null) !== null);
    expect(timed.length).toBeGreaterThan(150);
  });
});
