import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/** Texts of a bench by path; `bench.json` and `devices.csv` get defaults where they are left out. */
export type BenchTexts = Readonly<Record<string, string>>;

/** A reverse-osmosis device with a drain line, and a pitcher without. */
export const DEVICES_CSV = [
  'device,name,form,technology,tank,drain_line,acquired,interests',
  'ro,Reverse osmosis,under-sink,reverse-osmosis,no,yes,bought,none',
  'jug,Jug,pitcher,carbon,no,no,bought,none',
  '',
].join('\n');

const DEFAULTS: BenchTexts = {
  'bench.json': '{"title": "A bench of a test", "measures": "us"}',
  'devices.csv': DEVICES_CSV,
};

/** Writes a bench into a new folder below the system's temporary folder and returns its path. */
export function writeBench(texts: BenchTexts = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  for (const [path, text] of Object.entries({ ...DEFAULTS, ...texts })) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** Runs `use` on a bench that is removed afterwards. */
export function withBench<T>(texts: BenchTexts, use: (folder: string) => T): T {
  const folder = writeBench(texts);
  try {
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Rows of a CSV as text. */
export function csv(...rows: readonly string[]): string {
  return `${rows.join('\n')}\n`;
}
