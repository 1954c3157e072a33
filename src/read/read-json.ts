import { type Node, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import { type Finding, finding, type Place, place } from '../findings/index.ts';
import { decodeText } from './decode-text.ts';

export type JsonPlacer = (path: readonly PropertyKey[], part?: 'value' | 'key') => Place;

export interface JsonReading {
  /** The value; null when the text is not JSON. */
  readonly value: unknown;
  readonly findings: readonly Finding[];
  /**
   * The place of the value at a path of keys and indices (`part` value), or of the last key of the
   * path itself (`part` key); of the nearest parent where the path ends early.
   */
  readonly placeOf: JsonPlacer;
}

/**
 * A JSON file with the places of its values, every syntax error and every repeated key.
 * @throws {BenchError} file-binary
 */
export function readJson(bytes: Uint8Array, path: string): JsonReading {
  const { text, findings: decoding } = decodeText(bytes, path);
  const at = placer(text, path);
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { disallowComments: true, allowTrailingComma: false });
  const findings: Finding[] = [...decoding];
  // What follows the first syntax error is mostly its echo.
  const [error] = errors;
  if (error !== undefined) {
    findings.push(
      finding(
        'json-broken',
        `the text is not JSON here (${printParseErrorCode(error.error)})`,
        'correct the JSON: strings in double quotes, no comments, no comma after the last entry',
        at(error.offset),
      ),
    );
  }
  if (root === undefined && errors.length === 0) {
    findings.push(
      finding(
        'json-broken',
        'the file holds no JSON value',
        'write an object in braces',
        place({ file: path }),
      ),
    );
  }
  if (root !== undefined) findings.push(...repeatedKeys(root, at));
  const broken = errors.length > 0 || root === undefined;
  return {
    value: broken ? null : JSON.parse(text),
    findings,
    placeOf: (keys, part = 'value') => at(root === undefined ? 0 : nearestOffset(root, keys, part)),
  };
}

function repeatedKeys(node: Node, at: (offset: number) => Place): Finding[] {
  const findings: Finding[] = [];
  const seen = new Set<string>();
  for (const child of node.children ?? []) {
    const name = child.type === 'property' ? child.children?.[0] : undefined;
    if (name !== undefined && typeof name.value === 'string') {
      if (seen.has(name.value)) {
        findings.push(
          finding(
            'key-repeated',
            `the key "${name.value}" stands twice in one object`,
            'keep one of the two',
            at(name.offset),
          ),
        );
      }
      seen.add(name.value);
    }
    findings.push(...repeatedKeys(child, at));
  }
  return findings;
}

function nearestOffset(root: Node, keys: readonly PropertyKey[], part: 'value' | 'key'): number {
  let node = root;
  for (const [index, key] of keys.entries()) {
    const property =
      typeof key === 'number'
        ? undefined
        : node.children?.find((child) => child.children?.[0]?.value === key);
    const name = property?.children?.[0];
    if (part === 'key' && index === keys.length - 1 && name !== undefined) return name.offset;
    const next = typeof key === 'number' ? node.children?.[key] : property?.children?.[1];
    if (next === undefined) break;
    node = next;
  }
  return node.offset;
}

function placer(text: string, path: string): (offset: number) => Place {
  return (offset) => {
    const before = text.slice(0, offset);
    const line = before.split('\n').length;
    const column = offset - before.lastIndexOf('\n');
    return place({ file: path, line, column });
  };
}
