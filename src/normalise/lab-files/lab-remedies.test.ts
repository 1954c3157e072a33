import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';

const SAMPLES = csv('sample,position,device,event', 'f,feed,,day');
const LAYOUT = {
  layout: 'long',
  delimiter: ',',
  decimal_mark: '.',
  header_row: 1,
  header: ['Sample', 'Analyte', 'Result', 'Units', 'RL'],
  columns: { lab_sample: 'Sample', analyte: 'Analyte', result: 'Result', unit: 'Units', rl: 'RL' },
};

function errors(row: string, beside: Record<string, string> = {}) {
  const texts = {
    'samples.csv': SAMPLES,
    'lab/july.csv': csv('Sample,Analyte,Result,Units,RL', row),
    ...beside,
  };
  return withBench(texts, (folder) =>
    readBench(folder).findings.filter(({ level }) => level === 'error'),
  );
}

const sidecar = (more: object) => ({
  'lab/july.layout.json': JSON.stringify({ ...LAYOUT, ...more }),
});

describe('the remedy of a cell of a lab file', () => {
  it('with an unknown unit is an alias in the sidecar of that file, which clears it', () => {
    const row = 'f,Lead,12,ugl/x,1';
    const [found] = errors(row);
    expect(found?.code).toBe('unit-unknown');
    expect(found?.remedy).toContain('lab/july.layout.json');
    expect(found?.remedy).toContain('"unit_aliases": {"ugl/x":"mg/L"}');
    expect(errors(row, sidecar({ unit_aliases: { 'ugl/x': 'ug/L' } }))).toEqual([]);
  });

  it('without a basis is a basis in the sidecar, which clears it', () => {
    const row = 'f,Nitrate,12,mg/L,1';
    const [found] = errors(row);
    expect(found?.code).toBe('basis-unstated');
    expect(found?.remedy).toContain('lab/july.layout.json');
    expect(errors(row, sidecar({ basis: { nitrate: 'as NO3' } }))).toEqual([]);
  });

  it('with an unknown name is an alias in analytes.csv, which clears it', () => {
    const row = 'f,Plumbum totale,12,ug/L,1';
    const [found] = errors(row);
    expect(found?.code).toBe('analyte-unknown');
    expect(found?.remedy).toContain('analytes.csv');
    const extra = { 'analytes.csv': csv('key,aliases', 'lead,Plumbum totale') };
    expect(errors(row, extra)).toEqual([]);
  });

  it('that a rename would falsify never proposes one', () => {
    const [found] = errors('f,Conductivity,500,uS/cm @20C,1');
    expect(found?.remedy).not.toContain('unit_aliases');
    expect(found?.remedy).toContain('never converts');
  });

  it('never asks to write into the file of the lab', () => {
    for (const row of [
      'f,Lead,12,ugl/x,1',
      'f,Lead,12,,1',
      'f,Nitrate,12,mg/L,1',
      'f,Xy,1,ug/L,1',
    ]) {
      for (const { remedy } of errors(row)) expect(remedy).not.toMatch(/\bwrite\b(?!-)/);
    }
  });
});
