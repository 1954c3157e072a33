import { describe, expect, it } from 'vitest';
import { temperatureFactor } from '../../../src/analyse/chemistry/index.ts';
import { efficiencyFloor } from '../../../src/analyse/yardsticks/index.ts';
import { readUnit, toBase, waterEfficiencyFigures } from '../../../src/reference/index.ts';
import { recovery, tankLevels, tankPressureKPa } from '../../../src/simulate/index.ts';
import { casesOf, excess, numberIn, numberRows } from './read-cases.ts';

// Tolerances are those of each case unless an assertion says otherwise.
const caseOf = casesOf('ratings.json');

describe('published yardsticks', () => {
  it('RAT-01, US EPA WaterSense: 2.3 gal to drain per gal treated is an efficiency of 30.3 %', () => {
    const item = caseOf('RAT-01');
    const { mostDrainRatio } = efficiencyFloor();
    expect(mostDrainRatio).toBe(numberIn(item.inputs, 'drain_per_clean'));
    expect(excess(item, 'efficiency', recovery(1, mostDrainRatio ?? 0))).toBeLessThanOrEqual(0);
  });

  it('RAT-02, US EPA WaterSense: a typical 5 gal to drain per gal treated is 16.7 %', () => {
    const item = caseOf('RAT-02');
    const typical = waterEfficiencyFigures('typical').find(
      ({ metric, standard }) =>
        metric === 'reject ratio of a typical system' && standard === 'US EPA WaterSense',
    );
    expect(typical?.value).toBe(numberIn(item.inputs, 'drain_per_clean'));
    expect(excess(item, 'efficiency', recovery(1, typical?.value ?? 0))).toBeLessThanOrEqual(0);
  });

  it('RAT-03, US EPA WaterSense: nearly 3,000 gal saved a year are about 3 gal treated a day', () => {
    const item = caseOf('RAT-03');
    const saved = numberIn(item.inputs, 'saving_gal_per_year');
    const perYear =
      saved / (numberIn(item.inputs, 'typical_ratio') - numberIn(item.inputs, 'label_ratio'));
    expect(excess(item, 'implied_treated_gal_per_year', perYear)).toBeLessThanOrEqual(0);
    expect(excess(item, 'implied_treated_gal_per_day', perYear / 365)).toBeLessThanOrEqual(0);
    // The figures of the table: 3,100 gal of the final, 3,200 of the draft, all three within 7 %.
    const table = waterEfficiencyFigures('saving').map(({ value }) => value ?? 0);
    for (const value of table) expect(Math.abs(value / saved - 1)).toBeLessThan(0.07);
  });

  it.each([
    ['RAT-04', 'efficiency_rating_percent', 'efficiency rating, tank and shut-off'],
    ['RAT-05', 'recovery_rating_percent', 'recovery rating, tank absent or bypassed'],
  ])('%s, NSF/ANSI 58 definition (seen in trade press; volumes invented): %s', (id, name) => {
    const item = caseOf(id);
    const product = numberIn(item.inputs, 'product_L');
    const share = recovery(product, numberIn(item.inputs, 'influent_L') - product);
    expect(excess(item, name, (share ?? 0) * 100)).toBeLessThanOrEqual(0);
  });

  it('RAT-06, trade press (2013): 35 gal a day are 132.5 L a day', () => {
    const item = caseOf('RAT-06');
    const reading = readUnit('gpd', { dimension: 'flow', measures: 'us' });
    if (reading.kind !== 'unit') throw new RangeError('the table of units lacks gpd');
    const litresPerMin = toBase(numberIn(item.inputs, 'production_gpd'), reading.unit);
    expect(excess(item, 'L_per_day', litresPerMin * 1440)).toBeLessThanOrEqual(0);
  });

  it('RAT-07, trade press: a shut-off at 65 % of 60 psi leaves 39 psi in the full tank', () => {
    const item = caseOf('RAT-07');
    const feedKPa = numberIn(item.inputs, 'feed_psig');
    const tank = {
      shellL: 14,
      prechargeKPa: 7,
      stopKPa: feedKPa * numberIn(item.inputs, 'shutoff_fraction'),
      restartKPa: 30,
      feedKPa,
      openFlowLPerMin: 0.2,
      rejectFlowLPerMin: 0.6,
      outsideKPa: 14.695949,
    };
    const psig = tankPressureKPa(tank, tankLevels(tank).stopL);
    expect(excess(item, 'tank_psig_at_shutoff', psig)).toBeLessThanOrEqual(0);
  });
});

describe('conductivity at 25 degC', () => {
  it.each(numberRows('conductivity-f25.csv'))(
    'ISO 7888:1985, table of factors for natural waters, at $t_C degC',
    ({ t_C = 0, f25_ISO7888_table = 0 }) => {
      // Half a unit in the last digit printed.
      expect(Math.abs((temperatureFactor(t_C) ?? Number.NaN) - f25_ISO7888_table)).toBeLessThan(
        0.00051,
      );
    },
  );
});
