import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { readBench } from '../commands/read-bench.ts';
import { fitDrain } from './drain-fit.ts';

const RUNS = 'device,variant,run,clean,drain,collected_until,starts,temperature';

function fitOf(rows: readonly string[], more: Record<string, string> = {}, variant = 'standard') {
  return withBench({ 'drain-runs.csv': csv(RUNS, ...rows), ...more }, (folder) => {
    const bench = readBench(folder);
    expect(bench.findings.filter((item) => item.level === 'error')).toEqual([]);
    return fitDrain(bench, 'ro', variant);
  });
}

describe('the drain ratio of a device', () => {
  it('pools volumes and never averages ratios', () => {
    const { fit: found } = fitOf(['ro,,1,1 L,3 L,tap-closed,,', 'ro,,2,9 L,9 L,tap-closed,,']);
    // 12 L over 10 L; the mean of the two ratios would be 2.
    expect(found?.ratio).toBeCloseTo(1.2, 12);
    expect(found?.method).toBe('pooled');
  });

  it('separates drain per start where clean water per start differs between runs', () => {
    // drain = 0.8 x clean + 0.1 x starts, exactly.
    const { fit: found } = fitOf([
      'ro,,1,1 L,0.9 L,tap-closed,1,',
      'ro,,2,4 L,3.3 L,tap-closed,1,',
      'ro,,3,2 L,2.0 L,tap-closed,4,',
    ]);
    expect(found?.method).toBe('ratio and per-start');
    expect(found?.ratio).toBeCloseTo(0.8, 10);
    expect(found?.perStartL).toBeCloseTo(0.1, 10);
  });

  it('does not separate them where every run has the same clean water per start', () => {
    const { fit: found } = fitOf(['ro,,1,1 L,2 L,tap-closed,1,', 'ro,,2,3 L,6 L,tap-closed,3,']);
    expect(found).toMatchObject({ method: 'pooled', perStartL: 0, ratio: 2 });
  });

  it('falls back on pooling where a fit would give a negative drain per start', () => {
    const { fit: found } = fitOf(['ro,,1,1 L,1 L,tap-closed,1,', 'ro,,2,2 L,3 L,tap-closed,1,']);
    expect(found).toMatchObject({ method: 'pooled', perStartL: 0 });
    expect(found?.ratio).toBeCloseTo(4 / 3, 12);
  });

  it('takes the flush out of a run that was collected until after it', () => {
    const { fit: found, findings } = fitOf(['ro,,1,1 L,2.4 L,after-flush,1,'], {
      'flush-rules.csv': csv('device,rule,trigger,after,volume', 'ro,rinse,idle,10 min,0.9 L'),
    });
    expect(found?.ratio).toBeCloseTo(1.5, 12);
    expect(findings.map((item) => item.code)).toEqual(['run-took-flush']);
  });

  it('refuses such a run where two rules could have fired', () => {
    const { fit: found, findings } = fitOf(['ro,,1,1 L,2.4 L,after-flush,1,'], {
      'flush-rules.csv': csv(
        'device,rule,trigger,after,volume',
        'ro,rinse,idle,10 min,0.9 L',
        'ro,purge,start,,0.2 L',
      ),
    });
    expect(found).toBeNull();
    expect(findings[0]?.message).toContain('not used');
  });

  it('uses the runs of a variant where it has some, else those of the standard state', () => {
    const rows = ['ro,,1,1 L,3 L,tap-closed,,', 'ro,eco,2,1 L,2 L,tap-closed,,'];
    const more = { 'variants.csv': csv('device,variant', 'ro,eco', 'ro,boost') };
    expect(fitOf(rows, more, 'eco').fit?.ratio).toBe(2);
    expect(fitOf(rows, more, 'boost').fit?.ratio).toBe(3);
  });

  it('weighs water at its logged temperature', () => {
    const { fit: found } = fitOf(['ro,,1,1000 g,1000 g,tap-closed,,20 C']);
    // 1000 g at 20 degC are 1.00285 L (Z factor of ISO 8655); the ratio of two masses stays 1.
    expect(found?.runs[0]?.clean.volumeL).toBeCloseTo(1.00285, 4);
    expect(found?.ratio).toBe(1);
  });

  it('is not known without a run', () => {
    expect(fitOf([]).fit).toBeNull();
  });

  it('is not known where no clean water was made', () => {
    const { fit: found, findings } = fitOf(['ro,,1,0 L,2 L,tap-closed,1,']);
    expect(found).toBeNull();
    expect(findings.map((item) => item.code)).toEqual(['run-clean-zero']);
  });
});
