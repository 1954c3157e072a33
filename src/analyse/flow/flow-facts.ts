import type { Finding } from '../../findings/index.ts';
import { type Bench, type DeviceRow, STANDARD } from '../../model/index.ts';
import { type MeanInterval, meanInterval, sampleSd } from '../../statistics/index.ts';
import { type DeviceDrain, deviceDrains } from '../device-drain.ts';
import { pooledScatter, type Scatter } from '../drain-uncertainty/index.ts';
import { type PourFlow, pourFlows } from '../pour-flow.ts';
import { type FigureRange, type OpenParts, rangeOf } from './flow-range.ts';
import { pooledFlow } from './pooled-flow.ts';
import { repeats } from './run-parts.ts';
import { type Decline, declineAlongRun, type FirstRush, firstRush } from './run-shape.ts';
import { type SettledFlow, settledFlow } from './settled-flow.ts';
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

/** What is open in a flow, L/min, and what its range rests on. */
export interface FlowUncertainty {
  readonly range: FigureRange;
  /** Standard uncertainties; the scatter null where neither the device nor the bench has repeats. */
  readonly parts: {
    readonly scatter: number | null;
    readonly reading: number;
    readonly stopwatch: number;
    readonly vessel: number;
  };
  /** `bench`: a single pour, with the scatter of the repeats of the other devices. */
  readonly restsOn: 'repeats' | 'bench' | 'instruments';
}

/** All that the timed pours of a device in one state say. */
export interface FlowFact {
  readonly flow: PourFlow;
  readonly device: DeviceRow;
  /** Single pours, and runs of split or cumulative readings as one each. */
  readonly pourCount: number;
  /** Null where no volume was poured. */
  readonly uncertainty: FlowUncertainty | null;
  /** Null with a single pour. */
  readonly repeats: FlowRepeats | null;
  readonly rush: FirstRush | null;
  readonly decline: Decline | null;
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
  const scatter = benchScatter(bench, flows);
  const facts = flows.flatMap((flow) => {
    const drain = drainOf(drains, flow);
    if (drain === undefined) return [];
    const standardised = standardisedFlow(bench, flow, drain);
    if (standardised.finding !== null) findings.push(standardised.finding);
    return flowFact(bench, flow, drain, scatter, standardised.standard);
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
  scatter: Scatter,
  standard: StandardisedFlow | null,
): FlowFact {
  const { instruments, confidence } = bench.settings;
  const single = flowsOf(bench, flow);
  return {
    flow,
    device: drain.device,
    pourCount: single.length,
    uncertainty: flowUncertainty(bench, flow, scatter),
    repeats:
      single.length < 2 ? null : { ...meanInterval(single, confidence), sd: sampleSd(single) },
    rush: firstRush(flow.runs, instruments, confidence),
    decline: declineAlongRun(flow.runs, instruments, confidence),
    settled: settledFlow(flow.runs, instruments, confidence),
    standard,
    production: dailyProduction(flow, drain),
    usableTankL: drain.tank?.usableL ?? null,
  };
}

/** Flow of each pour that repeats the others, L/min. */
function flowsOf(bench: Bench, flow: PourFlow): number[] {
  return repeats(flow.runs, bench.settings.instruments).map(
    ({ volumeL, timeS }) => (volumeL / timeS) * 60,
  );
}

/** Relative scatter of a single pour, pooled over all devices with repeats. */
function benchScatter(bench: Bench, flows: readonly PourFlow[]): Scatter {
  return pooledScatter(
    flows.flatMap((flow) => {
      const single = flowsOf(bench, flow);
      return single.length < 2 || !(flow.flowLPerMin > 0)
        ? []
        : {
            relativeSd: sampleSd(single) / flow.flowLPerMin,
            degreesOfFreedom: single.length - 1,
          };
    }),
  );
}

/** A device poured once borrows the scatter of the bench; instruments count in any case. */
function flowUncertainty(bench: Bench, flow: PourFlow, scatter: Scatter): FlowUncertainty | null {
  const pooled = pooledFlow(repeats(flow.runs, bench.settings.instruments));
  if (pooled === null) return null;
  const { flowLPerMin, open } = pooled;
  const borrowed =
    scatter.degreesOfFreedom === 0
      ? null
      : {
          u: scatter.relativeSd * flowLPerMin,
          degreesOfFreedom: scatter.degreesOfFreedom,
        };
  const parts: OpenParts = { ...open, scatter: open.scatter ?? borrowed };
  const range = rangeOf(flowLPerMin, parts, bench.settings.confidence);
  return {
    range,
    parts: {
      scatter: parts.scatter?.u ?? null,
      reading: open.reading,
      stopwatch: open.stopwatch,
      vessel: open.shared,
    },
    restsOn: !range.restsOnScatter ? 'instruments' : open.scatter === null ? 'bench' : 'repeats',
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
