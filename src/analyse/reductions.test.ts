import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { readBench } from '../commands/read-bench.ts';
import type { ReductionRow } from '../model/index.ts';
import { computeReductions } from './reductions.ts';

const SAMPLES = 'sample,position,device,event,kind,of,taken_at,status,reason';
const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';

function reduce(texts: Record<string, string>): ReductionRow[] {
  return withBench(texts, (folder) => {
    const bench = readBench(folder);
    const errors = bench.findings.filter((item) => item.level === 'error');
    expect(errors).toEqual([]);
    return computeReductions(bench, 86_400).facts.map((fact) => fact.row);
  });
}

function pair(feed: string, product: string, settings = '{}'): ReductionRow {
  const rows = reduce({
    'bench.json': JSON.stringify({ title: 't', ...JSON.parse(settings) }),
    'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,,', 'P,product,ro,day,,,,,'),
    'lab/lab.csv': csv(LAB, `F,Lead,${feed}`, `P,Lead,${product}`),
  });
  expect(rows).toHaveLength(1);
  return rows[0] as ReductionRow;
}

describe('a reduction from a lab file', () => {
  it('of a product that was not detected is bounded by the reporting limit', () => {
    const row = pair('10,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5');
    expect(row).toMatchObject({
      outcome: 'at-least',
      unit: 'ug/L',
      product: { low: 0, high: 0.5, estimate: null },
      reduction: { high: null, bound_limit: 'reporting', confidence: 0.95 },
    });
    expect(row.reduction.low).toBeCloseTo(0.95, 12);
    expect(row.reduction.low_at_detection_limit).toBeCloseTo(0.99, 12);
  });

  it('is printed lower than plain arithmetic, because the feed itself is uncertain', () => {
    const { uncertainty, reduction } = pair('10,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5');
    expect(uncertainty).toMatchObject({ feed_from: 'assumed', product: null });
    // One-sided 95 % factor 1.644854; the limit of the product stands at five detection limits.
    const lowestFeed = 10 - 1.6448536269514722 * (uncertainty.feed ?? 0);
    expect(reduction.interval_low).toBeCloseTo(1 - 0.5 / lowestFeed, 12);
  });

  it('is bounded by the detection limit where the bench says so, and claims no confidence', () => {
    const row = pair('10,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5', '{"nondetect_bound":"detection"}');
    expect(row.reduction.low).toBeCloseTo(0.99, 12);
    expect(row.reduction.interval_low).toBeLessThan(0.99);
    expect(row.reduction.confidence).toBeNull();
    expect(row.reduction.bound_limit).toBe('detection');
  });

  it('uses the one limit the lab gives, whichever bound leads', () => {
    for (const bound of ['reporting', 'detection']) {
      const row = pair('10,ug/L,,0.5', '<0.5,ug/L,,', `{"nondetect_bound":"${bound}"}`);
      expect(row.product.high).toBe(0.5);
    }
  });

  it('lies between bounds where the product was detected and not quantified', () => {
    const row = pair('10,ug/L,0.1,0.5', '0.3 J,ug/L,0.1,0.5');
    expect(row).toMatchObject({ outcome: 'between', product: { low: 0.1, high: 0.5 } });
  });

  it('converts units exactly: 0.005 mg/L of lead are 5 ug/L', () => {
    expect(pair('0.005,mg/L,,', '1,ug/L,,').feed.estimate).toBe(5);
  });

  it('never calls a non-detect a complete removal', () => {
    expect(pair('1000,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5').reduction.high).toBeNull();
  });
});

describe('the feed of a product', () => {
  it('of another event does not count', () => {
    const rows = reduce({
      'samples.csv': csv(SAMPLES, 'F,feed,,one,,,,,', 'P,product,ro,two,,,,,'),
      'lab/lab.csv': csv(LAB, 'F,Lead,10,ug/L,,', 'P,Lead,1,ug/L,,'),
    });
    expect(rows).toMatchObject([{ outcome: 'untested', findings: ['feed-missing'] }]);
  });

  it('may be bracketed by the feeds before and after, and then spans both', () => {
    const rows = reduce({
      'samples.csv': csv(
        SAMPLES,
        'F1,feed,,morning,,,2026-07-06T08:00,,',
        'F2,feed,,evening,,,2026-07-06T18:00,,',
        'P,product,ro,noon,,,2026-07-06T12:00,,',
      ),
      'lab/lab.csv': csv(LAB, 'F1,Lead,10,ug/L,,', 'F2,Lead,20,ug/L,,', 'P,Lead,1,ug/L,,'),
    });
    expect(rows).toMatchObject([
      { outcome: 'between', feed: { low: 10, high: 20, n: 2, sample: 'F1+F2' } },
    ]);
  });

  it('comes from the same lab file unless the bench allows otherwise', () => {
    const texts = {
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,,', 'P,product,ro,day,,,,,'),
      'lab/one.csv': csv(LAB, 'F,Lead,10,ug/L,,'),
      'lab/two.csv': csv(LAB, 'P,Lead,1,ug/L,,'),
    };
    expect(reduce(texts)).toMatchObject([{ outcome: 'untested' }]);
    const crossing = { ...texts, 'bench.json': '{"title":"t","cross_lab":true}' };
    expect(reduce(crossing)).toMatchObject([{ outcome: 'measured' }]);
  });

  it('of natural water never serves a spiked product', () => {
    const rows = reduce({
      'samples.csv': csv(
        SAMPLES,
        'F,feed,,day,natural,,,,',
        'S,feed,,day,spiked,,,,',
        'P,product,ro,day,spiked,,,,',
      ),
      'lab/lab.csv': csv(LAB, 'F,Lead,2,ug/L,,', 'S,Lead,150,ug/L,,', 'P,Lead,1,ug/L,,'),
    });
    expect(rows).toMatchObject([{ kind: 'spiked', feed: { estimate: 150, sample: 'S' } }]);
  });
});

