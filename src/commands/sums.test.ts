import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import type { LogReductionRow, SumRow } from '../model/index.ts';
import { readBench } from './read-bench.ts';
import { logReductions, sums } from './sums.ts';

const SAMPLES = 'sample,position,device,event';
const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';
const THM = ['Chloroform', 'Bromodichloromethane', 'Dibromochloromethane', 'Bromoform'];

function bench<T>(results: readonly string[], use: (folder: string) => T, settings = '{}'): T {
  return withBench(
    {
      'bench.json': JSON.stringify({ title: 't', ...JSON.parse(settings) }),
      'samples.csv': csv(SAMPLES, 'F,feed,,day', 'P,product,ro,day'),
      'lab/lab.csv': csv(LAB, ...results),
    },
    use,
  );
}

function sumOf(key: string, results: readonly string[], settings = '{}'): SumRow | undefined {
  return bench(
    results,
    (folder) => {
      const read = readBench(folder);
      expect(read.findings.filter(({ level }) => level === 'error')).toEqual([]);
      return (sums(read).rows as SumRow[]).find(({ sum }) => sum === key);
    },
    settings,
  );
}

const members = (feed: readonly string[], product: readonly string[], unit = 'ug/L,0.5,1') =>
  THM.flatMap((name, index) => [
    ...(feed[index] === undefined || feed[index] === ''
      ? []
      : [`F,${name},${feed[index]},${unit}`]),
    ...(product[index] === undefined || product[index] === ''
      ? []
      : [`P,${name},${product[index]},${unit}`]),
  ]);

