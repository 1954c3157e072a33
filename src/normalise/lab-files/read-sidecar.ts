import { closestWord, type Finding, finding, type Place } from '../../findings/index.ts';
import { type LabLayoutSettings, labLayoutSchema } from '../../model/index.ts';

type PlaceOf = (path: readonly PropertyKey[], part?: 'value' | 'key') => Place;

export interface SidecarReading {
  /** Null when a key is wrong; the findings say which. */
  readonly sidecar: LabLayoutSettings | null;
  readonly findings: readonly Finding[];
}

/** A `lab/NAME.layout.json`, with every unknown key and every value of a wrong kind. */
export function readSidecar(value: unknown, placeOf: PlaceOf): SidecarReading {
  const parsed = labLayoutSchema.safeParse(value, { reportInput: true });
  if (parsed.success) return { sidecar: parsed.data, findings: [] };
  const findings = parsed.error.issues.flatMap((issue): Finding[] => {
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => unknownKey([...issue.path, key], placeOf));
    }
    return [wrongValue(issue.path, issue.message, issue.input, placeOf)];
  });
  return { sidecar: null, findings };
}

function unknownKey(path: readonly PropertyKey[], placeOf: PlaceOf): Finding {
  const key = String(path.at(-1) ?? '');
  const near = path.length > 1 ? null : closestWord(key, Object.keys(labLayoutSchema.shape));
  return finding(
    'key-unknown',
    `"${path.map(String).join('.')}" is not a key of a lab layout`,
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
  if (input === undefined && name !== '') {
    return finding(
      'key-missing',
      `the key "${name}" of the lab layout is missing`,
      `add "${name}"; docs/lab-layouts.md lists the keys`,
      placeOf(path),
    );
  }
  return finding(
    'value-unexpected',
    name === ''
      ? 'the file does not hold an object of a lab layout'
      : `the key "${name}" has a value it does not take (${message})`,
    'correct the value; docs/lab-layouts.md lists what each key takes',
    placeOf(path),
  );
}
