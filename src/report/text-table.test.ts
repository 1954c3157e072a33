import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { displayWidth } from './display-width.ts';
import { colourStyle } from './style.ts';
import { textTables } from './text-table.ts';
import type { View } from './view.ts';

const left = (head: string) => ({ head, align: 'left' }) as const;
const right = (head: string) => ({ head, align: 'right' }) as const;

const VIEW: View = {
  caption: 'Lead was not detected behind one of two devices',
  columns: [left('device'), right('reduction'), left('remark')],
  rows: [
    ['Tankless A', '≥ 98.4 %', 'not detected'],
    ['Pitcher B', '91.6 % (90.1 to 92.9)', ''],
  ],
  legend: ['≥: at least'],
};

/** Sixteen columns of figures: wider than any usual terminal. */
const WIDE: View = {
  caption: 'Many figures',
  columns: [left('device'), ...Array.from({ length: 15 }, (_, i) => right(`analyte ${i}`))],
  rows: ['Tankless A', 'Pitcher B'].map((device, row) => [
    device,
    ...Array.from({ length: 15 }, (_, i) => `${row}${i}.123456 mg/L`),
  ]),
  legend: [],
};

function widest(text: string): number {
  return Math.max(...text.split('\n').map(displayWidth));
}

describe('tables for the terminal', () => {
  it('have the caption above, the legend below, text left and numbers right', async () => {
    expect(textTables([VIEW], 80)).toBe(
      [
        'Lead was not detected behind one of two devices',
        '',
        'device                  reduction  remark',
        '───────────────────────────────────────────────',
        'Tankless A               ≥ 98.4 %  not detected',
        'Pitcher B   91.6 % (90.1 to 92.9)',
        '',
        '≥: at least',
        '',
      ].join('\n'),
    );
  });

  it('wrap long texts and stay within 80 and 120 columns', async () => {
    const remark = 'a remark that is longer than any terminal is wide '.repeat(5).trim();
    const view = { ...VIEW, rows: [['Tankless A', '≥ 98.4 %', remark]] };
    for (const width of [80, 120]) {
      const text = textTables([view], width);
      expect(widest(text)).toBeLessThanOrEqual(width);
      expect(text.replace(/\s+/g, ' ')).toContain('a remark that is longer');
      expect(text.match(/remark that/g)?.length ?? 0).toBeLessThanOrEqual(5);
    }
  });

  it('split into several tables that repeat the first column, every figure whole', async () => {
    for (const width of [80, 120]) {
      const text = textTables([WIDE], width);
      expect(widest(text)).toBeLessThanOrEqual(width);
      expect(text.match(/^device /gm)?.length).toBeGreaterThan(1);
      for (const cell of WIDE.rows.flat()) expect(text).toContain(cell);
    }
  });

  it('repeat as many columns as it takes to tell the rows apart', async () => {
    const view: View = {
      ...WIDE,
      columns: [left('device'), left('variant'), ...WIDE.columns.slice(1)],
      rows: WIDE.rows.map((row, i) => ['A', i === 0 ? 'standard' : 'flush-off', ...row.slice(1)]),
    };
    const text = textTables([view], 80);
    const tables = text.match(/^device +variant/gm)?.length ?? 0;
    expect(tables).toBeGreaterThan(1);
    expect(text.match(/^A +flush-off/gm)).toHaveLength(tables);
  });

  it('never cut a figure, even where it alone is wider than the terminal', async () => {
    const figure = '1234567890'.repeat(6);
    const view = { ...VIEW, columns: [left('device'), right('n')], rows: [['A', figure]] };
    expect(textTables([view], 40)).toContain(figure);
  });

  it('say that there are no rows', async () => {
    const text = textTables([{ ...VIEW, rows: [] }], 80);
    expect(text).toContain('device  reduction  remark');
    expect(text).toContain('no rows');
  });

  it('are empty for no views, and stand apart for two', async () => {
    expect(textTables([], 80)).toBe('');
    expect(textTables([VIEW, VIEW], 80).split('\n\n\n')).toHaveLength(2);
  });

  it('write terminal sequences of a cell out instead of obeying them', async () => {
    const view = { ...VIEW, rows: [['\u001b[31mA\u001b[0m', '\u009b2J', 'a\u202eb\tc']] };
    const text = textTables([view], 80);
    for (const sign of ['\u001b', '\u009b', '\u202e']) expect(text).not.toContain(sign);
    expect(text).toContain('\\u001b[31mA');
  });

  it('align wide characters by the columns they take', async () => {
    const view = { ...VIEW, rows: [['日本', '1', 'x'] as const, ['ab', '1', 'x'] as const] };
    const rows = textTables([view], 80).split('\n').slice(4, 6);
    expect(displayWidth(rows[0] ?? '')).toBe(displayWidth(rows[1] ?? ''));
    expect(rows[0]?.length).toBeLessThan(rows[1]?.length ?? 0);
  });

  it('colour nothing unless a style is given', async () => {
    expect(textTables([VIEW], 80)).not.toContain('\u001b');
    const styled = textTables([VIEW], 80, await colourStyle(1));
    expect(styled).toContain('\u001b[1mdevice\u001b[22m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the sequences of a style
    const bare = styled.replace(/\u001b\[\d+m/g, '');
    expect(bare.replace(/ +$/gm, '')).toBe(textTables([VIEW], 80));
  });

  it('refuse a row with more cells than columns', async () => {
    const view = { ...VIEW, rows: [['a', 'b', 'c', 'd']] };
    expect(() => textTables([view], 80)).toThrow(RangeError);
  });

  it('keep every word of every cell at any width', async () => {
    const words = fc.array(fc.stringMatching(/^[a-z]{1,8}$/), { maxLength: 6 });
    const table = fc.array(fc.tuple(words, words, words), { maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(table, fc.integer({ min: 30, max: 120 }), async (rows, width) => {
        const view = { ...VIEW, rows: rows.map((row) => row.map((cell) => cell.join(' '))) };
        const text = textTables([view], width);
        for (const word of rows.flat(2)) expect(text).toContain(word);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