describe('samples that do not count', () => {
  it('a void product is untested and says why', () => {
    const rows = reduce({
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,,', 'P,product,ro,day,,,,void,bottle broke'),
      'lab/lab.csv': csv(LAB, 'F,Lead,10,ug/L,,', 'P,Lead,1,ug/L,,'),
    });
    expect(rows).toMatchObject([{ outcome: 'untested', findings: ['sample-void'] }]);
  });

  it('a duplicate never enters as a sample of its own', () => {
    const rows = reduce({
      'samples.csv': csv(
        SAMPLES,
        'F,feed,,day,,,,,',
        'P,product,ro,day,,,,,',
        'D,product,ro,day,,P,,,',
      ),
      'lab/lab.csv': csv(LAB, 'F,Lead,10,ug/L,,', 'P,Lead,1,ug/L,,', 'D,Lead,3,ug/L,,'),
    });
    expect(rows).toMatchObject([{ product: { estimate: 1, n: 1 } }]);
  });

  it('replicates of one event are averaged, bound by bound', () => {
    const rows = reduce({
      'samples.csv': csv(
        SAMPLES,
        'F,feed,,day,,,,,',
        'P1,product,ro,day,,,,,',
        'P2,product,ro,day,,,,,',
      ),
      'lab/lab.csv': csv(LAB, 'F,Lead,10,ug/L,,', 'P1,Lead,1,ug/L,,0.5', 'P2,Lead,ND,ug/L,,0.5'),
    });
    expect(rows).toMatchObject([
      { outcome: 'between', product: { low: 0.5, high: 0.75, n: 2, sample: 'P1+P2' } },
    ]);
  });

  it('pH has no reduction', () => {
    const rows = reduce({
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,,', 'P,product,ro,day,,,,,'),
      'lab/lab.csv': csv(LAB, 'F,pH,7.8,pH units,,', 'P,pH,6.4,pH units,,'),
    });
    expect(rows).toEqual([]);
  });
});

describe('bacteria', () => {
  it('get a log10 reduction, bounded where none were found', () => {
    const rows = reduce({
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,,', 'P,product,ro,day,,,,,'),
      'lab/lab.csv': csv(
        LAB,
        'F,Total coliforms,1000,MPN/100 mL,,1',
        'P,Total coliforms,<1,MPN/100 mL,,1',
      ),
    });
    expect(rows).toMatchObject([{ outcome: 'at-least', log_reduction: { low: 3, high: null } }]);
  });
});

describe('reference levels', () => {
  it('say within, above or cannot say', () => {
    const verdicts = (product: string) =>
      pair('100,ug/L,,', `${product},ug/L,,`, '{"reference_levels":["WHO"]}').reference_levels.map(
        (level) => level.verdict,
      );
    // WHO guideline value of lead: 10 ug/L.
    expect(verdicts('2')).toEqual(['within']);
    expect(verdicts('12')).toEqual(['above']);
    expect(verdicts('<20')).toEqual(['cannot-say']);
  });
});

describe('rises of a bench', () => {
  it('are one family with the other tests of the bench, claims among them', () => {
    const texts = {
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,,', 'P,product,ro,day,,,,,'),
      'lab/lab.csv': csv(LAB, 'F,Lead,100,ug/L,,', 'P,Lead,142,ug/L,,'),
    };
    const rise = (others: readonly number[]) =>
      withBench(texts, (folder) => {
        const { facts } = computeReductions(readBench(folder), 86_400, () => others);
        return facts[0];
      });
    const alone = rise([]);
    expect(alone?.row.outcome).toBe('rise');
    expect(alone?.row.rise_p).toBe(alone?.riseTest);
    const beside = rise([0.5, 0.6, 0.7, 0.8, 0.9, 1]);
    expect(beside?.row.rise_p).toBeCloseTo(7 * (alone?.riseTest ?? 0), 12);
    expect(beside?.row.outcome).toBe('not-shown');
    // Other tests that find something leave more room: that is how the rate is held.
    expect(rise([1e-9, 1e-9, 1e-9])?.row.rise_p).toBeCloseTo(alone?.riseTest ?? 1, 12);
  });
});
