import { type Finding, finding } from '../findings/index.ts';
import { type BenchSettings, benchSettingsSchema } from '../model/index.ts';
import { JURISDICTIONS } from '../reference/index.ts';
import { readCostSettings } from './cost-settings.ts';
import { type PlaceOf, type SchemaWords, schemaFindings } from './schema-findings.ts';

const WORDS: SchemaWords = {
  entry: 'a setting of a bench',
  name: 'setting',
  file: 'bench.json',
  entries: 'settings',
  page: 'docs/bench-folder.md',
  keys: Object.keys(benchSettingsSchema.shape),
};

export interface SettingsReading {
  /** Null when a setting is wrong; the findings say which. */
  readonly settings: BenchSettings | null;
  readonly findings: readonly Finding[];
}

/** The settings of `bench.json`, with every unknown key and every value of a wrong kind. */
export function readSettings(value: unknown, placeOf: PlaceOf): SettingsReading {
  const parsed = benchSettingsSchema.safeParse(value, { reportInput: true });
  if (!parsed.success) {
    return { settings: null, findings: schemaFindings(parsed.error.issues, WORDS, placeOf) };
  }
  const findings = [
    ...unknownJurisdictions(parsed.data, placeOf),
    ...timeZone(parsed.data, placeOf),
    ...costs(parsed.data, placeOf),
    ...notUsed(parsed.data, placeOf),
  ];
  return { settings: parsed.data, findings };
}

function unknownJurisdictions(settings: BenchSettings, placeOf: PlaceOf): Finding[] {
  const findings: Finding[] = [];
  for (const [index, name] of (settings.reference_levels ?? []).entries()) {
    if (JURISDICTIONS.includes(name)) continue;
    findings.push(
      finding(
        'level-jurisdiction-unknown',
        `"${name}" is not a jurisdiction of the reference levels`,
        `use one of: ${JURISDICTIONS.join(', ')}`,
        placeOf(['reference_levels', index]),
      ),
    );
  }
  return findings;
}

function timeZone(settings: BenchSettings, placeOf: PlaceOf): Finding[] {
  if (settings.time_zone === undefined) return [];
  try {
    new Intl.DateTimeFormat('en', { timeZone: settings.time_zone });
    return [];
  } catch {
    return [
      finding(
        'value-unexpected',
        `"${settings.time_zone}" is not an IANA time zone`,
        'write a name such as America/Chicago',
        placeOf(['time_zone']),
      ),
    ];
  }
}

/** Tariffs and horizon, read as the costs read them. */
function costs(settings: BenchSettings, placeOf: PlaceOf): Finding[] {
  return readCostSettings(settings).problems.map(({ path, problem }) =>
    finding(problem.problem, problem.message, problem.remedy, placeOf(path)),
  );
}

/** Settings that are checked and that no figure of this version depends on. */
const NOT_USED = ['score'] as const;

function notUsed(settings: BenchSettings, placeOf: PlaceOf): Finding[] {
  const names = NOT_USED.filter((name) => settings[name] !== undefined);
  const display = settings.display === 'us' ? (['display'] as const) : [];
  return [...names, ...display].map((name) =>
    finding(
      'setting-not-used',
      `the setting "${name}" is kept and changes nothing in this version`,
      'none needed',
      placeOf([name], 'key'),
    ),
  );
}
