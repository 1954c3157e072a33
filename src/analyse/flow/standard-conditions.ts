import { type Finding, finding } from '../../findings/index.ts';
import { type Bench, cellPlace } from '../../model/index.ts';
import { waterEfficiencyFigures } from '../../reference/index.ts';
import {
  type MembraneConditions,
  standardFlow,
  type TemperatureFactor,
} from '../../simulate/index.ts';
import { arithmeticMean, sampleSd } from '../../statistics/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { PourFlow } from '../pour-flow.ts';
import { feedSolids, productSolids } from './dissolved-solids.ts';
import { type FigureRange, rangeOf } from './flow-range.ts';
import { pooledFlow } from './pooled-flow.ts';
import { repeats } from './run-parts.ts';

const STANDARD_C = 25;
const KPA_PER_PSI = 6.894757293168;

/** A half-width within which every error is as likely makes a standard uncertainty of a / √3. */
const UNIFORM = Math.sqrt(3);

/** Flow brought to 25 degC and the test pressure, on the water of the bench. */
export interface StandardisedFlow {
  /** Pours with logged temperature and pressure. */
  readonly pours: number;
  readonly pressureKPa: number;
  /** With 1.03^(T - 25), L/min. */
  readonly byPowerLPerMin: number;
  readonly byPower: FigureRange;
  /** With exp(K (1/298.15 - 1/T)), L/min. */
  readonly byArrheniusLPerMin: number;
  readonly byArrhenius: FigureRange;
}

/**
 * The flow a device without a tank would have at 25 degC and the inlet pressure of the NSF/ANSI 58
 * test, by both common temperature factors.
 *
 * Solids and recovery stay those of the bench, so this is no rating. The pressure loss along the
 * membrane is left out, and the product's solids count as 0 where they were not tested (below 1 %).
 * A pump inside the device sets its own pressure: then this says too much of the feed's.
 * The ranges hold the flow, the thermometer and the gauge; which of the two factors fits the membrane
 * is not in them and shows between the two figures. Solids and recovery are taken as known.
 * @returns null, with a finding, where reverse osmosis was logged with temperature and pressure and
 *   something else is missing; null without finding where nothing of it was logged
 */
export function standardisedFlow(
  bench: Bench,
  flow: PourFlow,
  drain: DeviceDrain,
): { readonly standard: StandardisedFlow | null; readonly finding: Finding | null } {
  const none = { standard: null, finding: null };
  const { device } = drain;
  if (device.values.technology !== 'reverse-osmosis' || device.values.tank === 'yes') return none;
  const logged = repeats(flow.runs, bench.settings.instruments).flatMap((pour) => {
    const { temperature, pressure } = pour.from[0]?.row.values ?? {};
    if (temperature == null || pressure == null || !(pour.volumeL > 0)) return [];
    const flowLPerMin = (pour.volumeL / pour.timeS) * 60;
    return { pour, flow: flowLPerMin, celsius: temperature.value, kPa: pressure.value };
  });
  const first = flow.runs[0]?.pours[0];
  if (logged.length === 0 || first === undefined) return none;
  const refused = (what: string): { standard: null; finding: Finding } => ({
    standard: null,
    finding: finding(
      'flow-not-standardised',
      `the flow of ${flow.device} is not brought to 25 degC and the test pressure: ${what}`,
      'test the feed for total dissolved solids and measure a drain run; the flow as poured stands',
      cellPlace(first.row, 'pressure'),
    ),
  });
  const feed = feedSolids(bench, flow.device);
  if (feed === null) return refused('the dissolved solids of the feed are not tested');
  if (drain.model === null) return refused('its drain ratio is not measured');
  const kPa = testPressureKPa();
  if (kPa === null) return none;
  const water = {
    feedSolidsMgPerL: feed.mgPerL,
    productSolidsMgPerL: productSolids(bench, flow.device, flow.variant)?.mgPerL ?? 0,
    recovery: 1 / (1 + drain.model.drainRatio),
  };
  if (water.recovery >= 1) return none;
  const at = (celsius: number, feedKPa: number): MembraneConditions => ({
    ...water,
    feedKPa,
    temperatureC: celsius,
  });
  const flowsAt = (kind: TemperatureFactor, byC: number, byKPa: number): number[] | null => {
    const flows = logged.map((pour) =>
      standardFlow(
        pour.flow,
        at(pour.celsius + byC, Math.max(0, pour.kPa + byKPa)),
        at(STANDARD_C, kPa),
        kind,
      ),
    );
    const known = flows.flatMap((each) => each ?? []);
    return known.length < flows.length ? null : known;
  };
  const rangeAt = (kind: TemperatureFactor) => {
    const flows = flowsAt(kind, 0, 0);
    const raw = pooledFlow(logged.map(({ pour }) => pour));
    if (flows === null || raw === null) return null;
    const { instruments, confidence } = bench.settings;
    const mean = arithmeticMean(flows);
    const factor = mean / raw.flowLPerMin;
    // Half of the change from one standard uncertainty below to one above; where the lower end has no
    // flow, the change upward.
    const change = (byC: number, byKPa: number): number => {
      const above = flowsAt(kind, byC, byKPa);
      const below = flowsAt(kind, -byC, -byKPa);
      if (above === null) return 0;
      return below === null
        ? arithmeticMean(above) - mean
        : (arithmeticMean(above) - arithmeticMean(below)) / 2;
    };
    const n = flows.length;
    const parts = {
      scatter: n < 2 ? null : { u: sampleSd(flows) / Math.sqrt(n), degreesOfFreedom: n - 1 },
      own: raw.open.own * factor,
      shared: Math.hypot(
        raw.open.shared * factor,
        change(instruments.thermometer_degC / UNIFORM, 0),
        change(0, instruments.gauge_kpa / UNIFORM),
      ),
    };
    return { mean, range: rangeOf(mean, parts, confidence) };
  };
  const byPower = rangeAt('power');
  const byArrhenius = rangeAt('arrhenius');
  if (byPower === null || byArrhenius === null) {
    return refused('the logged pressure does not exceed the osmotic pressure');
  }
  return {
    standard: {
      pours: logged.length,
      pressureKPa: kPa,
      byPowerLPerMin: byPower.mean,
      byPower: byPower.range,
      byArrheniusLPerMin: byArrhenius.mean,
      byArrhenius: byArrhenius.range,
    },
    finding: null,
  };
}

/** Inlet pressure of the NSF/ANSI 58 test; the table gives psi. */
function testPressureKPa(): number | null {
  const figure = waterEfficiencyFigures('test condition').find(
    ({ metric, unit }) => metric === 'inlet pressure' && unit === 'psi',
  );
  return figure?.value == null ? null : figure.value * KPA_PER_PSI;
}
