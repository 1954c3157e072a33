import { BenchError, type Finding, finding } from '../findings/index.ts';
import { type Bench, cellPlace, type Spread, type WaterUseRow } from '../model/index.ts';
import {
  breakEvenPourL,
  type IsolatedPour,
  isolatedPourDrain,
  isolatedPourRatio,
  type SimulatedDrain,
  simulateDrain,
} from '../simulate/index.ts';
import { type DeviceDrain, deviceDrains } from './device-drain.ts';
import { pourFlows } from './pour-flow.ts';
import { type WaterScenario, waterScenarios } from './water-scenarios.ts';

/** One device in one state, played through one scenario. */
export interface WaterUseFact {
  readonly row: WaterUseRow;
  readonly drain: DeviceDrain;
  readonly scenario: WaterScenario;
  /** Null where the drain of the device is not known. */
  readonly simulated: SimulatedDrain | null;
}

export interface WaterUse {
  readonly drains: readonly DeviceDrain[];
  readonly scenarios: readonly WaterScenario[];
  readonly facts: readonly WaterUseFact[];
  readonly findings: readonly Finding[];
}

/** Plays every scenario through every device and variant. */
export function computeWaterUse(bench: Bench, seed: number): WaterUse {
  const { flows, findings: flowFindings } = pourFlows(bench);
  const drains = deviceDrains(bench, flows);
  const scenarios = waterScenarios(bench, seed);
  const findings: Finding[] = [...flowFindings, ...drains.flatMap((drain) => drain.findings)];
  if (scenarios.length === 0) {
    findings.push(
      finding(
        'scenarios-missing',
        'the bench has no scenario, so no daily use is computed',
        'add scenarios.csv or a recording in usage/',
      ),
    );
  }
  for (const drain of drains) if (drain.hasTank) findings.push(tankFixed(drain));
  const facts = drains.flatMap((drain) =>
    scenarios.map((scenario) => play(drain, scenario, findings)),
  );
  return { drains, scenarios, facts, findings: distinct(findings) };
}

function play(drain: DeviceDrain, scenario: WaterScenario, findings: Finding[]): WaterUseFact {
  let simulated: SimulatedDrain | null = null;
  if (drain.model !== null) {
    try {
      simulated = simulateDrain(drain.model, scenario.pours(drain.model.cleanFlowLPerMin ?? null), {
        endS: scenario.endS,
        clockAtStartS: scenario.clockAtStartS,
      });
    } catch (error) {
      if (!(error instanceof BenchError)) throw error;
      findings.push(error.finding);
    }
  }
  return { row: useRow(drain, scenario, simulated), drain, scenario, simulated };
}

function useRow(
  drain: DeviceDrain,
  scenario: WaterScenario,
  simulated: SimulatedDrain | null,
): WaterUseRow {
  const perDay = (total: number): Spread => spread(total / scenario.days);
  const none: Spread = { low: null, estimate: null, high: null };
  const codes: string[] = drain.findings.map((item) => item.code);
  if (drain.hasTank) codes.push('tank-ratio-fixed');
  const flushes =
    simulated === null
      ? 0
      : Object.values(simulated.flushCounts).reduce((sum, count) => sum + count, 0);
  return {
    device: drain.device.values.device,
    variant: drain.variant,
    scenario: scenario.name,
    clean_L_per_day: simulated === null ? none : perDay(simulated.cleanL),
    producing_drain_L_per_day: simulated === null ? none : perDay(simulated.producingDrainL),
    flush_drain_L_per_day: simulated === null ? none : perDay(simulated.flushDrainL),
    flushes_per_day: simulated === null ? none : perDay(flushes),
    total_drain_ratio: spread(simulated?.totalDrainRatio ?? null),
    recovery: spread(simulated?.recovery ?? null),
    drain_L_per_year:
      simulated === null ? none : spread((simulated.totalDrainL / scenario.days) * 365),
    drain_ratio: drain.model?.drainRatio ?? null,
    per_start_L: drain.model === null ? null : (drain.model.perStartL ?? 0),
    findings: [...new Set(codes)],
  };
}

/** Bounds stay open until the uncertainty of the inputs is known. */
function spread(estimate: number | null): Spread {
  return { low: null, estimate, high: null };
}

function tankFixed(drain: DeviceDrain): Finding {
  return finding(
    'tank-ratio-fixed',
    `${drain.device.values.device} has a tank: its totals hold for the draw size it was measured at`,
    'measure runs at other draw sizes; a small draw from a full tank drains more for each litre',
    cellPlace(drain.device, 'tank'),
  );
}

function distinct(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((item) => {
    const key = JSON.stringify([item.code, item.message, item.place]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The curve of a device: drain of a pour that stands alone. */
export interface DrainCurve {
  readonly drain: DeviceDrain;
  /** Null where no curve can be given; the finding of the device says why. */
  readonly isolated: IsolatedPour | null;
}

/** Curves of every device and variant with a drain line. */
export function drainCurves(drains: readonly DeviceDrain[]): {
  readonly curves: readonly DrainCurve[];
  readonly findings: readonly Finding[];
} {
  const findings: Finding[] = [];
  const curves = drains
    .filter((drain) => drain.device.values.drain_line === 'yes')
    .map((drain): DrainCurve => {
      if (drain.hasTank) {
        findings.push(
          finding(
            'tank-curve-refused',
            `${drain.device.values.device} has a tank, so its drain depends on how full it is: ` +
              'no curve is given',
            'measure runs at the draw sizes that matter',
            cellPlace(drain.device, 'tank'),
          ),
        );
        return { drain, isolated: null };
      }
      return { drain, isolated: drain.model === null ? null : isolatedPourDrain(drain.model) };
    });
  return { curves, findings };
}

/** Pour sizes a curve is drawn at when none are asked for, millilitres. */
export const CURVE_POURS_ML = [
  50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1250, 1500, 2000, 2500, 3000,
  4000, 5000,
] as const;

/** Total drain ratio of a pour that stands alone; null where no curve can be given. */
export function curveRatio(curve: DrainCurve, pourL: number): number | null {
  return curve.isolated === null ? null : isolatedPourRatio(curve.isolated, pourL);
}

/** Pour size at which two devices drain the same, litres; null where there is none. */
export function breakEven(a: DrainCurve, b: DrainCurve): number | null {
  return a.isolated === null || b.isolated === null ? null : breakEvenPourL(a.isolated, b.isolated);
}
