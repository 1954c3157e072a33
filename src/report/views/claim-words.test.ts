import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { claims } from '../../commands/claims.ts';
import { readBench } from '../../commands/read-bench.ts';
import type { ClaimRow } from '../../model/index.ts';
import { rangeText } from './claim-words.ts';

/** The row and the printed table of one claim on lead with a trace in the product. */
function told(claimed: string, product: string, feed = '10') {
  const texts = {
    'claims.csv': csv(
      'device,claim,analyte,comparator,value,evidence',
      `ro,so it says,lead,${claimed},stated`,
    ),
    'samples.csv': csv('sample,position,device,event', 'F,feed,,day', 'P,product,ro,day'),
    'lab/lab.csv': csv(
      'Sample ID,Analyte,Result,Units,MDL,RL',
      `F,Lead,${feed},ug/L,0.2,1`,
      `P,Lead,${product},ug/L,0.2,1`,
    ),
  };
  return withBench(texts, (folder) => {
    const outcome = claims(readBench(folder));
    return { row: outcome.rows[0] as ClaimRow, views: outcome.views };
  });
}

describe('the words of a claim', () => {
  it('quote the claim and say what it asks for', () => {
    const { views } = told('at-least,99.95 %', 'ND');
    expect(views[0]?.rows[0]?.slice(0, 4)).toEqual([
      'ro',
      'so it says',
      'stated',
      'at least 99.95 %',
    ]);
  });

  it('never print a miss that rounds onto the claim', () => {
    // The bounds of every pair are somewhere near 1 - 0.2/feed; the claim is set right beside them.
    for (const feed of ['10', '33', '70', '140']) {
      const { row } = told('at-least,99.9999 %', '0.5 J', feed);
      const high = row.interval.high ?? 1;
      const beside = told(`at-least,${(high * 100 + 0.0001).toFixed(6)} %`, '0.5 J', feed);
      expect(beside.row.events[0]?.decision).toBe('misses');
      const printed = /at most ([\d.]+) %/.exec(beside.row.reason)?.[1];
      if (printed === undefined) expect(beside.row.reason).toContain('just less than claimed');
      else expect(Number(printed)).toBeLessThan(high * 100 + 0.0001);
    }
  });

  it('hedge: no claim is called true, safe or certified by a result', () => {
    const words = ['at-least,50 %', 'at-least,99.9 %', 'up-to,99 %', 'at-most-level,5 ug/L'].map(
      (claimed) => {
        const { row, views } = told(claimed, 'ND');
        return `${row.reason} ${views[0]?.rows.flat().join(' ')} ${views[0]?.caption}`;
      },
    );
    expect(words.join(' ')).not.toMatch(/\b(true|proven|proves|safe|pure|eliminates|100 %)/i);
  });

  it('carry the caution that a before/after test is no certification', () => {
    const { views } = told('at-least,50 %', 'ND');
    expect(views[0]?.legend.join(' ')).toContain('no certification');
  });
});

describe('a range in words', () => {
  it('is a figure, a bound or two ends', () => {
    expect(rangeText({ low: 2, high: 2 })).toBe('2');
    expect(rangeText({ low: 0, high: 0.5 })).toBe('< 0.5');
    expect(rangeText({ low: 0.1, high: 0.5 })).toBe('0.1 to 0.5');
    expect(rangeText({ low: 2420, high: Number.POSITIVE_INFINITY })).toBe('> 2420');
  });

  it('never says infinity or not a number', () => {
    const end = fc.double({ min: 0, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(end, end, (a, b) => {
        expect(rangeText({ low: Math.min(a, b), high: Math.max(a, b) })).not.toMatch(
          /NaN|Infinity/,
        );
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
