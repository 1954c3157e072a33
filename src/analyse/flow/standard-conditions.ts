import { type Finding, finding } from '../../findings/index.ts';
import { type Bench, cellPlace } from '../../model/index.ts';
import { waterEfficiencyFigures } from '../../reference/index.ts';
import { type MembraneConditions, standardFlow } from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { PourFlow } from '../pour-flow.ts';
import { feedSolids, productSolids } from './dissolved-solids.ts';
import { repeats } from './run-parts.ts';

const STANDARD_C = 25;
const KPA_PER_PSI = 6.894757293168;

/** Flow brought to 25 degC and the test pressure, on the water of the bench. */
export interface StandardisedFlow {
  /** Pours with logged temperature and pressure. */
  readonly pours: number;
  readonly pressureKPa: number;
  /** With 1.03^(T - 25), L/min. */
  readonly byPowerLPerMin: number;
  /** With exp(K (1/298.15 - 1/T)), L/min. */
  readonly byArrheniusLPerMin: number;
}

/**
 * The flow a device without a tank would have at 25 degC and the inlet pressure of the NSF/ANSI 58
 * test, by both common temperature factors.
 *
 * Solids and recovery stay those of the bench, so this is no rating. The pressure loss along the
 * membrane is left out, and the product's solids count as 0 where they were not tested (below 1 %).
 * A pump inside the device sets its own pressure: then this says too much of the feed's.
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
  const logged = repeats(flow.runs).flatMap(({ volumeL, timeS, from }) => {
    const { temperature, pressure } = from[0]?.row.values ?? {};
    if (temperature == null || pressure == null || !(volumeL > 0)) return [];
    return { flow: (volumeL / timeS) * 60, celsius: temperature.value, kPa: pressure.value };
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
  const mean = (kind: 'power' | 'arrhenius'): number | null => {
    const flows = logged.map((pour) =>
      standardFlow(pour.flow, at(pour.celsius, pour.kPa), at(STANDARD_C, kPa), kind),
    );
    const known = flows.flatMap((each) => each ?? []);
    return known.length < flows.length ? null : known.reduce((a, b) => a + b, 0) / known.length;
  };
  const [byPower, byArrhenius] = [mean('power'), mean('arrhenius')];
  if (byPower === null || byArrhenius === null) {
    return refused('the logged pressure does not exceed the osmotic pressure');
  }
  return {
    standard: {
      pours: logged.length,
      pressureKPa: kPa,
      byPowerLPerMin: byPower,
      byArrheniusLPerMin: byArrhenius,
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
