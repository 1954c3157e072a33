import { describe, expect, it } from 'vitest';
import type { FilterLifeRow } from '../../model/index.ts';
import { filterLifeViews, isMissedFirmly } from './filter-life-view.ts';

const POINT: FilterLifeRow['points'][number] = {
  event: 'july',
  throughput_L: 60,
  outcome: 'measured',
  firm: true,
  reduction_low: 0.5,
  reduction_high: 0.6,
  product_low: 4,
  product_high: 5,
  target: 'missed',
  sample: 'p1',
};
const ROW: FilterLifeRow = {
  device: 'a',
  variant: 'standard',
  kind: 'natural',
  analyte: 'chloroform',
  unit: 'ug/L',
  points: [POINT],
  without_throughput: [],
  target: { comparator: 'at-least', value: 0.95, from: 'claim: less chloroform' },
  last_met_L: null,
  first_missed_L: 60,
  life: 'missed-throughout',
  release_L: null,
  release_firm: null,
  rated: [],
};

describe('a target missed along the volume treated', () => {
  it('is apparent where the miss rests on assumed uncertainty alone', () => {
    const apparent = { ...ROW, points: [{ ...POINT, firm: false }] };
    expect([isMissedFirmly(ROW), isMissedFirmly(apparent)]).toEqual([true, false]);
    expect(filterLifeViews([apparent])[0]?.rows[0]).toContain('60, apparent');
    expect(filterLifeViews([ROW])[0]?.rows[0]).toContain('60');
  });

  it('is not apparent where nothing was missed', () => {
    expect(isMissedFirmly({ ...ROW, first_missed_L: null, points: [] })).toBe(true);
  });
});