describe('a sum over fixed members', () => {
  it('adds intervals on both sides and counts no non-detect as zero', () => {
    const row = sumOf('tthm', members(['48', '14', '5', 'ND'], ['2', 'ND', 'ND', 'ND']));
    expect(row).toMatchObject({
      outcome: 'between',
      unit: 'ug/L',
      feed: { low: 67, high: 68, sample: 'F' },
      product: { low: 2, high: 5, sample: 'P' },
      nondetects_as_zero: { feed: 67, product: 2 },
    });
    expect(row?.reduction.low).toBeCloseTo(1 - 5 / 67, 12);
    expect(row?.reduction.high).toBeCloseTo(1 - 2 / 68, 12);
    // What is stated is never stronger than plain arithmetic.
    expect(row?.reduction.interval_low ?? 1).toBeLessThanOrEqual(1 - 5 / 67);
  });

  it('is no complete removal where nothing was detected in the product', () => {
    const row = sumOf('tthm', members(['48', '14', '5', 'ND'], ['ND', 'ND', 'ND', 'ND']));
    expect(row).toMatchObject({ outcome: 'at-least', reduction: { high: null } });
    expect(row?.reduction.low ?? 1).toBeLessThan(1);
    expect(row?.nondetects_as_zero).toEqual({ feed: 67, product: 0 });
  });

  it('can show nothing where nothing was detected on either side', () => {
    const none = ['ND', 'ND', 'ND', 'ND'];
    expect(sumOf('tthm', members(none, none))).toMatchObject({
      outcome: 'untestable',
      found: { members: [], outcome: 'untested', reason: 'no member was found in the feed' },
    });
  });

  it('is untested, with the reason, where a member is missing on one side', () => {
    const row = sumOf('tthm', members(['48', '14', '5', 'ND'], ['2', '1', '', 'ND']));
    expect(row).toMatchObject({
      outcome: 'untested',
      firm: false,
      reason: '1 of 4 members not tested in the product: Dibromochloromethane',
      product: { low: null, high: null },
      feed: { low: 67, high: 68 },
    });
    expect(row?.found).toMatchObject({ outcome: 'untested' });
  });

  it('has the sum over the members found in the feed beside it', () => {
    const row = sumOf('tthm', members(['48', '14', 'ND', 'ND'], ['2', '1', 'ND', 'ND']));
    expect(row?.found).toMatchObject({
      members: ['chloroform', 'bromodichloromethane'],
      outcome: 'measured',
      feed: { low: 62, high: 62 },
      product: { low: 3, high: 3 },
    });
    expect(row?.found.reduction.estimate).toBeCloseTo(1 - 3 / 62, 12);
  });

  it('found in the feed stands where members that were never tested leave the whole untested', () => {
    const row = sumOf('tthm', members(['48', '14'], ['2', '1']));
    expect(row).toMatchObject({
      outcome: 'untested',
      reason: '2 of 4 members not tested: Dibromochloromethane, Bromoform',
      found: { outcome: 'measured', reason: null },
    });
  });

  it('carries the interval of its reduction, uncertainty and all, and not plain bounds alone', () => {
    const row = logOf(['F,Legionella,5000,CFU/L,,1', 'P,Legionella,50,CFU/L,,1']);
    // Two figures: as reported log10(5000/50) = 2 at both ends, the interval around it.
    expect([row?.low, row?.high]).toEqual([2, 2]);
    expect(row?.estimate).toBeCloseTo(2, 12);
    expect(row?.interval_low ?? 2).toBeLessThan(1.95);
    expect(row?.interval_high ?? 2).toBeGreaterThan(2.05);
    expect(row?.confidence).toBe(0.95);
  });

  it('of a product in which nothing was found has no upper end', () => {
    const row = logOf(['F,Legionella,5000,CFU/L,,1', 'P,Legionella,ND,CFU/L,,1']);
    expect(row).toMatchObject({ high: null, interval_high: null, estimate: null });
    // Not detected is in place of the limit: log10(5000/1), and lower with the feed's uncertainty.
    expect(row?.low).toBeCloseTo(Math.log10(5000), 12);
    expect(row?.interval_low ?? 9).toBeLessThan(row?.low ?? 0);
  });

  it('is left out where fewer than two members were tested', () => {
    expect(sumOf('tthm', members(['48'], ['2']))).toBeUndefined();
  });

  it('of quantified members has an interval no narrower than that of its main member', () => {
    const row = sumOf('tthm', members(['48', '14', '5', '3'], ['2', '1', '1', '1']));
    const { estimate, interval_low, interval_high, confidence } = row?.reduction ?? {};
    expect(row).toMatchObject({ outcome: 'measured', firm: false });
    expect(estimate).toBeCloseTo(1 - 5 / 70, 12);
    expect(interval_low ?? 1).toBeLessThan(estimate ?? 0);
    expect(interval_high ?? 0).toBeGreaterThan(estimate ?? 1);
    expect(confidence).toBe(0.95);
  });

  it('rises where more leaves than enters', () => {
    expect(sumOf('tthm', members(['4', '4', '4', '4'], ['48', '14', '9', '9']))?.outcome).toBe(
      'rise',
    );
  });

  it('converts its members first: mg/L of one and ug/L of another', () => {
    const row = sumOf('tthm', [
      'F,Chloroform,0.048,mg/L,0.0005,0.001',
      'P,Chloroform,0.002,mg/L,0.0005,0.001',
      ...members(['', '14', '5', '3'], ['', '1', '1', '1']),
    ]);
    expect(row?.feed).toMatchObject({ low: 70, high: 70 });
  });
});

describe('hardness', () => {
  it('is 2.497 times calcium and 4.118 times magnesium, within the rounding of the factors', () => {
    const row = sumOf('total-hardness', [
      'F,Calcium as Ca,80,mg/L,,',
      'P,Calcium as Ca,8,mg/L,,',
      'F,Magnesium as Mg,20,mg/L,,',
      'P,Magnesium as Mg,2,mg/L,,',
    ]);
    // Half a unit of the last digit of each factor.
    expect(Math.abs((row?.feed.low ?? 0) - (80 * 2.497 + 20 * 4.118))).toBeLessThan(
      80 * 0.0005 + 20 * 0.0005,
    );
    expect(row?.reduction.estimate).toBeCloseTo(0.9, 12);
  });
});

