import { describe, expect, it } from 'vitest';
import { analyteIndex } from '../../reference/index.ts';
import { sumLists } from './sum-lists.ts';

const lists = new Map(sumLists(analyteIndex([])).map((list) => [list.key, list]));
const weights = (key: string) =>
  Object.fromEntries(
    lists.get(key)?.members.map(({ analyte, weight }) => [analyte.key, weight]) ?? [],
  );

describe('the sums that can be formed', () => {
  it('hold the four trihalomethanes and the five haloacetic acids, each counted once', () => {
    expect(weights('tthm')).toEqual({
      chloroform: 1,
      bromodichloromethane: 1,
      dibromochloromethane: 1,
      bromoform: 1,
    });
    expect(Object.values(weights('haa5'))).toEqual([1, 1, 1, 1, 1]);
  });

  it('hold the PFAS lists of 20, 25 and 29, none with a member twice', () => {
    for (const [key, n] of [
      ['pfas-sum-eu20', 20],
      ['pfas-sum-canada25', 25],
      ['pfas-sum-epa29', 29],
    ] as const) {
      expect(lists.get(key)?.members).toHaveLength(n);
      expect(Object.keys(weights(key))).toHaveLength(n);
    }
  });

  it('add nitrate and nitrite as N', () => {
    expect(lists.get('nitrate-nitrite')).toMatchObject({ unit: 'mg/L', basis: 'as N' });
    expect(weights('nitrate-nitrite')).toEqual({ nitrate: 1, nitrite: 1 });
  });

  it('weigh calcium and magnesium by the molar mass of calcium carbonate', () => {
    expect(lists.get('total-hardness')).toMatchObject({ unit: 'mg/L', basis: 'as CaCO3' });
    const { calcium, magnesium } = weights('total-hardness');
    expect(calcium).toBeCloseTo(100.087 / 40.078, 12);
    expect(magnesium).toBeCloseTo(100.087 / 24.305, 12);
  });

  it('bring members to the unit of the sum: a nanogram is a thousandth of a microgram', () => {
    const pah = lists.get('pah-sum-eu4');
    expect([pah?.unit, pah?.members[0]?.analyte.unit]).toEqual(['ug/L', 'ng/L']);
    expect(Object.values(weights('pah-sum-eu4'))).toEqual([0.001, 0.001, 0.001, 0.001]);
  });

  it('weigh the hazard index of PFAS by its published concentrations, not as a mass', () => {
    expect(lists.get('pfas-hazard-index')).toMatchObject({ rule: 'ratio', limit: 1 });
    expect(weights('pfas-hazard-index')).toEqual({
      'hfpo-da': 1 / 10,
      pfbs: 1 / 2000,
      pfna: 1 / 10,
      pfhxs: 1 / 10,
    });
  });

  it('never add parts that leave some of the whole out', () => {
    expect(lists.has('chlorine-total')).toBe(false);
  });
});
