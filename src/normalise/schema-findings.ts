import { closestWord, type Finding, finding, type Place } from '../findings/index.ts';

/** The place of a key or value of a JSON file, by its path from the top. */
export type PlaceOf = (path: readonly PropertyKey[], part?: 'value' | 'key') => Place;

/** What a schema found wrong, as zod tells it. */
interface SchemaIssue {
  readonly code: string;
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly input?: unknown;
  readonly keys?: readonly string[];
}

/** How the messages of one JSON file name it. */
export interface SchemaWords {
  /** `"x" is not <entry>`: `a setting of a bench`. */
  readonly entry: string;
  /** `the <name of an entry> "x" is missing`: `setting`. */
  readonly name: string;
  /** `<file> does not hold an object of <entries>`. */
  readonly file: string;
  readonly entries: string;
  /** The page that lists what may stand there. */
  readonly page: string;
  readonly keys: readonly string[];
}

/** One finding for every key that is unknown or missing and every value of a wrong kind. */
export function schemaFindings(
  issues: readonly SchemaIssue[],
  words: SchemaWords,
  placeOf: PlaceOf,
): Finding[] {
  return issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? (issue.keys ?? []).map((key) => unknownKey([...issue.path, key], words, placeOf))
      : [wrongValue(issue, words, placeOf)],
  );
}

function unknownKey(path: readonly PropertyKey[], words: SchemaWords, placeOf: PlaceOf): Finding {
  const near = path.length > 1 ? null : closestWord(String(path[0] ?? ''), words.keys);
  return finding(
    'key-unknown',
    `"${pathText(path)}" is not ${words.entry}`,
    near === null ? 'remove the key' : `did you mean "${near}"? otherwise remove the key`,
    placeOf(path, 'key'),
  );
}

function wrongValue(
  { path, message, input }: SchemaIssue,
  words: SchemaWords,
  placeOf: PlaceOf,
): Finding {
  const name = pathText(path);
  if (input === undefined && name !== '') {
    return finding(
      'key-missing',
      `the ${words.name} "${name}" is missing`,
      `add "${name}"; ${words.page} lists what may stand there`,
      placeOf(path),
    );
  }
  return finding(
    'value-unexpected',
    name === ''
      ? `${words.file} does not hold an object of ${words.entries}`
      : `the ${words.name} "${name}" has a value it does not take (${message})`,
    `correct the value; ${words.page} lists what may stand there`,
    placeOf(path),
  );
}

function pathText(path: readonly PropertyKey[]): string {
  return path.map(String).join('.');
}
