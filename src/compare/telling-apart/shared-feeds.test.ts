import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { computeReductions, statementOptions } from '../../analyse/index.ts';
import { readBench } from '../../commands/read-bench.ts';
import { tellApart } from './index.ts';

const DEVICES = csv(
  'device,name,form,technology,tank,drain_line,acquired,interests',
  'a,Device A,pitcher,carbon,no,no,bought,none',
  'b,Device B,pitcher,carbon,no,no,bought,none',
);

/** Two devices; samples as `sample,position,device,event,kind,taken_at`, results as lab rows. */
function told(samples: readonly string[], results: readonly string[]) {
  const texts = {
    'devices.csv': DEVICES,
    'samples.csv': csv('sample,position,device,event,kind,taken_at', ...samples),
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
    return tellApart(computeReductions(bench, 86_400).facts, {
      ...statementOptions(bench),
      margin: 0.05,
    });
  });
}

describe('two devices', () => {
  it('on feeds of different events are not comparable, and count in no comparison', () => {
    const [found] = told(
      ['F1,feed,,one,,', 'F2,feed,,two,,', 'A,product,a,one,,', 'B,product,b,two,,'],
      ['F1 100', 'F2 100', 'A 10', 'B 60'],
    );
    expect(found).toMatchObject({ comparisons: 0, groups: [[0, 1]] });
    expect(found?.pairs).toMatchObject([{ verdict: 'not-comparable', passages: null }]);
  });

  it('are compared on natural and on spiked feeds apart, never across', () => {
    const found = told(
      [
        'F,feed,,tap,natural,',
        'A,product,a,tap,natural,',
        'B,product,b,tap,natural,',
        'FS,feed,,spike,spiked,',
        'AS,product,a,spike,spiked,',
        'BS,product,b,spike,spiked,',
      ],
      ['F 10', 'A 5', 'B 5.2', 'FS 500', 'AS 10', 'BS 200'],
    );
    expect(found.map(({ kind, pairs }) => [kind, pairs[0]?.verdict])).toEqual([
      ['natural', 'not-told-apart'],
      ['spiked', 'differ'],
    ]);
  });

  it('are not told apart where the feed moved by more than they differ', () => {
    const samples = ['F1,feed,,day,,', 'F2,feed,,day,,', 'A,product,a,day,,', 'B,product,b,day,,'];
    const steady = told(samples, ['F1 100', 'F2 101', 'A 20', 'B 40']);
    expect(steady[0]?.pairs[0]?.verdict).toBe('differ');
    const moved = told(samples, ['F1 60', 'F2 141', 'A 20', 'B 40']);
    expect(moved[0]?.pairs[0]).toMatchObject({
      verdict: 'not-told-apart',
      reason: 'the feed moved by more than the difference',
    });
  });

  it('are held against both ends where feeds before and after bracket them', () => {
    const samples = [
      'F1,feed,,before,,2026-07-06T08:00',
      'A,product,a,mid,,2026-07-06T09:00',
      'B,product,b,mid,,2026-07-06T09:00',
      'F2,feed,,after,,2026-07-06T10:00',
    ];
    const steady = told(samples, ['F1 100', 'A 20', 'B 60', 'F2 101']);
    expect(steady[0]?.pairs[0]?.verdict).toBe('differ');
    // One water may have been 50 and the other 150: 20/50 is as much as 60/150.
    const moved = told(samples, ['F1 50', 'A 20', 'B 60', 'F2 150']);
    expect(moved[0]?.pairs[0]?.verdict).toBe('not-told-apart');
  });

  it('are not told apart where two events point different ways', () => {
    const found = told(
      [
        'F1,feed,,one,,',
        'A1,product,a,one,,',
        'B1,product,b,one,,',
        'F2,feed,,two,,',
        'A2,product,a,two,,',
        'B2,product,b,two,,',
      ],
      ['F1 100', 'A1 10', 'B1 90', 'F2 100', 'A2 30', 'B2 10'],
    );
    expect(found[0]?.pairs[0]).toMatchObject({
      verdict: 'not-told-apart',
      reason: 'the events point different ways',
    });
  });
});
