import { scenarioNames } from '../analyse/index.ts';
import { BenchError, closestWord } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import { variantNames } from '../normalise/index.ts';

/** What a call is limited to; empty lists mean all. A filter never changes any number. */
export interface Filters {
  readonly devices?: readonly string[];
  readonly variants?: readonly string[];
  readonly analytes?: readonly string[];
  readonly scenarios?: readonly string[];
}

export interface CheckedFilters {
  keepsDevice(device: string, variant: string): boolean;
  keepsAnalyte(key: string): boolean;
  keepsScenario(scenario: string): boolean;
}

/**
 * Filters held against the bench.
 * @throws {BenchError} filter-unknown, with the nearest name
 */
export function checkFilters(bench: Bench, filters: Filters): CheckedFilters {
  const devices = bench.tables.devices.map((row) => row.values.device);
  const variants = [...new Set(devices.flatMap((device) => variantNames(bench.tables, device)))];
  const scenarios = scenarioNames(bench);
  const wantedDevices = known('device', filters.devices ?? [], devices);
  const wantedVariants = known('variant', filters.variants ?? [], variants);
  const wantedScenarios = known('scenario', filters.scenarios ?? [], scenarios);
  const wantedAnalytes = analyteKeys(bench, filters.analytes ?? []);
  const keeps = (wanted: readonly string[], name: string): boolean =>
    wanted.length === 0 || wanted.includes(name);
  return {
    keepsDevice: (device, variant) =>
      keeps(wantedDevices, device) && keeps(wantedVariants, variant),
    keepsAnalyte: (key) => keeps(wantedAnalytes, key),
    keepsScenario: (scenario) => keeps(wantedScenarios, scenario),
  };
}

function known(what: string, wanted: readonly string[], names: readonly string[]): string[] {
  for (const name of wanted) if (!names.includes(name)) throw unknown(what, name, names);
  return [...wanted];
}

/** Analytes may be named by key, name, alias or CAS number. */
function analyteKeys(bench: Bench, wanted: readonly string[]): string[] {
  const tested = bench.results.analytes.map((analyte) => analyte.key);
  return wanted.map((text) => {
    if (tested.includes(text)) return text;
    const byName = bench.analytes.resolve(text, null);
    const reading = byName.kind === 'unknown' ? bench.analytes.resolve(null, text) : byName;
    if (reading.kind === 'found' && tested.includes(reading.analyte.key))
      return reading.analyte.key;
    throw unknown('analyte', text, tested);
  });
}

function unknown(what: string, name: string, names: readonly string[]): BenchError {
  const near = closestWord(name, names);
  const list = names.length > 20 ? `${names.slice(0, 20).join(', ')}, …` : names.join(', ');
  return new BenchError(
    'filter-unknown',
    `the bench has no ${what} "${name}"`,
    near === null ? `it has: ${list || 'none'}` : `did you mean "${near}"?`,
  );
}
