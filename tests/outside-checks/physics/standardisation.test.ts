import { describe, expect, it } from 'vitest';
import {
  blendShare,
  concentrationFactor,
  drainConcentration,
  feedBrineFactor,
  idealOsmoticPressureAtm,
  type MembraneConditions,
  netDrivingPressureKPa,
  osmoticPressureKPa,
  recovery,
  standardFlow,
  standardSaltPassage,
  temperatureFactor,
} from '../../../src/simulate/index.ts';
import { casesOf, excess, numberIn, numberRows } from './read-cases.ts';

// Tolerances are those of each case unless an assertion says otherwise.
const caseOf = casesOf('standardisation.json');

describe('osmotic pressure', () => {
  it.each(['STD-01', 'STD-02'])(
    '%s, ASTM D4516 expression (from memory): sodium chloride at 25 degC',
    (id) => {
      const item = caseOf(id);
      const got = osmoticPressureKPa(numberIn(item.inputs, 'C_mg_L'), numberIn(item.inputs, 'T_C'));
      expect(excess(item, 'osmotic_kPa', got)).toBeLessThanOrEqual(0);
    },
  );

  it('STD-03, Geankoplis, Transport Processes, example 13.9-1: ideal 0.1 molal sodium chloride', () => {
    const item = caseOf('STD-03');
    const got = idealOsmoticPressureAtm({
      molality: numberIn(item.inputs, 'molality_NaCl'),
      ions: 2,
      temperatureC: numberIn(item.inputs, 'T_C'),
      coefficient: numberIn(item.inputs, 'phi'),
      densityKgPerL: numberIn(item.inputs, 'rho_kg_L'),
    });
    expect(excess(item, 'osmotic_atm', got)).toBeLessThanOrEqual(0);
  });

  it('STD-04, rule of thumb of 1 psi per 100 mg/L: within 20 % for sodium chloride at 500 mg/L', () => {
    const item = caseOf('STD-04');
    const kPaPerPsi = 6.894757;
    const psi = osmoticPressureKPa(numberIn(item.inputs, 'TDS_mg_L'), 25) / kPaPerPsi;
    // Sodium chloride has 1.2 psi per 100 mg/L, ordinary tap water 0.9 to 1.0.
    expect(Math.abs(psi / numberIn(item.expected, 'osmotic_psi') - 1)).toBeLessThan(0.2);
  });

  it.each(numberRows('osmotic-nacl.csv'))(
    'water activity of sodium chloride by Pitzer equations (computed with a geochemical program): $NaCl_mg_L mg/L at $t_C degC',
    ({ t_C = 0, NaCl_mg_L = 0, pi_pitzer_kPa = 0, pi_formula_kPa = 0 }) => {
      const got = osmoticPressureKPa(NaCl_mg_L, t_C);
      // 5 %: what the expression is good for from 500 to 35,000 mg/L.
      expect(Math.abs(got / pi_pitzer_kPa - 1)).toBeLessThan(0.05);
      // The table prints two or three decimals of the expression.
      expect(Math.abs(got - pi_formula_kPa)).toBeLessThan(0.00051);
    },
  );
});

