import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { computeReductions, statementOptions } from '../analyse/index.ts';
import { readBench } from '../commands/read-bench.ts';
import { summariseReductions } from './reduction-summary.ts';

/** One device on two natural feeds; results of lead as `sample result`, limits 0.1 and 0.5 ug/L. */
function summaryOf(results: readonly string[]) {
  const texts = {
    'devices.csv': csv(
      'device,name,form,technology,tank,drain_line,acquired,interests',
      'a,Device A,pitcher,carbon,no,no,bought,none',
    ),
    'samples.csv': csv(
      'sample,position,device,event,kind',
      'F1,feed,,tap,natural',
      'P1,product,a,tap,natural',
      'F2,feed,,barrel,natural',
      'P2,product,a,barrel,natural',
    ),
    'lab/lab.csv': csv(
      'Sample ID,Analyte,Result,Units,MDL,RL',
      ...results.map((text) => {
        const [sample = '', result = ''] = text.split(' ');
        return `${sample},Lead,${result},ug/L,0.1,0.5`;
      }),
    ),
  };
  return withBench(texts, (folder) => {
    const bench = readBench(folder);
    expect(bench.findings.filter(({ level }) => level === 'error')).toEqual([]);
    const { facts } = computeReductions(bench, 86_400);
    return summariseReductions(facts, statementOptions(bench))[0];
  });
}

describe('the headline over several events', () => {
  it('is not hidden by an event whose feed held nothing to reduce', () => {
    const both = summaryOf(['F1 ND', 'P1 ND', 'F2 40', 'P2 10']);
    const alone = summaryOf(['F2 40', 'P2 10']);
    expect(both?.outcome).toBe('measured');
    expect(both?.estimate).toBeCloseTo(0.75, 12);
    expect([both?.low, both?.high, both?.worstLow]).toEqual([
      alone?.low,
      alone?.high,
      alone?.worstLow,
    ]);
    // The silent event stays among the events, with its product.
    expect(both?.facts).toHaveLength(2);
  });

  it('keeps an event that shows no reduction, or that only a complete one would contradict', () => {
    expect(summaryOf(['F1 40', 'P1 41', 'F2 40', 'P2 10'])?.estimate).toBeCloseTo(1 - 51 / 80, 12);
    // The product holds what the feed may not have held: a reduction in full is ruled out.
    const held = summaryOf(['F1 ND', 'P1 0.45', 'F2 40', 'P2 10']);
    expect(held?.estimate).toBeNull();
  });

  it('says that the feeds held too little where no event shows anything', () => {
    expect(summaryOf(['F1 ND', 'P1 ND', 'F2 ND', 'P2 ND'])?.outcome).toBe('untestable');
  });

  it('does not depend on which of the events comes first', () => {
    const one = summaryOf(['F1 ND', 'P1 ND', 'F2 40', 'P2 10']);
    const other = summaryOf(['F1 40', 'P1 10', 'F2 ND', 'P2 ND']);
    expect([one?.outcome, one?.low, one?.high]).toEqual([other?.outcome, other?.low, other?.high]);
  });
});
