import { describe, expect, it } from 'vitest';
import {
  energyKWh,
  ownershipCost,
  presentValue,
  replacementInterval,
  replacementYears,
} from '../../../src/analyse/costs/index.ts';
import { readTariff } from '../../../src/normalise/tariff-text.ts';
import { waterEfficiencyFigures } from '../../../src/reference/index.ts';
import { casesOf, excess, numberIn } from './read-cases.ts';

// Tolerances are those of each case: definitions are met to the digits stored.
const caseOf = casesOf('cost-usage.json');

/** Clean and drained litres at tariffs per cubic metre. */
function waterCost(inputs: Readonly<Record<string, unknown>>, litres: number): number {
  const perM3 = numberIn(inputs, 'water_per_m3') + numberIn(inputs, 'sewer_per_m3');
  return (litres * (1 + numberIn(inputs, 'drain_per_clean')) * perM3) / 1000;
}

describe('cost of ownership', () => {
  it('CST-01, derived: all metered inflow pays water and sewer', () => {
    const item = caseOf('CST-01');
    const tariffs = ['2.2 USD/m3', '2.6 USD/m3'].map((text) => {
      const reading = readTariff(text, 'volume', null);
      return 'problem' in reading ? Number.NaN : reading.value.amount;
    });
    const litres =
      numberIn(item.inputs, 'clean_L') * (1 + numberIn(item.inputs, 'drain_per_clean'));
    const cost = tariffs.reduce((sum, perLitre) => sum + perLitre * litres, 0);
    expect(excess(item, 'cost', cost)).toBeLessThanOrEqual(0);
  });

  it.each(['CST-02', 'CST-03'])(
    '%s, derived: a part by wear, the earlier of time and volume',
    (id) => {
      const item = caseOf(id);
      const interval = replacementInterval(
        numberIn(item.inputs, 'life_months') / 12,
        numberIn(item.inputs, 'life_L'),
        numberIn(item.inputs, 'volume_per_year_L'),
      );
      const perYear = numberIn(item.inputs, 'price') / (interval ?? 0);
      expect(excess(item, 'amortised_per_year', perYear)).toBeLessThanOrEqual(0);
    },
  );

  it('CST-04, derived: sets bought within 5 years at one every 6 months', () => {
    const item = caseOf('CST-04');
    const bought = replacementYears(
      numberIn(item.inputs, 'life_months') / 12,
      numberIn(item.inputs, 'years'),
    );
    expect(excess(item, 'replacement_purchases', bought.length)).toBeLessThanOrEqual(0);
  });

  it('CST-05, derived: standby while not running', () => {
    const item = caseOf('CST-05');
    const kWh = energyKWh(numberIn(item.inputs, 'period_h'), numberIn(item.inputs, 'standby_W'), [
      { powerW: numberIn(item.inputs, 'run_W'), hours: numberIn(item.inputs, 'run_h') },
    ]);
    expect(excess(item, 'kWh', kWh)).toBeLessThanOrEqual(0);
    const cost = kWh * numberIn(item.inputs, 'price_per_kWh');
    expect(excess(item, 'cost', cost)).toBeLessThanOrEqual(0);
  });

  it.each(['CST-06-amortised', 'CST-06-cash'])('%s, definition: everything over 5 years', (id) => {
    const item = caseOf(id);
    const { inputs } = item;
    const years = numberIn(inputs, 'years');
    const litres = numberIn(inputs, 'volume_per_year_L');
    const water = waterCost(inputs, litres);
    const energy = numberIn(inputs, 'kWh_per_year') * numberIn(inputs, 'price_per_kWh');
    const filters = inputs['filters'] as readonly Readonly<Record<string, number>>[];
    const cost = ownershipCost({
      purchase: numberIn(inputs, 'capital'),
      parts: filters.map((filter) => ({
        price: numberIn(filter, 'price'),
        intervalYears: numberIn(filter, 'life_months') / 12,
      })),
      runningPerYear: water + energy,
      years,
      discountRate: 0,
    });
    const isCash = inputs['mode'] === 'cash';
    const total = isCash ? cost.totalBought : cost.totalProRata;
    const parts = isCash ? cost.partsBought : cost.partsProRata;
    expect(excess(item, 'filters', parts)).toBeLessThanOrEqual(0);
    expect(excess(item, 'water', water * years)).toBeLessThanOrEqual(0);
    expect(excess(item, 'energy', energy * years)).toBeLessThanOrEqual(0);
    expect(excess(item, 'total', total)).toBeLessThanOrEqual(0);
    expect(excess(item, 'per_litre', total / (years * litres))).toBeLessThanOrEqual(0);
  });

  it('CST-07, annual compounding: present value of four payments at 5 %', () => {
    const item = caseOf('CST-07');
    const cash = item.inputs['cash'] as readonly (readonly [number, number])[];
    const value = presentValue(
      cash.map(([atYears, amount]) => ({ atYears, amount })),
      numberIn(item.inputs, 'rate'),
    );
    expect(excess(item, 'present_value', value)).toBeLessThanOrEqual(0);
  });
});

describe('consumption and tariffs', () => {
  it('USE-01, EPA-822-R-00-008 (2000): 927 mL per person and day, four persons', () => {
    const item = caseOf('USE-01');
    const perPerson = waterEfficiencyFigures('consumption').find(
      ({ metric }) => metric === 'mean tap-water ingestion per person',
    );
    const perDay = (perPerson?.value ?? 0) * numberIn(item.inputs, 'persons');
    expect(excess(item, 'L_per_day', perDay)).toBeLessThanOrEqual(0);
    expect(excess(item, 'L_per_year', perDay * 365)).toBeLessThanOrEqual(0);
    const usGallonL = 3.785411784;
    expect(excess(item, 'us_gal_per_day', perDay / usGallonL)).toBeLessThanOrEqual(0);
  });

  it('USE-02, US EPA frequent-questions page: 2 L a day is about the 90th percentile of adults', () => {
    const item = caseOf('USE-02');
    const design = waterEfficiencyFigures('consumption').find(
      ({ metric }) => metric === 'design ingestion, adult 70 kg',
    );
    expect(design?.value).toBe(numberIn(item.inputs, 'adult_upper_L_per_day'));
    const percentile = Number(/(\d+)th percentile of adult/.exec(design?.conditions ?? '')?.[1]);
    expect(excess(item, 'percentile', percentile)).toBeLessThanOrEqual(0);
  });

  it('USE-03, a 2010 US rate survey, second-hand: 0.00837 USD a gallon is 2.21 USD a cubic metre', () => {
    const item = caseOf('USE-03');
    const reading = readTariff('8.37 USD/kgal', 'volume', 'us');
    const perLitre = 'problem' in reading ? Number.NaN : reading.value.amount;
    expect(excess(item, 'usd_per_m3', perLitre * 1000)).toBeLessThanOrEqual(0);
  });
});
