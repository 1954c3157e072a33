import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, PROGRAM } from './built-program.ts';

beforeAll(ensureBuilt);

const ALLOWED = 1.25;
const RUNS = 15;
const BATCHES = 8;

function secondsOf(args: readonly string[]): number {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, args);
  expect(status).toBe(0);
  return performance.now() - start;
}

function median(values: readonly number[]): number {
  const ordered = [...values].sort((a, b) => a - b);
  return ordered[Math.floor(ordered.length / 2)] ?? Number.NaN;
}

/** Medians of interleaved runs, so that a busy moment of the machine meets both alike. */
function ratioOfMedians(): number {
  const help: number[] = [];
  const empty: number[] = [];
  for (let i = 0; i < RUNS; i++) {
    empty.push(secondsOf(['-e', '0']));
    help.push(secondsOf([PROGRAM, '--help']));
  }
  return median(help) / median(empty);
}

describe('start-up', () => {
  it('of --help takes at most 1.25 times that of an empty program', { timeout: 240_000 }, () => {
    const ratios: number[] = [];
    // Other work on the machine can only make one batch unfair: the fairest batch counts.
    for (let i = 0; i < BATCHES && !ratios.some((ratio) => ratio <= ALLOWED); i++) {
      ratios.push(ratioOfMedians());
    }
    console.log(`--help takes ${ratios.map((r) => r.toFixed(3)).join(', ')} × node -e 0`);
    expect(Math.min(...ratios)).toBeLessThanOrEqual(ALLOWED);
  });

  it('of --help loads no package at all, so that it cannot grow unseen', () => {
    const { status, stderr } = spawnSync(process.execPath, [PROGRAM, '--help'], {
      encoding: 'utf8',
      env: { ...process.env, NODE_DEBUG: 'esm,module' },
    });
    expect(status).toBe(0);
    expect(stderr).toContain('dist/cli/main.js');
    expect(stderr).not.toContain('node_modules');
    expect(stderr).not.toMatch(/dist\/(?!cli\/)/);
  });
});
