import { describe, expect, it } from 'vitest';
import { NOWHERE } from '../../findings/index.ts';
import type { LabRole } from '../../model/index.ts';
import { FindingLog } from './finding-log.ts';
import { readLimits } from './lab-limits.ts';

function limits(
  cells: Partial<Record<LabRole, string>>,
  loneLimit: 'reporting' | 'detection' = 'reporting',
) {
  const log = new FindingLog();
  const read = readLimits({
    cell: (role) => cells[role] ?? '',
    placeOf: () => NOWHERE,
    marks: { decimal: '.', thousands: null },
    loneLimit,
    log,
    factorFrom: (unit) => (unit === 'mg/L' ? { num: 1000, den: 1 } : null),
  });
  return { read, codes: log.findings.map(({ code }) => code) };
}

describe('the limits of a row', () => {
  it('are both kept', () => {
    expect(limits({ mdl: '0.1', rl: '0.5' }).read).toEqual({ mdl: 0.1, rl: 0.5 });
  });

  it('a lone limit is the reporting limit, or what the sidecar says', () => {
    expect(limits({ limit: '0.5' }).read).toEqual({ mdl: null, rl: 0.5 });
    expect(limits({ limit: '0.5' }, 'detection').read).toEqual({ mdl: 0.5, rl: null });
    expect(limits({ limit: '0.1', rl: '0.5' }).read).toEqual({ mdl: 0.1, rl: 0.5 });
  });

  it('the column of its type decides which limit it is; an upper one bounds nothing from below', () => {
    const typed = (limitType: string) => limits({ limit: '0.5', limitType }).read;
    expect(typed('Method Detection Limit (MDL)')).toEqual({ mdl: 0.5, rl: null });
    expect(typed('Practical Quantitation Limit')).toEqual({ mdl: null, rl: 0.5 });
    expect(typed('Upper Quantitation Limit')).toEqual({ mdl: null, rl: null });
  });

  it('in another unit are converted, with the unit in its column or behind the figure', () => {
    expect(limits({ rl: '0.005', limitUnit: 'mg/L' }).read).toEqual({ mdl: null, rl: 5 });
    expect(limits({ rl: '0.005 mg/L' }).read).toEqual({ mdl: null, rl: 5 });
  });

  it('that are blank, a dash or zero are none', () => {
    for (const rl of ['', '-', 'NA', 'blank', '0', '0.00']) {
      expect(limits({ rl }).read).toEqual({ mdl: null, rl: null });
    }
  });

  it('out of order are reported, and the higher one bounds both', () => {
    const { read, codes } = limits({ mdl: '2', rl: '1' });
    expect(read).toEqual({ mdl: 2, rl: 2 });
    expect(codes).toEqual(['result-limit-order']);
  });

  it('that cannot be read are asked about', () => {
    expect(limits({ rl: 'see note' })).toEqual({ read: null, codes: ['number-unreadable'] });
    expect(limits({ rl: '-1' })).toEqual({ read: null, codes: ['number-unreadable'] });
    expect(limits({ rl: '0,5' })).toEqual({ read: null, codes: ['decimal-unclear'] });
  });
});
