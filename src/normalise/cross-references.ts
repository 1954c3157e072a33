import { closestWord, type Finding, type FindingCode, finding } from '../findings/index.ts';
import {
  type BenchRow,
  cellPlace,
  type FileName,
  FLUSH_OFF,
  type PlacedRow,
  STANDARD,
} from '../model/index.ts';

export type BenchTables = {
  readonly [F in Exclude<FileName, 'usage'>]: readonly BenchRow<F>[];
};

/**
 * Names that do not exist and keys that stand twice: devices, variants, samples and flush rules in
 * every file that refers to them.
 */
export function checkReferences(tables: BenchTables): Finding[] {
  return [
    ...unknownDevices(tables),
    ...unknownVariants(tables),
    ...unknownSamples(tables),
    ...unknownRules(tables),
    ...duplicateKeys(tables),
  ];
}

interface Named extends PlacedRow {
  readonly values: Readonly<Record<string, unknown>>;
}

function missing(
  row: Named,
  field: string,
  known: readonly string[],
  code: FindingCode,
  file: string,
): Finding | null {
  const name = row.values[field];
  if (typeof name !== 'string' || known.includes(name)) return null;
  const near = closestWord(name, known);
  return finding(
    code,
    `"${name}" is not in ${file}`,
    near === null ? `add it to ${file}, or correct the name` : `did you mean "${near}"?`,
    cellPlace(row, field),
  );
}

function unknownDevices(tables: BenchTables): Finding[] {
  const known = tables.devices.map((row) => row.values.device);
  const rows: readonly Named[] = [
    ...tables.variants,
    ...tables.samples,
    ...tables.pours,
    ...tables.drainRuns,
    ...tables.flushes,
    ...tables.flushRules,
    ...tables.tanks,
    ...tables.idleTds,
    ...tables.energy,
    ...tables.parts,
    ...tables.claims,
    ...tables.panel,
    ...tables.observations,
  ];
  const found = rows.flatMap(
    (row) => missing(row, 'device', known, 'device-unknown', 'devices.csv') ?? [],
  );
  const against = tables.panel.flatMap(
    (row) => missing(row, 'against', [...known, 'feed'], 'device-unknown', 'devices.csv') ?? [],
  );
  return [...found, ...against];
}

/** Names of a device's variants: the built-in ones and those of variants.csv. */
export function variantNames(tables: BenchTables, device: string): string[] {
  const names = [STANDARD];
  const isSwitchable = tables.flushRules.some(
    (row) => row.values.device === device && row.values.switchable === 'yes',
  );
  if (isSwitchable) names.push(FLUSH_OFF);
  for (const row of tables.variants) {
    if (row.values.device === device && !names.includes(row.values.variant)) {
      names.push(row.values.variant);
    }
  }
  return names;
}

function unknownVariants(tables: BenchTables): Finding[] {
  const rows: readonly Named[] = [
    ...tables.samples,
    ...tables.pours,
    ...tables.drainRuns,
    ...tables.flushes,
    ...tables.idleTds,
    ...tables.energy,
  ];
  return rows.flatMap((row) => {
    const { device } = row.values;
    if (typeof device !== 'string') return [];
    const known = variantNames(tables, device);
    return missing(row, 'variant', known, 'variant-unknown', 'variants.csv') ?? [];
  });
}

function unknownSamples(tables: BenchTables): Finding[] {
  const known = tables.samples.map((row) => row.values.sample);
  const inSamples = tables.samples.flatMap((row) => [
    missing(row, 'of', known, 'sample-unknown', 'samples.csv'),
    missing(row, 'replaces', known, 'sample-unknown', 'samples.csv'),
  ]);
  const inBottles = tables.bottles.map((row) =>
    missing(row, 'sample', known, 'sample-unknown', 'samples.csv'),
  );
  const inTubes = tables.tubes.map((row) =>
    missing(row, 'sample', known, 'sample-unknown', 'samples.csv'),
  );
  return [...inSamples, ...inBottles, ...inTubes].filter((item) => item !== null);
}

function unknownRules(tables: BenchTables): Finding[] {
  const rulesOf = (device: string): string[] =>
    tables.flushRules.flatMap((row) => (row.values.device === device ? row.values.rule : []));
  const flushes = tables.flushes.flatMap(
    (row) =>
      missing(row, 'rule', rulesOf(row.values.device), 'rule-unknown', 'flush-rules.csv') ?? [],
  );
  const variants = tables.variants.flatMap((row) =>
    (row.values.rules_off ?? []).flatMap((rule) => {
      if (rulesOf(row.values.device).includes(rule)) return [];
      return finding(
        'rule-unknown',
        `the device has no flush rule "${rule}"`,
        'correct the name, or add the rule to flush-rules.csv',
        cellPlace(row, 'rules_off'),
      );
    }),
  );
  return [...flushes, ...variants];
}

function duplicateKeys(tables: BenchTables): Finding[] {
  return [
    ...duplicates(tables.devices, (row) => row.values.device, 'device'),
    ...duplicates(
      tables.variants,
      (row) => `${row.values.device}\t${row.values.variant}`,
      'variant',
    ),
    ...duplicates(tables.samples, (row) => row.values.sample, 'sample'),
    ...duplicates(
      tables.bottles,
      (row) => `${row.values.lab}\t${row.values.lab_sample}`,
      'lab_sample',
    ),
    ...duplicates(tables.spikes, (row) => `${row.values.event}\t${row.values.analyte}`, 'event'),
    ...duplicates(
      tables.tubes,
      ({ values }) => [values.sample, values.analyte, values.volume.text].join('\t'),
      'volume',
    ),
    ...duplicates(tables.flushRules, (row) => `${row.values.device}\t${row.values.rule}`, 'rule'),
    ...duplicates(tables.tanks, (row) => row.values.device, 'device'),
    ...duplicates(
      tables.drainRuns,
      (row) => `${row.values.device}\t${row.values.variant ?? STANDARD}\t${row.values.run}`,
      'run',
    ),
  ];
}

function duplicates<R extends PlacedRow>(
  rows: readonly R[],
  keyOf: (row: R) => string,
  field: string,
): Finding[] {
  const first = new Map<string, number>();
  const findings: Finding[] = [];
  for (const row of rows) {
    const key = keyOf(row);
    const earlier = first.get(key);
    if (earlier === undefined) {
      first.set(key, row.line);
    } else {
      findings.push(
        finding(
          'key-duplicate',
          `"${key.replaceAll('\t', ' ')}" already stands in line ${earlier}`,
          'keep one of the two rows, or give one another name',
          cellPlace(row, field),
        ),
      );
    }
  }
  return findings;
}
