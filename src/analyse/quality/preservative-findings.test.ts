import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import { qualityFindings } from './index.ts';
import { preservativesIn } from './preservatives.ts';

function found(preservative: string, ...results: readonly string[]) {
  const texts = {
    'samples.csv': csv(
      'sample,position,device,event,kind,taken_at',
      'f,feed,,day,,2026-07-01T08:00',
    ),
    'bottles.csv': csv('sample,lab,lab_sample,preservative', `f,july,L-1,${preservative}`),
    'lab/july.csv': csv('Sample,Analyte,Result,Units,RL', ...results.map((row) => `L-1,${row}`)),
  };
  return withBench(texts, (folder) =>
    qualityFindings(readBench(folder))
      .filter(({ code }) => code.startsWith('preservative-'))
      .map(({ code, message }) => `${code}: ${message}`),
  );
}

const NITRATE = 'Nitrate as N,2.1,mg/L,0.1';
const LEAD = 'Lead,5,ug/L,1';
const AMMONIA = 'Ammonia as N,0.2,mg/L,0.05';
const COLIFORM = 'E. coli,3,MPN/100 mL,1';

describe('a logged preservative', () => {
  it('that adds what was tested spoils it', () => {
    expect(found('nitric acid', NITRATE, LEAD)).toEqual([
      'preservative-spoils: Nitrate of f stood in nitric acid, which adds or destroys them',
    ]);
  });

  it('that kills bacteria spoils their count, and is not also called missing', () => {
    const messages = found('HCl', COLIFORM);
    expect(messages).toHaveLength(1);
    expect(messages[0]).toContain('preservative-spoils');
  });

  it('of a kit of several bottles spoils nothing, since which held which is not logged', () => {
    expect(found('kit: none; nitric acid', NITRATE, LEAD)).toEqual([]);
  });

  it('that does not keep what was tested is a note, also in a kit', () => {
    const [message] = found('kit: none; nitric acid', AMMONIA, LEAD);
    expect(message).toContain('preservative-missing: Ammonia');
    expect(message).toContain('sulfuric acid');
    expect(found('sulphuric acid', AMMONIA)).toEqual([]);
  });

  it('says nothing where the cell is blank or in words that are not known', () => {
    expect(found('', NITRATE, AMMONIA)).toEqual([]);
    expect(found('as supplied', NITRATE, AMMONIA)).toEqual([]);
  });

  it('none is fine for metals, which a lab may acidify on receipt', () => {
    expect(found('none', LEAD, NITRATE)).toEqual([]);
  });
});

describe('the words of a preservative cell', () => {
  it('are read in formulas and in both spellings', () => {
    expect(preservativesIn('HNO3 to pH<2')).toEqual(['nitric acid']);
    expect(preservativesIn('Na2S2O3 (thiosulphate)')).toEqual(['sodium thiosulfate']);
    expect(preservativesIn('NaOH')).toEqual(['sodium hydroxide']);
    expect(preservativesIn('ice')).toEqual([]);
  });
});
