import { describe, expect, it } from 'vitest';
import {
  firstWaterMean,
  litresToLevel,
  restingPlateau,
  restingProduct,
  saltFlowLPerS,
} from '../../../src/simulate/index.ts';
import { casesOf, excess, numberIn, type StoredCase } from './read-cases.ts';

// Tolerances are those of each case: 1e-6 relative, half a unit of the nine digits stored and more.
const caseOf = casesOf('creep.json');

function membrane({ inputs }: StoredCase) {
  return {
    product: numberIn(inputs, 'Cp0'),
    feed: numberIn(inputs, 'Cfb0'),
    productL: numberIn(inputs, 'Vp_L'),
    feedL: numberIn(inputs, 'Vf_L'),
    saltFlowLPerS: numberIn(inputs, 'B_area_L_s'),
  };
}

describe('dissolved solids crossing a resting membrane', () => {
  it('CRP-01, solution-diffusion balance of salt (derived): permeability times area', () => {
    const item = caseOf('CRP-01');
    const got = saltFlowLPerS({
      productFlowLPerS: numberIn(item.inputs, 'Qp_L_s'),
      product: numberIn(item.inputs, 'Cp'),
      feedSide: numberIn(item.inputs, 'Cfb'),
    });
    expect(excess(item, 'B_area_L_s', got)).toBeLessThanOrEqual(0);
  });

  it.each(['CRP-02', 'CRP-03', 'CRP-04'])(
    '%s, two mixed compartments without flow (derived): product after a pause',
    (id) => {
      const item = caseOf(id);
      const got = restingProduct(membrane(item), numberIn(item.inputs, 't_s'));
      expect(excess(item, 'Cp', got)).toBeLessThanOrEqual(0);
    },
  );

  it('CRP-05, two mixed compartments (derived): plateau and time constant', () => {
    const item = caseOf('CRP-05');
    const inputs = { ...item.inputs, B_area_L_s: numberIn(caseOf('CRP-02').inputs, 'B_area_L_s') };
    const got = restingPlateau(membrane({ ...item, inputs }));
    expect(excess(item, 'Cp_equilibrium', got.plateau)).toBeLessThanOrEqual(0);
    expect(excess(item, 'tau_s', got.seconds)).toBeLessThanOrEqual(0);
  });
});

describe('wash-out of the first water after a pause', () => {
  it.each(['CRP-10', 'CRP-11', 'CRP-12', 'CRP-13'])(
    '%s, wash-out of a held volume (derived): mean of the first litres',
    (id) => {
      const item = caseOf(id);
      const got = firstWaterMean(
        {
          stood: numberIn(item.inputs, 'C0'),
          running: numberIn(item.inputs, 'Css'),
          heldL: numberIn(item.inputs, 'Vh_L'),
        },
        numberIn(item.inputs, 'v_L'),
        item.inputs['mode'] === 'plug' ? 'plug' : 'mixed',
      );
      expect(excess(item, 'mean_C', got)).toBeLessThanOrEqual(0);
    },
  );

  it('CRP-20, mixed wash-out (derived): litres until a level is reached', () => {
    const item = caseOf('CRP-20');
    const water = {
      stood: numberIn(item.inputs, 'C0'),
      running: numberIn(item.inputs, 'Css'),
      heldL: numberIn(item.inputs, 'Vh_L'),
    };
    const got = litresToLevel(water, numberIn(item.inputs, 'target_C'));
    expect(excess(item, 'volume_to_target_L', got)).toBeLessThanOrEqual(0);
  });
});
