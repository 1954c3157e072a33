import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { resultAt } from '../model/index.ts';
import { readBench } from './read-bench.ts';
import { type FeedFile, type ReadFeedOptions, readFeed } from './read-feed.ts';

/** A feed file beside the empty bench of the tests, read. */
function read(
  texts: Readonly<Record<string, string>>,
  options: ReadFeedOptions = {},
  name = 'other-feed/town.csv',
): FeedFile {
  return withBench(texts, (folder) =>
    readFeed(readBench(folder), join(folder, name), { benchFolder: folder, ...options }),
  );
}

const town = (...rows: readonly string[]) => ({ 'other-feed/town.csv': csv(...rows) });

/** What was read of the chosen sample: key and value. */
function valuesOf({ results, sample }: FeedFile): [string, number][] {
  return Array.from({ length: results.length }, (_, index) => index).flatMap((index) => {
    const result = resultAt(results, index);
    const key = results.analytes[results.analyte[index] ?? -1]?.key ?? '';
    const isChosen = results.sample[index] === sample?.index && result.kind === 'quantified';
    return isChosen ? [[key, result.value] as [string, number]] : [];
  });
}

const shown = ({ findings }: FeedFile) =>
  findings
    .filter(({ level }) => level === 'error')
    .map(({ code, place }) => `${code} ${place.file}:${place.line ?? '-'}`);

describe('a feed file', () => {
  it('may be no more than analyte, result and unit', () => {
    const file = read(town('analyte,result,unit', 'lead,12,ug/L', 'pH,7.4,'));
    expect(shown(file)).toEqual([]);
    expect(file.sample?.name).toBe('town');
    expect(valuesOf(file)).toEqual([
      ['lead', 12],
      ['ph', 7.4],
    ]);
  });

  it('may have one column per analyte and no name of the water', () => {
    const file = read(town('Lead (ug/L),Copper (mg/L),Zinc (ug/L)', '12,0.2,30'));
    expect(shown(file)).toEqual([]);
    expect(valuesOf(file)).toHaveLength(3);
  });

  it('may be a report with one column per zone, of which one is chosen', () => {
    const report = town('Parameter,Unit,North,South', 'Lead,ug/L,2,3', 'Copper,mg/L,0.1,0.2');
    const asked = read(report);
    expect(asked.sample).toBeNull();
    expect(asked.findings.at(-1)?.message).toBe('the file holds 2 samples: "North", "South"');
    expect(valuesOf(read(report, { sample: 'South' }))).toEqual([
      ['lead', 3],
      ['copper', 200],
    ]);
    const unknown = read(report, { sample: 'West' });
    expect(shown(unknown)).toEqual(['feed-sample-unclear other-feed/town.csv:-']);
    expect(unknown.findings.at(-1)?.remedy).toContain('"North", "South"');
  });

  it('is chosen by the name of the sample or by the number of the lab', () => {
    const rows = town(
      'Lab Sample ID,Client Sample ID,Analyte,Result,Units',
      'A-1,well,Lead,2,ug/L',
      'A-2,tap,Lead,3,ug/L',
    );
    expect(valuesOf(read(rows, { sample: 'tap' }))).toEqual([['lead', 3]]);
    expect(valuesOf(read(rows, { sample: 'A-1' }))).toEqual([['lead', 2]]);
  });

  it('leaves out samples of quality control', () => {
    const file = read(
      town('Sample ID,Analyte,Result,Units', 'tap,Lead,2,ug/L', 'MB-1,Lead,0.1,ug/L'),
    );
    expect(file.sample?.name).toBe('tap');
  });

  it('is ruled by a sidecar beside it, which counts as an input', () => {
    const rows = csv('what;much;of', 'Lead;2,5;ug/L');
    const sidecar = {
      layout: 'long',
      delimiter: ';',
      decimal_mark: ',',
      header_row: 1,
      header: ['what', 'much', 'of'],
      columns: { analyte: 'what', result: 'much', unit: 'of' },
    };
    const file = read({
      'other-feed/town.csv': rows,
      'other-feed/town.layout.json': JSON.stringify(sidecar),
    });
    expect(shown(file)).toEqual([]);
    expect(valuesOf(file)).toEqual([['lead', 2.5]]);
    expect(file.inputs.map(({ path }) => path)).toEqual([
      'other-feed/town.csv',
      'other-feed/town.layout.json',
    ]);
    const broken = read({
      'other-feed/town.csv': rows,
      'other-feed/town.layout.json': JSON.stringify({ ...sidecar, layout: 'tall' }),
    });
    expect(shown(broken)).toEqual(['value-unexpected other-feed/town.layout.json:1']);
  });

  it('is asked about where it cannot be read, with a remedy that fits it', () => {
    const unclear = read(town('first,second', '1,2'));
    expect(shown(unclear)).toEqual(['layout-unclear other-feed/town.csv:1']);
    expect(unclear.findings[0]?.remedy).toContain('write town.layout.json beside it');
    expect(shown(read(town('analyte,result,unit', 'lead,2,blobs/L')))).toEqual([
      'unit-unknown other-feed/town.csv:2',
    ]);
    const twice = read(town('analyte,result,unit', 'lead,2,ug/L', 'lead,3,ug/L'));
    expect(shown(twice)).toEqual(['result-repeated other-feed/town.csv:3']);
    expect(twice.findings.at(-1)?.remedy).toContain('--feed-sample');
    expect(shown(read({ 'other-feed/town.csv': '' }))).toEqual([
      'file-empty other-feed/town.csv:-',
    ]);
    expect(shown(read(town('analyte,result,unit')))).toEqual([
      'feed-not-common other-feed/town.csv:-',
    ]);
  });

  it('cannot be read where it is not there', () => {
    expect(() => read({}, {}, 'none.csv')).toThrow(
      expect.objectContaining({ code: 'file-unreadable' }),
    );
  });

  it('is named from the bench where it lies inside, else by its own name', () => {
    const texts = town('analyte,result,unit', 'lead,12,ug/L');
    expect(read(texts).path).toBe('other-feed/town.csv');
    expect(read(texts, { benchFolder: '/nowhere' }).path).toBe('town.csv');
  });
});
