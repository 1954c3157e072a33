import type { Finding } from '../../findings/index.ts';
import { type Bench, type DeviceRow, STANDARD } from '../../model/index.ts';
import { type MeanInterval, meanInterval, sampleSd } from '../../statistics/index.ts';
import { type DeviceDrain, deviceDrains } from '../device-drain.ts';
import { type PourFlow, pourFlows } from '../pour-flow.ts';
import { repeats } from './run-parts.ts';
import {
  declineAlongRun,
  type FirstRush,
  firstRush,
  type SettledFlow,
  settledFlow,
} from './run-shape.ts';
import { type StandardisedFlow, standardisedFlow } from './standard-conditions.ts';

const MINUTES_PER_DAY = 1440;

/** How well the flow repeats. */
export interface FlowRepeats extends MeanInterval {
  readonly sd: number;
}

/** Clean water a device could make in a day without pause. */
export interface DailyProduction {
  readonly litres: number;
  /** `pours`: the flow at the tap; `tanks`: the flow into an open tank. */
  readonly from: 'pours' | 'tanks';
}

/** All that the timed pours of a device in one state say. */
export interface FlowFact {
  readonly flow: PourFlow;
  readonly device: DeviceRow;
  /** Single pours, and runs of split or cumulative readings as one each. */
  readonly pourCount: number;
  /** Null with a single pour. */
  readonly repeats: FlowRepeats | null;
  readonly rush: FirstRush | null;
  readonly decline: number | null;
  readonly settled: SettledFlow | null;
  readonly standard: StandardisedFlow | null;
  /** Null for a tank that is not described, a pitcher, and where nothing is known. */
  readonly production: DailyProduction | null;
  /** Litres between a full and an empty tank; null without a described tank. */
  readonly usableTankL: number | null;
}

/** Facts of every device and state with timed pours, in the order of devices.csv. */
export function flowFacts(bench: Bench): {
  readonly facts: readonly FlowFact[];
  readonly findings: readonly Finding[];
} {
  const { flows, findings: flowFindings } = pourFlows(bench);
  const drains = deviceDrains(bench, flows);
  const findings: Finding[] = [...flowFindings];
  const facts = flows.flatMap((flow) => {
    const drain = drainOf(drains, flow);
    if (drain === undefined) return [];
    const standardised = standardisedFlow(bench, flow, drain);
    if (standardised.finding !== null) findings.push(standardised.finding);
    return flowFact(bench, flow, drain, standardised.standard);
  });
  return { facts, findings };
}

/** A variant that concerns no flush is not among the drains: its device then stands as standard. */
function drainOf(drains: readonly DeviceDrain[], flow: PourFlow): DeviceDrain | undefined {
  const own = drains.filter(({ device }) => device.values.device === flow.device);
  return (
    own.find(({ variant }) => variant === flow.variant) ??
    own.find(({ variant }) => variant === STANDARD)
  );
}

function flowFact(
  bench: Bench,
  flow: PourFlow,
  drain: DeviceDrain,
  standard: StandardisedFlow | null,
): FlowFact {
  const single = repeats(flow.runs).map(({ volumeL, timeS }) => (volumeL / timeS) * 60);
  return {
    flow,
    device: drain.device,
    pourCount: single.length,
    repeats:
      single.length < 2
        ? null
        : { ...meanInterval(single, bench.settings.confidence), sd: sampleSd(single) },
    rush: firstRush(flow.runs),
    decline: declineAlongRun(flow.runs),
    settled: settledFlow(flow.runs),
    standard,
    production: dailyProduction(flow, drain),
    usableTankL: drain.tank?.usableL ?? null,
  };
}

/**
 * A device without a tank makes what it pours. One with a tank makes less than it pours: what runs
 * into an open tank, where tanks.csv says it. A pitcher or a countertop device runs only when somebody
 * fills it.
 */
function dailyProduction(flow: PourFlow, drain: DeviceDrain): DailyProduction | null {
  const { form, tank } = drain.device.values;
  if (form === 'pitcher' || form === 'countertop') return null;
  if (tank !== 'yes') return { litres: flow.flowLPerMin * MINUTES_PER_DAY, from: 'pours' };
  if (drain.tank === null) return null;
  return { litres: drain.tank.tank.openFlowLPerMin * MINUTES_PER_DAY, from: 'tanks' };
}
