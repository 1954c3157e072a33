import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { readBench } from './read-bench.ts';
import { reductions } from './reductions.ts';

const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';

/** The table of several events, of lead at one event a pair `feed product`. */
function tableOf(pairs: readonly string[]): readonly (readonly string[])[] {
  const texts = {
    'samples.csv': csv(
      'sample,position,device,event',
      ...pairs.flatMap((_, at) => [`F${at},feed,,e${at}`, `P${at},product,jug,e${at}`]),
    ),
    'lab/lab.csv': csv(
      LAB,
      ...pairs.flatMap((pair, at) => {
        const [feed = '', product = ''] = pair.split(' ');
        return [`F${at},Lead,${feed},ug/L,0.1,0.5`, `P${at},Lead,${product},ug/L,0.1,0.5`];
      }),
    ),
  };
  return withBench(texts, (folder) => {
    const { views } = reductions(readBench(folder));
    const view = views.find(({ caption }) => caption.startsWith('Several events together'));
    if (view !== undefined) expect(view.columns.map(({ head }) => head)).toContain('Geometric');
    return view?.rows ?? [];
  });
}

describe('the table of several events', () => {
  it('prints n, the interval of the means and the geometric one under its name', () => {
    // Pairs recomputed in R: ratio of means 97.90286976 %; geometric 97.93228103 % with t limits
    // 96.750907 and 98.684106 %. Printed to two digits of the width, ends rounded outward.
    const [row] = tableOf(['150 3', '148 2.6', '155 3.9']);
    expect(row?.slice(0, 4)).toEqual(['jug', 'Lead', '3', '0']);
    expect(row?.[4]).toMatch(/^97\.9/);
    expect(row?.[5]).toBe('97.9 % (96.7 to 98.7)');
  });

  it('is not printed below three pairs, nor with few pairs of which one is censored', () => {
    expect(tableOf(['150 3', '148 2.6'])).toEqual([]);
    expect(tableOf(['150 3', '148 2.6', '155 ND'])).toEqual([]);
    expect(tableOf([])).toEqual([]);
  });

  it('says how many pairs are censored, and gives no interval of their means', () => {
    const figures = ['10 1', '10 1.2', '10 0.8', '10 1.1', '10 0.9', '10 1.3'];
    const [row] = tableOf([...figures, '10 ND', '10 ND']);
    expect(row?.slice(2, 5)).toEqual(['8', '2', '']);
    expect(row?.[5]).toMatch(/^\d/);
  });
});
