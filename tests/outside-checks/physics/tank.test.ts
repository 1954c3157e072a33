import { describe, expect, it } from 'vitest';
import {
  constantPressureRatio,
  isolatedTankRatio,
  recovery,
  refillTank,
  type StorageTank,
  simulateTank,
  tankLevels,
} from '../../../src/simulate/index.ts';
import { casesOf, excess, numberIn, type StoredCase } from './read-cases.ts';

// Tolerances are those of each case: 1e-5 relative, as the inputs carry nine digits.
const caseOf = casesOf('tank.json');

/** The fixtures count in psi; every pressure of a tank may be in one unit throughout. */
function tankOf(inputs: Readonly<Record<string, unknown>>): StorageTank {
  const of = (long: string, short: string): number =>
    numberIn(inputs, typeof inputs[long] === 'number' ? long : short);
  const feed = of('pf_psig', 'pf');
  const osmotic = of('dpi_psi', 'dpi');
  const stop = typeof inputs['stop_frac'] === 'number' ? inputs['stop_frac'] : 2 / 3;
  const restart = typeof inputs['start_frac'] === 'number' ? inputs['start_frac'] : 0.6;
  return {
    shellL: of('VT_L', 'VT'),
    prechargeKPa: of('pre_psig', 'pre'),
    stopKPa: stop * feed,
    restartKPa: restart * feed,
    feedKPa: feed,
    osmoticKPa: osmotic,
    outsideKPa: of('patm_psi', 'patm'),
    openFlowLPerMin: of('A_L_per_s_psi', 'A') * (feed - osmotic) * 60,
    rejectFlowLPerMin: of('Qc_L_per_s', 'Qc') * 60,
  };
}

describe('refill of a storage tank, closed form of an isothermal air cushion (derived)', () => {
  it.each(['TNK-01', 'TNK-02', 'TNK-03', 'TNK-04'])(
    '%s, derived (closed form equals numerical integration): time, clean, drain, ratio, efficiency',
    (id) => {
      const item = caseOf(id);
      const fill = refillTank(
        tankOf(item.inputs),
        numberIn(item.inputs, 'water_from_L'),
        numberIn(item.inputs, 'water_to_L'),
      );
      expect(excess(item, 'time_s', fill.seconds)).toBeLessThanOrEqual(0);
      expect(excess(item, 'clean_L', fill.cleanL)).toBeLessThanOrEqual(0);
      expect(excess(item, 'drain_L', fill.drainL)).toBeLessThanOrEqual(0);
      expect(excess(item, 'ratio', fill.ratio)).toBeLessThanOrEqual(0);
      const efficiency = recovery(fill.cleanL, fill.drainL);
      expect(excess(item, 'efficiency', efficiency)).toBeLessThanOrEqual(0);
    },
  );

  it('TNK-12, derived: a permeate pump as a constant 5 psi against the membrane drains 3.3 per 1', () => {
    const item = caseOf('TNK-12');
    const pressure = numberIn(item.inputs, 'permeate_pump_backpressure_psi');
    const ratio = constantPressureRatio(tankOf(item.inputs), pressure);
    expect(excess(item, 'ratio', ratio)).toBeLessThanOrEqual(0);
  });

  it('TNK-13, common practice, no source: the worked tank drains 3 to 5 per 1 from empty to full', () => {
    const item = caseOf('TNK-13');
    const tank = tankOf(caseOf('TNK-01').inputs);
    const ratio = refillTank(tank, 0, tankLevels(tank).stopL).ratio ?? 0;
    expect(ratio).toBeGreaterThanOrEqual(numberIn(item.expected, 'drain_per_clean_low'));
    expect(ratio).toBeLessThanOrEqual(numberIn(item.expected, 'drain_per_clean_high'));
  });
});

describe('24 draws of 0.25 L from a full tank in a day, event model (derived)', () => {
  const played = (item: StoredCase) => {
    const params = item.inputs['params'] as Readonly<Record<string, number>>;
    const tank = tankOf(params);
    const pours = {
      atS: Array.from({ length: 24 }, (_, hour) => hour * 3600),
      volumeL: Array.from({ length: 24 }, () => 0.25),
    };
    // w0 is the full tank rounded to 12 digits; the full tank itself is what is meant.
    return { tank, run: simulateTank(tank, pours, { endS: numberIn(item.inputs, 'horizon_s') }) };
  };

  it.each(['TNK-10', 'TNK-11'])(
    '%s, derived: levels, volumes, drain, starts, drain per litre drawn and made',
    (id) => {
      const item = caseOf(id);
      const { tank, run } = played(item);
      const { stopL, restartL } = tankLevels(tank);
      const figures: Readonly<Record<string, number | null>> = {
        w_stop_L: stopL,
        w_start_L: restartL,
        w_end_L: run.endL,
        drawn_L: run.drawnL,
        shortfall_L: run.shortfallL,
        made_L: run.madeL,
        drain_L: run.drainL,
        starts: run.starts,
        drain_per_drawn: run.drainPerDrawn,
        drain_per_made: run.drainPerMade,
      };
      for (const [name, got] of Object.entries(figures)) {
        expect(excess(item, name, got), name).toBeLessThanOrEqual(0);
      }
      expect(run.isFillingAtEnd).toBe(item.expected['valve_open_at_end']);
    },
  );

  it('TNK-10 and TNK-11, derived: a wide restart drains less per litre with equal level at both ends', () => {
    const narrow = played(caseOf('TNK-10')).run.equalLevelRatio ?? 0;
    const wide = played(caseOf('TNK-11')).run.equalLevelRatio ?? 0;
    expect(narrow).toBeCloseTo(9.579, 3); // the tank ends as it began: nothing to make up
    // Between the drain per litre drawn, which leaves the empty part out, and that of the last half litre.
    expect(wide).toBeGreaterThan(numberIn(caseOf('TNK-11').expected, 'drain_per_drawn'));
    expect(wide).toBeCloseTo(numberIn(caseOf('TNK-11').expected, 'drain_per_made'), 2);
  });

  it('TNK-02 and TNK-10, derived: an isolated half litre drains as the last half litre of the tank', () => {
    const { tank } = played(caseOf('TNK-10'));
    expect(isolatedTankRatio(tank, 0.5)).toBeCloseTo(9.57918694, 5);
  });
});
