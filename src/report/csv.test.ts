import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReductionRow } from '../model/index.ts';
import { csvText } from './csv.ts';

const SIDE = {
  low: 0,
  high: 0.2,
  estimate: null,
  n: 1,
  method: 'one result',
  sample: 'S-1',
};

const ROW: ReductionRow = {
  device: 'a',
  variant: 'standard',
  event: 'day-1',
  kind: 'natural',
  analyte: 'lead',
  outcome: 'at-least',
  firm: true,
  rise_p: 1,
  unit: 'ug/L',
  feed: { ...SIDE, low: 12.4, high: 12.4, estimate: 12.4 },
  product: SIDE,
  uncertainty: { feed: 1.4, feed_from: 'assumed', product: null, product_from: null },
  reduction: {
    low: 0.9838709677419355,
    high: null,
    estimate: null,
    interval_low: null,
    interval_high: null,
    confidence: null,
    low_at_detection_limit: null,
    bound_limit: 'reporting',
  },
  log_reduction: null,
  reference_levels: [
    {
      jurisdiction: 'Here',
      kind: 'limit',
      low: null,
      value: 10,
      unit: 'ug/L',
      basis: null,
      verdict: 'within',
      source: 'a source; with a semicolon',
      verified: 'seen',
    },
    {
      jurisdiction: 'There',
      kind: 'guide',
      low: 6.5,
      value: 8.5,
      unit: 'mg/L',
      basis: 'as N',
      verdict: 'cannot-say',
      source: 'another',
      verified: 'from memory',
    },
  ],
  findings: ['rise-shown', 'limit-above-level'],
};

async function records(rows: readonly object[]): Promise<Record<string, string>[]> {
  return parse(await csvText('reductions/1', rows), { columns: true });
}

async function headerOf(schema: Parameters<typeof csvText>[0]): Promise<string> {
  return (await csvText(schema, [])).trimEnd();
}

describe('CSV of rows', () => {
  it('joins nested keys with an underscore and leaves null empty', async () => {
    const [row] = await records([ROW]);
    expect(row).toMatchObject({
      feed_low: '12.4',
      reduction_low: '0.9838709677419355',
      reduction_high: '',
      firm: 'true',
    });
  });

  it('has the columns of an object that is null in every row', async () => {
    const [row] = await records([ROW]);
    expect(row).toMatchObject({ log_reduction_low: '', log_reduction_high: '' });
    expect(row).not.toHaveProperty('log_reduction');
  });

  it('joins lists in one cell and words reference levels', async () => {
    const [row] = await records([ROW]);
    expect(row).toMatchObject({
      findings: 'rise-shown;limit-above-level',
      reference_levels: 'Here limit 10 ug/L: within; There guide 6.5 to 8.5 mg/L as N: cannot-say',
    });
  });

  it('prints the header for an empty list of rows', async () => {
    expect(await headerOf('water-curve/1')).toBe(
      'device,variant,pour_mL,total_drain_ratio,low,high,recovery,pours_per_day',
    );
    expect(await headerOf('findings/1')).toBe(
      'level,code,message,remedy,place_file,place_line,place_column,place_field,place_cell',
    );
    expect(await headerOf('reductions/1')).toBe(
      (await csvText('reductions/1', [ROW])).split('\n')[0],
    );
  });

  it('puts keys a row has beyond the schema behind its columns', async () => {
    const text = await csvText('water-curve/1', [{ device: 'a' }, { device: 'b', extra: 1 }]);
    expect(text).toBe(
      'device,variant,pour_mL,total_drain_ratio,low,high,recovery,pours_per_day,extra\na,,,,,,,,\nb,,,,,,,,1\n',
    );
  });

  it('disarms formulas in texts and leaves negative numbers alone', async () => {
    const texts = ['=1+1', '+0.8 mg/L', '-2', '@x', '\tx', '\rx', 'a=b'];
    const rows = texts.map((device) => ({ device, variant: '', pour_mL: -2.5 }));
    const read: string[][] = parse(await csvText('water-curve/1', rows), { from_line: 2 });
    expect(read.map(([device]) => device)).toEqual([
      "'=1+1",
      "'+0.8 mg/L",
      "'-2",
      "'@x",
      "'\tx",
      "'\rx",
      'a=b',
    ]);
    expect(read.map((cells) => cells[2])).toEqual(texts.map(() => '-2.5'));
  });

  it('disarms a list by its first item', async () => {
    const text = await csvText('water-use/1', [{ findings: ['=x', 'y'] }]);
    expect(text).toContain("'=x;y");
  });

  it('writes neither -0 nor what is not a number', async () => {
    const text = await csvText('water-curve/1', [
      { device: 'a', variant: 'b', pour_mL: -0, total_drain_ratio: Number.NaN },
    ]);
    expect(text.split('\n')[1]).toBe('a,b,0,,,,,');
  });

  it('has no byte-order mark and ends lines with a line feed only', async () => {
    const text = await csvText('reductions/1', [ROW, ROW]);
    expect(text).not.toMatch(/\ufeff|\r/);
    expect(text.endsWith('\n')).toBe(true);
  });

  it('gives any text back through a CSV reader, but for the apostrophe', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.string({ unit: 'grapheme' }), { minLength: 1, maxLength: 5 }),
        async (names) => {
          const rows = names.map((device) => ({ device, variant: 'v', pour_mL: 1 }));
          const text = await csvText('water-curve/1', rows);
          const read: string[][] = parse(text, { from: 2, record_delimiter: '\n' });
          expect(read.map(([cell]) => cell?.replace(/^'(?=[=+\-@\t\r])/, ''))).toEqual(names);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});
