import { describe, expect, it } from 'vitest';
import { idleRiseChart } from './idle-rise-chart.ts';

const OFF = {
  name: 'Device <b>A</b> (flush-off)',
  points: [
    { pauseS: 57_600, reading: 104 },
    { pauseS: 0, reading: 12 },
    { pauseS: 600, reading: 41 },
  ],
};
const ON = { name: 'Device A', points: [{ pauseS: 28_800, reading: 31 }] };

const words = (svg: string): string[] =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text);

describe('the chart of first readings after a pause', () => {
  it('names each line, both axes and the tested pauses, and escapes names', async () => {
    const { svg } = await idleRiseChart({ title: 'After a pause', unit: 'ppm', curves: [OFF, ON] });
    for (const text of ['Device A', '0 s', '10 min', '16 h', 'first reading (ppm)']) {
      expect(words(svg)).toContain(text);
    }
    expect(words(svg)).toContain('pause before the first water (square-root axis)');
    expect(svg).not.toContain('<b>');
  });

  it('says the lowest and the highest reading, each with device and pause', async () => {
    const { description } = await idleRiseChart({ title: '', unit: 'ppm', curves: [OFF, ON] });
    expect(description).toContain('2 lines');
    expect(description).toContain('from 12.0 ppm (Device <b>A</b> (flush-off), after 0 s)');
    expect(description).toContain('to 104 ppm (Device <b>A</b> (flush-off), after 16 h)');
  });

  it('draws a single reading without a line, and a pause of zero alone', async () => {
    const zero = { name: 'Device B', points: [{ pauseS: 0, reading: 0 }] };
    const { svg, description } = await idleRiseChart({ title: 'x', unit: 'mg/L', curves: [zero] });
    expect(svg).not.toMatch(/NaN|Infinity/);
    expect(description).toContain('1 line: 0 mg/L (Device B, after 0 s)');
  });

  it('leaves out labels of pauses that would meet', async () => {
    const points = [0, 10, 20, 30, 86_400].map((pauseS) => ({ pauseS, reading: 1 }));
    const { svg } = await idleRiseChart({
      title: 'x',
      unit: 'ppm',
      curves: [{ name: 'A', points }],
    });
    const shown = words(svg).filter((text) => /^(0|10|20|30) s$/.test(text));
    expect(shown).toHaveLength(1);
    expect(words(svg)).toContain('24 h');
  });

  it('without a reading says so', async () => {
    const { description } = await idleRiseChart({ title: 'x', unit: 'ppm', curves: [] });
    expect(description).toBe('No reading to show.');
  });

  it('is the same bytes twice', async () => {
    const input = { title: 'x', unit: 'ppm', curves: [OFF, ON] };
    expect((await idleRiseChart(input)).svg).toBe((await idleRiseChart(input)).svg);
  });
});
