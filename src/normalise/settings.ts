import { closestWord, type Finding, finding, type Place } from '../findings/index.ts';
import { type BenchSettings, benchSettingsSchema } from '../model/index.ts';
import { JURISDICTIONS } from '../reference/index.ts';
import { readCostSettings } from './cost-settings.ts';

type PlaceOf = (path: readonly PropertyKey[], part?: 'value' | 'key') => Place;

export interface SettingsReading {
  /** Null when a setting is wrong; the findings say which. */
  readonly settings: BenchSettings | null;
  readonly findings: readonly Finding[];
}

/** The settings of `bench.json`, with every unknown key and every value of a wrong kind. */
export function readSettings(value: unknown, placeOf: PlaceOf): SettingsReading {
  const parsed = benchSettingsSchema.safeParse(value, { reportInput: true });
  const findings: Finding[] = [];
  for (const issue of parsed.success ? [] : parsed.error.issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) findings.push(unknownKey([...issue.path, key], placeOf));
    } else {
      findings.push(wrongValue(issue.path, issue.message, issue.input, placeOf));
    }
  }
  if (!parsed.success) return { settings: null, findings };
  findings.push(
    ...unknownJurisdictions(parsed.data, placeOf),
    ...timeZone(parsed.data, placeOf),
    ...costs(parsed.data, placeOf),
    ...notUsed(parsed.data, placeOf),
  );
  return { settings: parsed.data, findings };
}

function unknownKey(path: readonly PropertyKey[], placeOf: PlaceOf): Finding {
  const key = String(path.at(-1) ?? '');
  const near = path.length > 1 ? null : closestWord(key, Object.keys(benchSettingsSchema.shape));
  return finding(
    'key-unknown',
    `"${key}" is not a setting of a bench`,
    near === null ? 'remove the key' : `did you mean "${near}"? otherwise remove the key`,
    placeOf(path, 'key'),
  );
}

function wrongValue(
  path: readonly PropertyKey[],
  message: string,
  input: unknown,
  placeOf: PlaceOf,
): Finding {
  const name = path.map(String).join('.');
  if (input === undefined && path.length > 0) {
    return finding(
      'key-missing',
      `the setting "${name}" is missing`,
      `add "${name}" to bench.json`,
      placeOf(path),
    );
  }
  return finding(
    'value-unexpected',
    name === ''
      ? 'bench.json does not hold an object of settings'
      : `the setting "${name}" has a value it does not take (${message})`,
    'correct the value; docs/bench-folder.md lists what each setting takes',
    placeOf(path),
  );
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
