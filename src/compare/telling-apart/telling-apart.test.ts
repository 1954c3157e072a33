import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { computeReductions, statementOptions } from '../../analyse/index.ts';
import { readBench } from '../../commands/read-bench.ts';
import { type Margin, notToldApartGroups, tellApart } from './index.ts';

const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';

/** Products of devices a, b, c … on one feed of lead. */
function compare(feed: string, products: readonly string[], margin: Margin | number = 0.05) {
  const names = products.map((_, at) => String.fromCharCode(97 + at));
  const texts = {
    'devices.csv': csv(
      'device,name,form,technology,tank,drain_line,acquired,interests',
      ...names.map((name) => `${name},Device ${name},pitcher,carbon,no,no,bought,none`),
    ),
    'samples.csv': csv(
      'sample,position,device,event',
      'F,feed,,day',
      ...names.map((name) => `P${name},product,${name},day`),
    ),
    'lab/lab.csv': csv(
      LAB,
      `F,Lead,${feed}`,
      ...products.map((product, at) => `P${names[at]},Lead,${product}`),
    ),
  };
  return withBench(texts, (folder) => {
    const bench = readBench(folder);
    const { facts } = computeReductions(bench, 86_400);
    return tellApart(facts, { ...statementOptions(bench), margin })[0];
  });
}

describe('two devices on one feed', () => {
  it('are told apart where their products differ by far more than they scatter', () => {
    const found = compare('100,ug/L,0.1,0.5', ['10,ug/L,0.1,0.5', '60,ug/L,0.1,0.5']);
    expect(found?.pairs).toMatchObject([{ verdict: 'differ', lower: 'a', firm: false }]);
    expect(found?.groups).toEqual([[0], [1]]);
  });

  it('are not told apart where they differ by less', () => {
    const found = compare('100,ug/L,0.1,0.5', ['50,ug/L,0.1,0.5', '52,ug/L,0.1,0.5']);
    expect(found?.pairs).toMatchObject([{ verdict: 'not-told-apart' }]);
  });

  it('are never ranked by bounds at different limits', () => {
    const found = compare('1000,ug/L,0.1,0.5', ['ND,ug/L,0.1,0.5', 'ND,ug/L,20,50'], 0.001);
    expect(found?.pairs).toMatchObject([
      { verdict: 'not-comparable', lower: null, reason: 'two bounds at different limits' },
    ]);
  });

  it('are equivalent where bounds leave no difference beyond the margin', () => {
    const found = compare('1000,ug/L,0.1,0.5', ['ND,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5']);
    expect(found?.pairs).toMatchObject([{ verdict: 'equivalent' }]);
  });

  it('are told apart where a figure lies above the bound of the other', () => {
    const found = compare('100,ug/L,0.1,0.5', ['ND,ug/L,0.1,0.5', '20,ug/L,0.1,0.5']);
    expect(found?.pairs).toMatchObject([{ verdict: 'differ', lower: 'a' }]);
  });

  it('of which both are bounds at one limit are not ranked', () => {
    const found = compare('10,ug/L,0.1,0.5', ['ND,ug/L,0.1,0.5', '0.3 J,ug/L,0.1,0.5'], 0.001);
    expect(found?.pairs).toMatchObject([{ verdict: 'not-told-apart', lower: null }]);
  });

  it('have a ratio of passages from which the feed cancels, and a margin in that ratio', () => {
    const products = ['50,ug/L,0.1,0.5', '52,ug/L,0.1,0.5'];
    const low = compare('100,ug/L,0.1,0.5', products, { kind: 'ratio', value: 2 });
    const high = compare('1000,ug/L,0.1,0.5', products, { kind: 'ratio', value: 2 });
    expect(low?.pairs).toMatchObject([{ verdict: 'equivalent', isWithinMargin: true }]);
    expect(low?.pairs[0]?.passages?.ratio).toEqual(high?.pairs[0]?.passages?.ratio);
    const narrow = compare('100,ug/L,0.1,0.5', products, { kind: 'ratio', value: 1.05 });
    expect(narrow?.pairs).toMatchObject([{ verdict: 'not-told-apart', isWithinMargin: false }]);
  });

  it('differ exactly where the printed interval leaves out 0', () => {
    for (let value = 51; value < 90; value += 3) {
      const found = compare('100,ug/L,0.1,0.5', ['50,ug/L,0.1,0.5', `${value},ug/L,0.1,0.5`]);
      const pair = found?.pairs[0];
      expect(pair?.verdict === 'differ').toBe((pair?.passages?.difference.high ?? 0) < 0);
    }
  });

  it('with no second device are not compared', () => {
    expect(compare('100,ug/L,0.1,0.5', ['10,ug/L,0.1,0.5'])).toBeUndefined();
  });
});

describe('many devices', () => {
  it('share the confidence among their pairs: what differs alone may not among ten', () => {
    const products = ['50', '70'].map((value) => `${value},ug/L,0.1,0.5`);
    const alone = compare('100,ug/L,0.1,0.5', products);
    expect(alone).toMatchObject({ comparisons: 1, adjustedConfidence: 0.95 });
    expect(alone?.pairs[0]?.verdict).toBe('differ');
    const others = ['80', '81', '82'].map((value) => `${value},ug/L,0.1,0.5`);
    const many = compare('100,ug/L,0.1,0.5', [...products, ...others]);
    expect(many).toMatchObject({ comparisons: 10 });
    expect(many?.adjustedConfidence).toBeCloseTo(0.995, 12);
    expect(many?.pairs[0]?.verdict).toBe('not-told-apart');
  });

  it('form groups in which nobody was told apart, and every other pair stands in one', () => {
    const pair = fc.tuple(fc.nat(6), fc.nat(6)).filter(([a, b]) => a < b);
    const property = fc.property(fc.array(pair, { maxLength: 12 }), (apart) => {
      const groups = notToldApartGroups(7, apart);
      const isApart = (a: number, b: number) => apart.some(([x, y]) => x === a && y === b);
      for (let a = 0; a < 7; a += 1) {
        for (let b = a + 1; b < 7; b += 1) {
          const together = groups.some((group) => group.includes(a) && group.includes(b));
          expect(together).toBe(!isApart(a, b));
        }
      }
    });
    fc.assert(property, { seed: 1, numRuns: 200 });
  });
});
