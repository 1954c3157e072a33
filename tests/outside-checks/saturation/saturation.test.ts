import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  aggressivenessIndex,
  calciteSaturationIndex,
  chlorideSulfateRatio,
  langelier,
  larsonRatio,
  precipitationPotential,
  puckoriusIndex,
  ryznarIndex,
} from '../../../src/analyse/saturation/index.ts';

interface SaturationCase {
  readonly id: string;
  readonly inputs: {
    readonly pH: number;
    readonly T_C: number;
    readonly ions_mg_L: { readonly Ca: number };
    readonly alkalinity_mg_L_CaCO3: number;
    readonly I_mol_L: number;
    readonly TDS_mg_L: number;
  };
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: Readonly<Record<string, number>>;
}

const { cases } = JSON.parse(readFileSync(new URL('saturation.json', import.meta.url), 'utf8')) as {
  readonly cases: readonly SaturationCase[];
};

const waters = cases.filter((item) => /^CHM-4[A-D]$/.test(item.id));

function waterOf({ inputs }: SaturationCase) {
  return {
    pH: inputs.pH,
    temperatureC: inputs.T_C,
    calciumMgPerL: inputs.ions_mg_L.Ca,
    alkalinityMgPerL: inputs.alkalinity_mg_L_CaCO3,
    ionicStrengthMolPerL: inputs.I_mol_L,
  };
}

function within(got: number, want: number | undefined, tolerance: number): void {
  expect(Math.abs(got - (want ?? Number.NaN))).toBeLessThanOrEqual(tolerance);
}

describe('calcite saturation without ion pairs, constants of Plummer & Busenberg 1982', () => {
  it('covers four waters', () => {
    expect(waters).toHaveLength(4);
  });

  it.each(waters)('$id: saturation index, Standard Methods 2330 B equilibrium form', (item) => {
    within(
      calciteSaturationIndex(waterOf(item)),
      item.expected['SI_2330B'],
      item.tolerance['SI_abs'] ?? 0,
    );
  });

  it.each(waters)(
    '$id: precipitation potential in a closed system, and the pH it ends at',
    (item) => {
      const found = precipitationPotential(waterOf(item));
      const want = item.expected['CCPP_mg_L_CaCO3'] ?? Number.NaN;
      const tolerance = Math.max(
        item.tolerance['CCPP_abs'] ?? 0,
        (item.tolerance['CCPP_rel'] ?? 0) * Math.abs(want),
      );
      within(found?.potentialMgPerL ?? Number.NaN, want, tolerance);
      within(
        found?.finalPH ?? Number.NaN,
        item.expected['pH_at_saturation_after_CCPP'],
        item.tolerance['pH_abs'] ?? 0,
      );
    },
  );

  it.each(waters)('$id: Langelier and Ryznar index in the logarithmic form', (item) => {
    const found = langelier({
      ...waterOf(item),
      tdsMgPerL: item.inputs.TDS_mg_L,
      calciumMgPerL: item.inputs.ions_mg_L.Ca * (100.087 / 40.078),
    });
    within(found.index, item.expected['LSI_log_form'], item.tolerance['LSI_abs'] ?? 0);
    within(found.ryznar, item.expected['RSI_log_form'], 2 * (item.tolerance['LSI_abs'] ?? 0));
  });
});

describe('worked examples of published indices', () => {
  it('CHM-60, widely reproduced worked example: pHs 8.2 and a Langelier index of -0.7', () => {
    const found = langelier({
      pH: 7.5,
      temperatureC: 25,
      tdsMgPerL: 320,
      calciumMgPerL: 150,
      alkalinityMgPerL: 34,
    });
    // Printed to one decimal, from rounded parts.
    within(found.pHs, 8.2, 0.05);
    within(found.index, -0.7, 0.05);
  });

  describe('CHM-61, UFC 3-240-13FN (2005) Example B-2: pHs 6.77, pH 8.2, alkalinity 100', () => {
    /** The calcium at which a water of that alkalinity has the printed pH of saturation. */
    const water = (calciumMgPerL: number) => ({
      pH: 8.2,
      temperatureC: 25,
      tdsMgPerL: 400,
      calciumMgPerL,
      alkalinityMgPerL: 100,
    });
    // pHs falls by 1 where the calcium grows tenfold.
    const calcium = 100 * 10 ** (langelier(water(100)).pHs - 6.77);
    const found = langelier(water(calcium));

    it('has the printed pH of saturation by construction', () => {
      within(found.pHs, 6.77, 1e-9);
    });

    it('Langelier index 1.43 and Ryznar index 5.34', () => {
      within(found.index, 1.43, 0.005);
      within(found.ryznar, 5.34, 0.005);
      within(ryznarIndex(8.2, 6.77), 5.34, 0.005);
    });

    it('Puckorius: an equilibrium pH of 7.51 by the formula, where the table prints 7.47', () => {
      const index = puckoriusIndex(6.77, 100);
      within(2 * 6.77 - index, 7.51, 0.005);
      // The example takes 7.47 from its table and prints 6.07; the formula is 0.04 below.
      within(index, 6.07, 0.045);
      within(index, 6.03, 0.005);
    });
  });

  it('CHM-62, US Army TM 5-813-3 Table 2-5: the TDS term from 100 mg/L up', () => {
    const table = [
      [100, 9.77],
      [200, 9.83],
      [400, 9.86],
      [800, 9.89],
      [1000, 9.9],
    ] as const;
    for (const [tds, printed] of table) {
      const at = (tdsMgPerL: number) =>
        langelier({
          pH: 7,
          temperatureC: 25,
          tdsMgPerL,
          calciumMgPerL: 100,
          alkalinityMgPerL: 100,
        }).pHs;
      // The table starts from 9.70 at a TDS of 0; the form used here from 9.7 at 10 mg/L.
      within(at(tds) - at(10) + 9.7, printed, 0.035);
    }
  });

  it('CHM-63, AWWA C400: pH 7.6, calcium 80 and alkalinity 60 give an index of 11.28', () => {
    within(aggressivenessIndex(7.6, 80, 60), 11.2812412, 1e-6);
  });

  it('CHM-64, Larson ratio in equivalents: chloride 40, sulfate 60, alkalinity 80', () => {
    within(larsonRatio(40, 60, 80) / 1.48729113, 1, 1e-4);
  });

  it('CHM-65, USGS SIR 2016-5092: classes of the chloride-to-sulfate mass ratio', () => {
    const found = [
      [10, 60, 80],
      [18, 60, 80],
      [40, 60, 80],
      [40, 60, 30],
    ].map(([cl = 0, so4 = 0, alk = 0]) => chlorideSulfateRatio(cl, so4, alk));
    expect(found.map((item) => item.concern)).toEqual(['low', 'moderate', 'moderate', 'high']);
    within(found[2]?.ratio ?? 0, 2 / 3, 1e-9);
  });

  it('CHM-73, USGS geochemical program (computed independently): permeate over calcite', () => {
    const found = precipitationPotential({
      pH: 6.1,
      temperatureC: 20,
      calciumMgPerL: 0.55,
      alkalinityMgPerL: 5.3,
      ionicStrengthMolPerL: 0.0003,
    });
    // The program stops at 23.4 mg/L and pH 8.95; the stated tolerance is 1.5 mg/L and 0.1.
    within(-(found?.potentialMgPerL ?? 0), 23.4, 1.5);
    within(found?.finalPH ?? 0, 8.95, 0.1);
  });
});
