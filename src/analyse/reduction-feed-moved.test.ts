import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { readBench } from '../commands/read-bench.ts';
import { computeReductions } from './reductions.ts';

/** Messages of the feeds that moved; results of lead as `sample figure`. */
function moved(samples: readonly string[], results: readonly string[]): string[] {
  const texts = {
    'devices.csv': csv(
      'device,name,form,technology,tank,drain_line,acquired,interests',
      'a,Device A,pitcher,carbon,no,no,bought,none',
    ),
    'samples.csv': csv('sample,position,device,event,kind,taken_at', ...samples),
    'lab/lab.csv': csv(
      'Sample ID,Analyte,Result,Units,MDL,RL',
      ...results.map((text) => `${text.replace(' ', ',Lead,')},ug/L,0.1,0.5`),
    ),
  };
  return withBench(texts, (folder) =>
    computeReductions(readBench(folder), 86_400).findings.flatMap(({ code, message }) =>
      code === 'feed-moved' ? message : [],
    ),
  );
}

const WITHIN = ['F1,feed,,day,,', 'F2,feed,,day,,', 'P,product,a,day,,'];
const AROUND = [
  'F1,feed,,early,,2026-07-06T08:00',
  'P,product,a,mid,,2026-07-06T09:00',
  'F2,feed,,late,,2026-07-06T10:00',
];
const BETWEEN = ['F1,feed,,one,,', 'P1,product,a,one,,', 'F2,feed,,two,,', 'P2,product,a,two,,'];

describe('a feed that moved by more than the difference claimed', () => {
  it('is found between the feed samples of one event', () => {
    const samples = [...WITHIN, 'F3,feed,,day,,'];
    expect(moved(samples, ['F1 100', 'F2 100', 'F3 160', 'P 66'])).toMatchObject([
      expect.stringContaining('moved by 60 ug/L within day; the smallest difference claimed is 54'),
    ]);
  });

  it('is found between the feeds before and after a product', () => {
    expect(moved(AROUND, ['F1 50', 'P 5', 'F2 150'])).toMatchObject([
      expect.stringContaining(
        'moved by 100 ug/L around mid; the smallest difference claimed is 45',
      ),
    ]);
  });

  it('is found between the events of a device', () => {
    expect(moved(BETWEEN, ['F1 20', 'P1 1', 'F2 100', 'P2 1'])).toMatchObject([
      expect.stringContaining('moved by 80 ug/L between the events'),
    ]);
  });

  it.each([
    ['a steady feed', WITHIN, ['F1 100', 'F2 101', 'P 10']],
    ['a feed that moved by less than the reduction', AROUND, ['F1 100', 'P 5', 'F2 150']],
    ['no reduction claimed', WITHIN, ['F1 100', 'F2 200', 'P 149']],
    ['one feed', ['F,feed,,day,,', 'P,product,a,day,,'], ['F 100', 'P 1']],
    ['no results', WITHIN, []],
  ])('is no finding with %s', (_what, samples, results) => {
    expect(moved(samples, results)).toEqual([]);
  });

  it('never sets a natural against a spiked feed', () => {
    const samples = [
      'F1,feed,,one,natural,',
      'P1,product,a,one,natural,',
      'F2,feed,,two,spiked,',
      'P2,product,a,two,spiked,',
    ];
    expect(moved(samples, ['F1 10', 'P1 1', 'F2 900', 'P2 1'])).toEqual([]);
  });
});
