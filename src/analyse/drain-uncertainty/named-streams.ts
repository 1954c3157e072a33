import type { RandomStream } from '../../simulate/index.ts';
import { normalQuantile } from '../../statistics/index.ts';

/** Normal numbers by the inverse of their distribution: one of the stream for each. */
export function normals(stream: RandomStream): () => number {
  return () => normalQuantile(stream.nextFraction() + 2 ** -54);
}

/** A stream number for a name: FNV-1a of its UTF-16 units, above all numbers used for years. */
export function streamNumber(name: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < name.length; at++) {
    hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193);
  }
  return 2 ** 40 + (hash >>> 0);
}
