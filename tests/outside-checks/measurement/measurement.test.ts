import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitDrain } from '../../../src/analyse/drain-fit.ts';
import { pourFlows } from '../../../src/analyse/index.ts';
import { readBench } from '../../../src/commands/read-bench.ts';
import { volumeFromMassL } from '../../../src/reference/index.ts';
import { csv, withBench } from '../../benches/write-bench.ts';

const { cases } = JSON.parse(
  readFileSync(new URL('measurement.json', import.meta.url), 'utf8'),
) as {
  cases: readonly {
    readonly id: string;
    readonly inputs: Readonly<Record<string, number & readonly number[]>>;
    readonly expected: Readonly<Record<string, number>>;
    readonly tolerance: { readonly abs?: number; readonly rel?: number };
  }[];
};

function caseOf(id: string) {
  const found = cases.find((item) => item.id === id);
  if (found === undefined) throw new RangeError(`no case ${id}`);
  return found;
}

describe('mass to volume with air buoyancy', () => {
  it('MEA-01, derived from V = m (1 - 0.0012/8.0)/(density - 0.0012): 946 g at 25 degC', () => {
    const { expected, tolerance } = caseOf('MEA-01');
    const volumeML = volumeFromMassL(946, 25) * 1000;
    expect(Math.abs(volumeML - (expected['volume_mL'] ?? 0))).toBeLessThan(tolerance.abs ?? 0);
  });

  it('MEA-02, Z factor of ISO 8655 at 20 degC (from memory): 1000 g fill 1002.85 mL', () => {
    const { expected, tolerance } = caseOf('MEA-02');
    const volumeML = volumeFromMassL(1000, 20) * 1000;
    expect(Math.abs(volumeML - (expected['volume_mL'] ?? 0))).toBeLessThan(tolerance.abs ?? 0);
  });
});

describe('ratio of totals', () => {
  it('MEA-07, derived: two pours pool to 1.819 to drain per clean, not to the mean of ratios 3.84', () => {
    const { inputs, expected } = caseOf('MEA-07');
    const pours: readonly number[] = inputs['pours_floz'] ?? [];
    const drains: readonly number[] = inputs['drain_floz'] ?? [];
    const rows = pours.map((pour, index) =>
      ['ro', index + 1, `${pour} fl oz`, `${drains[index] ?? 0} fl oz`, 'tap-closed'].join(','),
    );
    const ratio = withBench(
      { 'drain-runs.csv': csv('device,run,clean,drain,collected_until', ...rows) },
      (folder) => fitDrain(readBench(folder), 'ro', 'standard').fit?.pooledRatio ?? Number.NaN,
    );
    // The file prints nine digits.
    expect(Math.abs(ratio - (expected['pooled_ratio'] ?? 0))).toBeLessThan(5e-9);
  });
});

describe('hand-stopped times', () => {
  it('MEA-10, derived: equal delays at start and stop cancel, so a time counts as it was read', () => {
    const { inputs, expected, tolerance } = caseOf('MEA-10');
    const { watch_s = 0, start_late_s = 0, stop_late_s = 0 } = inputs;
    const trueS = watch_s + start_late_s - stop_late_s;
    const [flow] = withBench(
      {
        'devices.csv': csv(
          'device,name,form,technology,tank,drain_line',
          'a,A,pitcher,carbon,no,no',
        ),
        'pours.csv': csv('device,run,volume,time', `a,1,1 L,${watch_s} s`),
      },
      (folder) => pourFlows(readBench(folder)).flows,
    );
    expect(Math.abs(trueS - (expected['true_s'] ?? 0))).toBeLessThanOrEqual(tolerance.abs ?? 0);
    expect(Math.abs((flow?.timeS ?? 0) - trueS)).toBeLessThanOrEqual(tolerance.abs ?? 0);
  });
});
