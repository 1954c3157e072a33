import { describe, expect, it } from 'vitest';
import { type DrainRegion, drainRegionsChart } from './drain-regions-chart.ts';

const region = (
  pourMl: number,
  poursPerDay: number,
  name: string,
  isToldApart: boolean | null,
): DrainRegion => ({ pourMl, poursPerDay, name, ratio: 1.234, isToldApart });

const FIELD = [
  region(250, 1, 'Alpha', true),
  region(250, 8, 'Alpha', false),
  region(1000, 1, 'Beta & co', true),
  region(1000, 8, 'Beta & co', null),
];

const marks = (svg: string, name: string): number => {
  const part = new RegExp(`class="mark-[a-z]+ role-mark ${name}"[^>]*>(.*?)</g>`, 's').exec(svg);
  return (part?.[1]?.match(/<(path|text)/g) ?? []).length;
};

describe('the chart of regions', () => {
  it('has a cell, a symbol and a figure for every region', async () => {
    const { svg } = await drainRegionsChart({ title: 'Who drains least', regions: FIELD });
    expect(marks(svg, 'cells')).toBe(4);
    expect(marks(svg, 'least')).toBe(4);
    expect(svg.match(/>1\.23</g)).toHaveLength(4);
    expect(svg).toContain('Beta &amp; co');
  });

  it('tells devices apart without colour, and what is not told apart by a hollow symbol', async () => {
    const { svg, description } = await drainRegionsChart({ title: 't', regions: FIELD });
    const part = /role-mark least"[^>]*>(.*?)<\/g>/s.exec(svg)?.[1] ?? '';
    expect(part.match(/fill="white"/g)).toHaveLength(2);
    expect(new Set([...part.matchAll(/ d="([^"]*)"/g)].map(([, path]) => path)).size).toBe(2);
    expect(description).toContain('Alpha in 2 (told apart in 1)');
    expect(description).toContain('from 1.23 to 1.23');
  });

  it('says that there is nothing to show', async () => {
    const { svg } = await drainRegionsChart({ title: 't', regions: [] });
    expect(svg).toContain('No region to show.');
  });

  it('is the same bytes again', async () => {
    const first = await drainRegionsChart({ title: 't', regions: FIELD });
    expect((await drainRegionsChart({ title: 't', regions: FIELD })).svg).toBe(first.svg);
  });
});
