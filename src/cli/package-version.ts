import { readFileSync } from 'node:fs';

/** The version in package.json, read when it is asked for and never at start-up. */
export function packageVersion(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
