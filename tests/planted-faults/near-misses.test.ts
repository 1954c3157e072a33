import { describe, expect, it } from 'vitest';
import { qualityFindings } from '../../src/analyse/index.ts';
import type { FindingCode } from '../../src/findings/index.ts';
import { APRIL, baseBench, labNumber, MARCH, MAY } from './base-bench.ts';
import { BenchText } from './bench-text.ts';

function setResult(bench: BenchText, file: string, sample: string, analyte: string, text: string) {
  return bench.set(file, { 'Sample ID': labNumber(sample), Analyte: analyte }, 'Result', text);
}

/** What is done to the clean bench, and the code that must stay away since it is just inside. */
const NEAR_MISSES: readonly {
  readonly name: string;
  readonly code: FindingCode;
  readonly change: (bench: BenchText) => void;
}[] = [
  {
    name: 'a duplicate 19 % above its original',
    code: 'duplicate-differs',
    change: (bench) => setResult(bench, MARCH, 'm-feed-dup', 'Barium', '77.0'),
  },
  {
    name: 'a duplicate of lead one reporting limit apart, near the limit',
    code: 'duplicate-differs',
    change: (bench) => {
      setResult(bench, MARCH, 'm-feed', 'Lead', '2.0');
      setResult(bench, MARCH, 'm-feed-dup', 'Lead', '2.5');
    },
  },
  {
    name: 'a bottle for bacteria that travelled for 30 hours',
    code: 'holding-time-over',
    change: (bench) =>
      bench.set('bottles.csv', { sample: 'a-ro-one' }, 'received_at', '2026-04-15T14:30'),
  },
  {
    name: 'a delivery that may have taken less than 48 hours, dates without a clock',
    code: 'holding-time-over',
    change: (bench) => {
      bench.set('samples.csv', { sample: 'y-feed' }, 'taken_at', '2026-05-12');
      bench.set('bottles.csv', { sample: 'y-feed' }, 'received_at', '2026-05-13');
    },
  },
  {
    name: 'a bottle that arrived at 6 °C',
    code: 'receipt-warm',
    change: (bench) =>
      bench.set('bottles.csv', { sample: 'm-inline' }, 'receipt_temperature', '6 C'),
  },
  {
    name: 'a warm bottle that was at the lab within six hours',
    code: 'receipt-warm',
    change: (bench) => {
      bench.set('bottles.csv', { sample: 'm-inline' }, 'receipt_temperature', '15 C');
      bench.set('bottles.csv', { sample: 'm-inline' }, 'received_at', '2026-03-10T15:30');
    },
  },
  {
    name: 'a sodium 10 % high',
    code: 'ion-balance-off',
    change: (bench) => setResult(bench, APRIL, 'a-feed', 'Sodium', '22.4'),
  },
  {
    name: 'dissolved solids 20 % above what the ions make',
    code: 'dissolved-solids-off',
    change: (bench) => setResult(bench, MAY, 'y-feed', 'Total Dissolved Solids', '345'),
  },
  {
    name: 'free chlorine a little above total chlorine, as two measurements may give',
    code: 'part-above-total',
    change: (bench) => setResult(bench, APRIL, 'a-feed', 'Chlorine, Free', '1.1'),
  },
  {
    name: 'a device that lets in a hundredth of the copper: no unit slip',
    code: 'unit-suspect',
    change: (bench) => setResult(bench, APRIL, 'a-inline', 'Copper', '1.2'),
  },
  {
    name: 'a feed of quite another water, such as rain',
    code: 'unit-suspect',
    change: (bench) => {
      for (const analyte of bench.column(MAY, { 'Sample ID': labNumber('y-feed') }, 'Analyte')) {
        const row = { 'Sample ID': labNumber('y-feed'), Analyte: analyte };
        const value = Number(bench.get(MAY, row, 'Result').replace('<', ''));
        if (analyte !== 'pH') bench.set(MAY, row, 'Result', String(value / 300));
        bench.set(MAY, row, 'RL', '0.00001');
        bench.set(MAY, row, 'MDL', '0.000001');
      }
      bench.set('samples.csv', { sample: 'y-inline' }, 'status', 'void');
      bench.set('samples.csv', { sample: 'y-inline' }, 'reason', 'of another water');
    },
  },
  {
    name: 'a device that adds a little copper',
    code: 'feed-product-exchanged',
    change: (bench) => setResult(bench, APRIL, 'a-inline', 'Copper', '190'),
  },
  {
    name: 'a nitrate of a product a quarter of the feed',
    code: 'nitrate-basis-suspect',
    change: (bench) => setResult(bench, MAY, 'y-inline', 'Nitrate as N', '0.565'),
  },
  {
    name: 'a drain bottle 15 % off the balance',
    code: 'drain-balance-off',
    change: (bench) => setResult(bench, MARCH, 'm-ro-one-drain', 'Chloride', '48.5'),
  },
  {
    name: 'a lab date one day off',
    code: 'sampling-date-differs',
    change: (bench) => {
      for (const analyte of bench.column(MAY, { 'Sample ID': labNumber('y-feed') }, 'Analyte')) {
        const row = { 'Sample ID': labNumber('y-feed'), Analyte: analyte };
        bench.set(MAY, row, 'Collected', '2026-05-13');
      }
    },
  },
  {
    name: 'a pour a third slower than the others',
    code: 'pour-unlike',
    change: (bench) => bench.set('pours.csv', { device: 'ro-one', run: '3' }, 'time', '55 s'),
  },
  {
    name: 'a run that drains a tenth more',
    code: 'run-holds-flush',
    change: (bench) =>
      bench.set('drain-runs.csv', { device: 'ro-one', run: '3' }, 'drain', '3.3 L'),
  },
  {
    name: 'an odd run beside one other only, where nobody can say which is odd',
    code: 'drain-run-unlike',
    change: (bench) => {
      const third = { device: 'ro-two', run: '3' };
      bench.set('drain-runs.csv', third, 'collected_until', 'after-flush');
      bench.set('drain-runs.csv', { device: 'ro-two', run: '2' }, 'drain', '24.4 L');
    },
  },
];