describe('a sum of ratios', () => {
  it('adds each trihalomethane over its WHO guideline value and is held against 1', () => {
    const row = sumOf('tthm-ratio', members(['300', '60', '100', '100'], ['30', 'ND', 'ND', 'ND']));
    // 300/300 + 60/60 + 100/100 + 100/100 ug/L
    expect(row?.feed.low).toBeCloseTo(4, 12);
    expect(row).toMatchObject({ unit: '1', feed_verdict: 'above', product_verdict: 'within' });
    expect(row?.product.high).toBeCloseTo(0.1 + 1 / 60 + 1 / 100 + 1 / 100, 12);
  });

  it('cannot say where the limits of the lab let it be above or below 1', () => {
    const none = ['ND', 'ND', 'ND', 'ND'];
    const row = sumOf('tthm-ratio', members(['300', '60', '100', '100'], none, 'ug/L,50,80'));
    expect(row?.product_verdict).toBe('cannot-say');
  });

  it('takes nitrate and nitrite on the basis of each guideline value', () => {
    const row = sumOf('nitrate-nitrite-ratio', [
      'F,Nitrate as N,11.295,mg/L as N,,',
      'P,Nitrate as N,1,mg/L as N,,',
      'F,Nitrite as N,0.9134,mg/L as N,,',
      'P,Nitrite as N,0.1,mg/L as N,,',
    ]);
    // 50 mg/L as NO3 and 3 mg/L as NO2 are 11.295 and 0.9134 mg/L as N, four digits each.
    expect(row?.feed.low).toBeCloseTo(2, 3);
  });
});

function logOf(results: readonly string[], settings = '{}'): LogReductionRow | undefined {
  return bench(
    results,
    (folder) => (logReductions(readBench(folder)).rows as LogReductionRow[])[0],
    settings,
  );
}

describe('a log10 reduction with the chance of counting', () => {
  const cfu = (feed: string, product: string, limit = '1') =>
    logOf([
      `F,Enterococci,${feed},CFU/100 mL,,${limit}`,
      `P,Enterococci,${product},CFU/100 mL,,${limit}`,
    ]);

  it('takes none found as a count of 0, whose upper limit at 95 % is 3.689', () => {
    const row = cfu('60', 'ND');
    expect(row).toMatchObject({ high: null, counted: { feed_count: 60, product_count: 0 } });
    expect(row?.low).toBeCloseTo(Math.log10(60), 12);
    // Garwood limits at 95 %: of 60 from 45.785, of 0 to 3.68888.
    expect(row?.counted?.low).toBeCloseTo(Math.log10(45.785 / 3.68888), 4);
    expect(row?.counted?.high).toBeNull();
  });

  it('counts organisms in the volume that the limit tells: a limit of 10 is a tenth of it', () => {
    expect(cfu('400', 'ND', '10')?.counted).toMatchObject({ feed_count: 40, product_count: 0 });
  });

  it('does not take for a count what was diluted or is no multiple of the limit', () => {
    expect(cfu('4000', '5')?.counted).toMatchObject({ feed_count: null, product_count: 5 });
    expect(cfu('60', '2.5')?.counted).toMatchObject({ product_count: null });
  });

  it('never takes a most probable number for a count', () => {
    const row = logOf(['F,Total coliforms,50,MPN/100 mL,,1', 'P,Total coliforms,2,MPN/100 mL,,1']);
    expect(row?.counted).toMatchObject({ feed_count: null, product_count: null });
    expect(row?.counted?.feed_method).toContain('most probable number');
    expect(row?.counted?.low ?? 9).toBeLessThan(row?.low ?? 0);
  });

  it('widens with the confidence of the bench', () => {
    const at = (confidence: number) =>
      logOf(
        ['F,Enterococci,60,CFU/100 mL,,1', 'P,Enterococci,3,CFU/100 mL,,1'],
        JSON.stringify({ confidence }),
      )?.counted;
    expect(at(0.99)?.low ?? 9).toBeLessThan(at(0.9)?.low ?? 0);
    expect(at(0.99)?.high ?? 0).toBeGreaterThan(at(0.9)?.high ?? 9);
  });

  it('is given for organisms alone', () => {
    expect(logOf(['F,Lead,10,ug/L,,', 'P,Lead,1,ug/L,,'])).toBeUndefined();
  });
});
