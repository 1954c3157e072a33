import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { computeReductions, statementOptions } from '../../analyse/index.ts';
import { readBench } from '../../commands/read-bench.ts';
import { holm, notToldApartGroups, tellApart } from './index.ts';

const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';

/** Products of devices a, b, c … on one feed of lead. */
function compare(feed: string, products: readonly string[], margin = 0.05) {
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
    expect(found?.pairs).toMatchObject([{ verdict: 'told-apart', lower: 'a', firm: false }]);
    expect(found?.groups).toEqual([[0], [1]]);
  });

  it('are not told apart where they differ by less', () => {
    const found = compare('100,ug/L,0.1,0.5', ['50,ug/L,0.1,0.5', '52,ug/L,0.1,0.5']);
    expect(found?.pairs).toMatchObject([{ verdict: 'not-told-apart' }]);
  });

  it('are never ranked by bounds at different limits', () => {
    const found = compare('1000,ug/L,0.1,0.5', ['ND,ug/L,0.1,0.5', 'ND,ug/L,20,50'], 0.001);
    expect(found?.pairs).toMatchObject([{ verdict: 'not-told-apart', lower: null, p: 1 }]);
  });

  it('are equivalent where bounds leave no difference beyond the margin', () => {
    const found = compare('1000,ug/L,0.1,0.5', ['ND,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5']);
    expect(found?.pairs).toMatchObject([{ verdict: 'equivalent' }]);
  });

  it('are told apart where a figure lies above the bound of the other', () => {
    const found = compare('100,ug/L,0.1,0.5', ['ND,ug/L,0.1,0.5', '20,ug/L,0.1,0.5']);
    expect(found?.pairs).toMatchObject([{ verdict: 'told-apart', lower: 'a' }]);
  });

  it('with no second device are not compared', () => {
    expect(compare('100,ug/L,0.1,0.5', ['10,ug/L,0.1,0.5'])).toBeUndefined();
  });
});

describe('many devices', () => {
  it('that all do the same are seldom told apart: comparisons are respected', () => {
    expect(holm([0.01, 0.04, 0.03])).toEqual([0.03, 0.06, 0.06]);
    expect(holm([])).toEqual([]);
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