describe('what is just inside a criterion is not told', () => {
  for (const { name, code, change } of NEAR_MISSES) {
    it(`${code}: ${name}`, () => {
      const bench = baseBench();
      change(bench);
      const { findings } = bench.read();
      expect(findings.filter((item) => item.level === 'error')).toEqual([]);
      expect(findings.map((item) => item.code)).not.toContain(code);
    });
  }
});

describe('quality control as a whole', () => {
  it('has nothing to say about a bench without results and logs', () => {
    const bench = new BenchText({}).add('devices.csv', [
      { device: 'a', name: 'A', form: 'inline', technology: 'carbon', drain_line: 'no' },
    ]);
    expect(qualityFindings(bench.read())).toEqual([]);
  });

  it('does not compare results while a lab file holds an error, and checks the logs all the same', () => {
    const bench = baseBench();
    setResult(bench, MARCH, 'm-feed-dup', 'Barium', '96.0');
    setResult(bench, MARCH, 'm-feed', 'Lead', 'about two');
    bench.set('parts.csv', { part: 'membrane' }, 'lasts', '');
    const codes = bench.read().findings.map((item) => item.code);
    expect(codes).not.toContain('duplicate-differs');
    expect(codes).toContain('part-life-missing');
  });

  it('follows the criteria of bench.json', () => {
    const bench = baseBench();
    setResult(bench, MARCH, 'm-feed-dup', 'Barium', '72.0');
    expect(bench.read().findings.map((item) => item.code)).not.toContain('duplicate-differs');
    bench.settings['quality'] = { duplicate_rpd: 10 };
    expect(bench.read().findings.map((item) => item.code)).toContain('duplicate-differs');
  });

  it('lets a warning be accepted with a reason, which then stands in the note', () => {
    const bench = baseBench();
    setResult(bench, MARCH, 'm-feed-dup', 'Barium', '96.0');
    bench.settings['accepted_findings'] = [{ code: 'duplicate-differs', reason: 'rerun ordered' }];
    const found = bench.read().findings.find((item) => item.code === 'duplicate-differs');
    expect(found?.level).toBe('note');
    expect(found?.message).toContain('rerun ordered');
  });

  it('says the same whatever the order of the rows of a lab file', () => {
    const forwards = baseBench();
    const backwards = baseBench();
    for (const bench of [forwards, backwards]) {
      setResult(bench, MARCH, 'm-feed-dup', 'Barium', '96.0');
      setResult(bench, MARCH, 'm-inline', 'Calcium as Ca', '150');
      setResult(bench, MARCH, 'm-blank', 'Lead', '1.3');
    }
    backwards.reverse(MARCH);
    const told = (bench: BenchText): string[] =>
      bench
        .read()
        .findings.filter(({ level }) => level !== 'note')
        .map(({ code, message }) => `${code} ${message}`)
        .sort();
    expect(told(backwards)).toEqual(told(forwards));
    expect(told(forwards)).toHaveLength(4);
  });
});
