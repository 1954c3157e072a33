import { BenchError, type Finding, finding } from '../findings/index.ts';
import { type Bench, cellPlace, type Spread, type WaterUseRow } from '../model/index.ts';
import {
  type DrainDevice,
  type SimulatedDrain,
  type SimulatedTank,
  simulateDrain,
} from '../simulate/index.ts';
import { type DeviceDrain, deviceDrains } from './device-drain.ts';
import { pourFlows } from './pour-flow.ts';
import { playTank } from './tank/index.ts';
import { type WaterScenario, waterScenarios } from './water-scenarios.ts';
import { reportedYardsticks } from './yardsticks/index.ts';

/** One device in one state, played through one scenario. */
export interface WaterUseFact {
  readonly row: WaterUseRow;
  readonly drain: DeviceDrain;
  readonly scenario: WaterScenario;
  /** Null where the drain of the device is not known. */
  readonly simulated: SimulatedDrain | null;
  /** What its storage tank did; null without a refill model. */
  readonly tank: SimulatedTank | null;
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
  let played: Played = { simulated: null, tank: null };
  if (drain.model !== null) {
    try {
      played = playModel(drain, drain.model, scenario);
    } catch (error) {
      if (!(error instanceof BenchError)) throw error;
      findings.push(error.finding);
    }
  }
  if (played.tank !== null && played.tank.shortfallL > 0) {
    findings.push(tankShort(drain, scenario, played.tank));
  }
  return { row: useRow(drain, scenario, played), drain, scenario, ...played };
}

type Played = Pick<WaterUseFact, 'simulated' | 'tank'>;

function playModel(drain: DeviceDrain, model: DrainDevice, scenario: WaterScenario): Played {
  const pours = scenario.pours(model.cleanFlowLPerMin ?? null);
  const { endS, clockAtStartS } = scenario;
  const simulated = simulateDrain(model, pours, { endS, clockAtStartS });
  if (drain.tank === null) return { simulated, tank: null };
  const played = playTank(drain.tank, pours, endS, simulated);
  return { simulated: played.drain, tank: played.tank };
}

function useRow(
  drain: DeviceDrain,
  scenario: WaterScenario,
  { simulated, tank }: Played,
): WaterUseRow {
  const perDay = (total: number): Spread => spread(total / scenario.days);
  const none: Spread = { low: null, estimate: null, high: null };
  const codes: string[] = drain.findings.map((item) => item.code);
  if (drain.hasTank) codes.push('tank-ratio-fixed');
  if (tank !== null && tank.shortfallL > 0) codes.push('tank-shortfall');
  const total_drain_ratio = spread(simulated?.totalDrainRatio ?? null);
  const recovery = spread(simulated?.recovery ?? null);
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
    total_drain_ratio,
    recovery,
    drain_L_per_year:
      simulated === null ? none : spread((simulated.totalDrainL / scenario.days) * 365),
    drain_ratio: drain.model?.drainRatio ?? null,
    per_start_L: drain.model === null ? null : (drain.model.perStartL ?? 0),
    tank:
      tank === null
        ? null
        : {
            made_L_per_day: tank.madeL / scenario.days,
            drain_per_made: tank.drainPerMade,
            drain_per_drawn: tank.drainPerDrawn,
            level_drain_L: tank.levelDrainL,
            shortfall_L_per_day: tank.shortfallL / scenario.days,
            starts_per_day: tank.starts / scenario.days,
          },
    yardsticks: reportedYardsticks(drain, { total_drain_ratio, recovery }),
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

function tankShort(drain: DeviceDrain, scenario: WaterScenario, tank: SimulatedTank): Finding {
  const litres = Number((tank.shortfallL / scenario.days).toPrecision(3));
  return finding(
    'tank-shortfall',
    `${scenario.name} draws ${litres} L a day from ${drain.device.values.device} that its tank does not hold`,
    'its clean water and its ratios are those of what it could give',
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
