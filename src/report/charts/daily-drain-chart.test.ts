import { describe, expect, it } from 'vitest';
import { type DailyDrainCurve, dailyDrainChart } from './daily-drain-chart.ts';

const A = {
  name: 'Device <b>A</b>',
  points: [
    { perDay: 8, ratio: 2, low: 1.8, high: 2.3 },
    { perDay: 1, ratio: 6, low: 5, high: 7 },
  ],
};
const B = { name: 'Device B', points: [{ perDay: 4, ratio: 1, low: null, high: null }] };
const NONE = { name: 'Device C', points: [{ perDay: 4, ratio: null, low: null, high: null }] };

const words = (svg: string): string[] =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text);

describe('the chart of drain against pours a day', () => {
  it('names each line and both panels, and escapes names', async () => {
    const { svg } = await dailyDrainChart({ title: 'Few pours drain more', curves: [A, B] });
    for (const text of ['Device B', '1', '4', '8', 'L to drain per L of clean water']) {
      expect(words(svg)).toContain(text);
    }
    expect(words(svg)).toContain('recovery (%)');
    expect(words(svg)).toContain('pours a day (logarithmic axis)');
    expect(svg).not.toContain('<b>');
    expect(svg).not.toMatch(/NaN|Infinity/);
  });

  it('says the lowest and highest at both ends, and what has no curve', async () => {
    const { description } = await dailyDrainChart({ title: '', curves: [A, B, NONE] });
    expect(description).toContain('2 curves');
    expect(description).toContain('With 1 a day 6.00 (Device <b>A</b>)');
    expect(description).toContain('With 8 a day 2.00 (Device <b>A</b>)');
    expect(description).toContain('Without a curve: Device C');
  });

  it('draws a bar for each range that is known, in both panels', async () => {
    const bars = async (curves: readonly DailyDrainCurve[]): Promise<number> => {
      const { svg } = await dailyDrainChart({ title: 'x', curves });
      return svg.split('<line').length;
    };
    // One figure above all others keeps the axes alike.
    const top = { name: 'T', points: [{ perDay: 4, ratio: 10, low: null, high: null }] };
    const exact = { ...A, points: A.points.map((p) => ({ ...p, low: p.ratio, high: p.ratio })) };
    expect(await bars([A, top])).toBe((await bars([exact, top])) + 4);
  });

  it('stays a chart with one number of pours, without drain, and without any curve', async () => {
    const zero = { name: 'Z', points: [{ perDay: 4, ratio: 0, low: 0, high: 0 }] };
    const one = await dailyDrainChart({ title: 'x', curves: [zero] });
    expect(one.svg).not.toMatch(/NaN|Infinity/);
    expect(one.description).toContain('1 curve. With 4 a day 0 (Z).');
    const { description } = await dailyDrainChart({ title: 'x', curves: [NONE] });
    expect(description).toBe('No curve to show.');
  });

  it('is the same bytes twice', async () => {
    const input = { title: 'x', curves: [A, B] };
    expect((await dailyDrainChart(input)).svg).toBe((await dailyDrainChart(input)).svg);
  });
});