describe('concentration along a membrane', () => {
  it.each(['STD-10', 'STD-11', 'STD-12', 'STD-13', 'STD-14', 'STD-15'])(
    '%s, logarithmic mean of ASTM D4516 (from memory) and mass balance: factors at a recovery',
    (id) => {
      const item = caseOf(id);
      const share = numberIn(item.inputs, 'recovery');
      expect(excess(item, 'feed_brine_factor_log', feedBrineFactor(share))).toBeLessThanOrEqual(0);
      const drain = concentrationFactor(share);
      expect(excess(item, 'concentration_factor', drain)).toBeLessThanOrEqual(0);
      // The arithmetic mean of feed and drain, which the EPA manual of membrane filtration takes.
      expect(excess(item, 'arithmetic_factor', (1 + drain) / 2)).toBeLessThanOrEqual(0);
      expect(feedBrineFactor(share)).toBeLessThan((1 + drain) / 2);
    },
  );

  it.each(['STD-40', 'STD-41'])(
    '%s, mass balance: recovery and concentration of the drain',
    (id) => {
      const item = caseOf(id);
      const product = numberIn(item.inputs, 'Qp');
      const drain = numberIn(item.inputs, 'Qc');
      const feedSolids = numberIn(item.inputs, 'Cf');
      const concentration = drainConcentration({
        product,
        drain,
        feedSolids,
        productSolids: numberIn(item.inputs, 'Cp'),
      });
      const share = recovery(product, drain);
      expect(excess(item, 'recovery', share)).toBeLessThanOrEqual(0);
      expect(excess(item, 'Cc', concentration)).toBeLessThanOrEqual(0);
      expect(
        excess(item, 'concentration_factor', (concentration ?? 0) / feedSolids),
      ).toBeLessThanOrEqual(0);
      expect(
        excess(item, 'concentration_factor_full_rejection', concentrationFactor(share ?? 0)),
      ).toBeLessThanOrEqual(0);
    },
  );

  it('STD-42, US Army TM 5-813-8 (UFC 3-230-12A), appendix A: 39.6 % of 800 mg/L in 303 mg/L gives 500 mg/L', () => {
    const item = caseOf('STD-42');
    const blend = item.inputs['blend'] as Readonly<Record<string, number>>;
    const share = blendShare({
      low: numberIn(blend, 'low_mg_L'),
      high: numberIn(blend, 'high_mg_L'),
      wanted: numberIn(blend, 'target_mg_L'),
    });
    expect(excess(item, 'fraction_high', share)).toBeLessThanOrEqual(0);
  });
});

describe('flow at 25 degC', () => {
  it.each(['STD-20', 'STD-21', 'STD-22', 'STD-23', 'STD-24', 'STD-25'])(
    '%s, ASTM D4516 and EPA default 1.03^(T-25) (from memory), and exp(K(1/298.15 - 1/T)) of two public pages',
    (id) => {
      const item = caseOf(id);
      const celsius = numberIn(item.inputs, 'T_C');
      const power = temperatureFactor(celsius, 'power');
      const arrhenius = temperatureFactor(celsius, 'arrhenius');
      expect(excess(item, 'tcf_power_1.03', power)).toBeLessThanOrEqual(0);
      expect(excess(item, 'tcf_arrhenius_3020_2640', arrhenius)).toBeLessThanOrEqual(0);
    },
  );

  const conditions = (record: unknown): MembraneConditions => {
    const of = record as Readonly<Record<string, number>>;
    return {
      feedKPa: numberIn(of, 'Pf'),
      feedDrainDropKPa: numberIn(of, 'dPfb'),
      productKPa: numberIn(of, 'Pp'),
      feedSolidsMgPerL: numberIn(of, 'Cf'),
      productSolidsMgPerL: numberIn(of, 'Cp'),
      recovery: numberIn(of, 'Y'),
      temperatureC: numberIn(of, 'T'),
    };
  };

  it.each(['STD-30', 'STD-31', 'STD-32'])(
    '%s, ASTM D4516-19a flow equation (form seen in a public guide; worked case derived)',
    (id) => {
      const item = caseOf(id);
      const actual = conditions(item.inputs['actual']);
      const standard = conditions(item.inputs['standard']);
      const flow = numberIn(item.inputs, 'Q_actual_L_min');
      const got = standardFlow(flow, actual, standard, 'power');
      expect(excess(item, 'Q_standard_L_min', got)).toBeLessThanOrEqual(0);
      if ('NDP_actual_kPa' in item.expected) {
        const actualKPa = netDrivingPressureKPa(actual);
        const standardKPa = netDrivingPressureKPa(standard);
        expect(excess(item, 'NDP_actual_kPa', actualKPa)).toBeLessThanOrEqual(0);
        expect(excess(item, 'NDP_standard_kPa', standardKPa)).toBeLessThanOrEqual(0);
      }
      if ('SP_standard' in item.expected) {
        const passage = standardSaltPassage(flow, actual, standard, 'power');
        expect(excess(item, 'SP_standard', passage)).toBeLessThanOrEqual(0);
      }
    },
  );
});
