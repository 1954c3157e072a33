import { describe, expect, it } from 'vitest';
import { finding } from '../findings/index.ts';
import type { Outcome } from './outcome.ts';
import { FORMATS, render } from './render.ts';

const OUTCOME: Outcome = {
  schema: 'water-curve/1',
  bench: null,
  inputs: [],
  settings: {},
  rows: [{ device: 'a', variant: 'standard', pour_mL: 250, total_drain_ratio: 2 }],
  findings: [finding('scenarios-missing', 'no scenario', 'add one')],
  views: [
    {
      caption: 'One curve',
      columns: [{ head: 'device', align: 'left' }],
      rows: [['a']],
      legend: [],
    },
  ],
};

const CHECKED: Outcome = { ...OUTCOME, schema: 'findings/1', rows: [], views: [] };
const OPTIONS = { width: 80, version: '1.0.0' };

describe('an outcome in a format', () => {
  it('gives views to people and rows to machines', async () => {
    expect(await render(OUTCOME, 'table', OPTIONS)).toBe('One curve\n\ndevice\n──────\na\n');
    expect(await render(OUTCOME, 'md', OPTIONS)).toBe(
      '**One curve**\n\n| device |\n| --- |\n| a |\n',
    );
    expect(await render(OUTCOME, 'csv', OPTIONS)).toBe(
      'device,variant,pour_mL,total_drain_ratio,low,high,recovery,pours_per_day\na,standard,250,2,,,,\n',
    );
    expect(JSON.parse(await render(OUTCOME, 'json', OPTIONS))).toMatchObject({
      tool: { version: '1.0.0' },
      rows: OUTCOME.rows,
    });
  });

  it('prints findings as the data of findings/1 in every format', async () => {
    for (const format of FORMATS) {
      expect(await render(CHECKED, format, OPTIONS)).toMatch(/scenarios-missing/);
      const bare = await render({ ...CHECKED, schema: 'pours/1' }, format, OPTIONS);
      if (format !== 'json') expect(bare).not.toMatch(/scenarios-missing/);
    }
  });

  it('says that there are no findings', async () => {
    const none = { ...CHECKED, findings: [] };
    expect(await render(none, 'table', OPTIONS)).toBe('no findings\n');
    expect(await render(none, 'md', OPTIONS)).toContain('No findings about the data');
  });

  it('is the same bytes twice', async () => {
    for (const format of FORMATS) {
      expect(await render(OUTCOME, format, OPTIONS)).toBe(await render(OUTCOME, format, OPTIONS));
    }
  });
});
