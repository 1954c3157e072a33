import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawSvg } from './draw-svg.ts';
import { logTicks, ticksFromZero } from './nice-ticks.ts';
import { seriesLook } from './series-look.ts';
import { spreadLabels } from './spread-labels.ts';
import { shortened, textWidth } from './text-width.ts';

describe('ticks', () => {
  it('start at zero and end at or beyond the largest value', () => {
    expect(ticksFromZero(870, 5)).toEqual([0, 200, 400, 600, 800, 1000]);
    expect(ticksFromZero(0.3, 3)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(ticksFromZero(0, 5)).toEqual([0, 1]);
    expect(ticksFromZero(-1, 5)).toEqual([0, 1]);
  });

  it('cover any range in a few steps', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (largest) => {
        const ticks = ticksFromZero(largest, 5);
        expect(ticks.at(-1)).toBeGreaterThanOrEqual(largest * (1 - 1e-9));
        expect(ticks.length).toBeLessThanOrEqual(7);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
      }),
      { seed: 1, numRuns: 1000 },
    );
  });

  it('of a logarithmic axis are 1, 2 and 5 times powers of ten', () => {
    expect(logTicks(80, 2500)).toEqual([100, 200, 500, 1000, 2000]);
    expect(logTicks(100, 100)).toEqual([100]);
    expect(logTicks(0.02, 0.1)).toEqual([0.02, 0.05, 0.1]);
  });
});

describe('labels beside their lines', () => {
  it('stay where they belong when there is room', () => {
    expect(spreadLabels([10, 90, 50], 16, 0, 100)).toEqual([10, 90, 50]);
    expect(spreadLabels([], 16, 0, 100)).toEqual([]);
  });

  it('share the room around their mean when they meet', () => {
    expect(spreadLabels([50, 50], 16, 0, 100)).toEqual([42, 58]);
    expect(spreadLabels([0, 0, 0], 16, 0, 100)).toEqual([0, 16, 32]);
  });

  it('keep their order, their distance and the room', () => {
    const wanted = fc.array(fc.integer({ min: -20, max: 320 }), { maxLength: 20 });
    fc.assert(
      fc.property(wanted, (places) => {
        const spread = spreadLabels(places, 16, 0, 304);
        const sorted = spread.map((y, i) => ({ y, wanted: places[i] ?? 0 }));
        sorted.sort((a, b) => a.y - b.y);
        sorted.forEach((label, i) => {
          const next = sorted[i + 1];
          expect(label.y).toBeGreaterThanOrEqual(-1e-6);
          expect(label.y).toBeLessThanOrEqual(304 + 1e-6);
          if (next !== undefined) {
            expect(next.y - label.y).toBeGreaterThanOrEqual(16 - 1e-6);
            expect(next.wanted).toBeGreaterThanOrEqual(label.wanted);
          }
        });
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});

describe('looks of series', () => {
  it('differ by dash and shape without colour, for thirty series', () => {
    const looks = Array.from({ length: 30 }, (_, i) => seriesLook(i));
    expect(new Set(looks.map(({ dash, shape }) => JSON.stringify([dash, shape]))).size).toBe(30);
  });
});

describe('room for text', () => {
  it('grows with the letters, the size and the weight', () => {
    expect(textWidth('', 11)).toBe(0);
    expect(textWidth('mm', 11)).toBeGreaterThan(textWidth('ii', 11));
    expect(textWidth('100', 10)).toBeCloseTo(19.2, 9);
    expect(textWidth('a', 11, 'bold')).toBeGreaterThan(textWidth('a', 11));
    expect(textWidth('水', 10)).toBe(11);
  });

  it('is kept by a text that is shortened', () => {
    expect(shortened('short', 11, 200)).toBe('short');
    const cut = shortened('a name that goes on and on', 11, 80);
    expect(cut).toMatch(/^a name.*…$/);
    expect(textWidth(cut, 11)).toBeLessThanOrEqual(80);
  });
});

describe('drawing', () => {
  const bare = { width: 10, height: 10, padding: 0 } as const;

  it('announces the picture as one image with title and description', async () => {
    const chart = await drawSvg({ ...bare, marks: [] }, 'a < b & c', 'text\u0000 <b>');
    expect(chart.svg).toMatch(/^<svg [^>]*role="img"><title>a &lt; b &amp; c<\/title>/);
    expect(chart.svg).toContain('<desc>text  &lt;b&gt;</desc>');
    expect(chart.title).toBe('a < b & c');
  });

  it('refuses to load a file or an address', async () => {
    for (const url of ['package.json', 'file:///etc/hostname', 'https://example.org/a.json']) {
      const spec = { ...bare, data: [{ name: 'd', url }] };
      await expect(drawSvg(spec, '', '')).rejects.toThrow(/loads nothing/);
    }
  });

  it('fails on an expression that fails instead of leaving marks out', async () => {
    const signal = { name: 's', update: 'data("none")[0].x.y' };
    await expect(drawSvg({ ...bare, signals: [signal] }, '', '')).rejects.toThrow();
  });

  it('fails on a warning', async () => {
    const signal = { name: 's', update: 'warn("odd", 1)' };
    await expect(drawSvg({ ...bare, signals: [signal] }, '', '')).rejects.toThrow(/odd/);
  });
});
