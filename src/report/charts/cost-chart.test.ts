import { describe, expect, it } from 'vitest';
import { costChart } from './cost-chart.ts';

const CURVES = [
  {
    name: 'Under-sink one',
    isWhole: true,
    points: [
      { year: 0, amount: 400 },
      { year: 1, amount: 410 },
      { year: 1, amount: 460 },
      { year: 2, amount: 470 },
    ],
  },
  {
    name: 'Jug',
    isWhole: false,
    points: [
      { year: 0, amount: 30 },
      { year: 2, amount: 90 },
    ],
  },
];

describe('the chart of cost over time', () => {
  it('draws a line for each device, names it, and says which is a lower bound', async () => {
    const { svg } = await costChart({
      title: 'The jug costs least',
      currency: 'USD',
      curves: CURVES,
    });
    for (const name of ['curve-0', 'curve-1']) {
      const found = new RegExp(`<g class="mark-line [^"]*${name}[^"]*"`).test(svg);
      expect(found, name).toBe(true);
    }
    expect(svg).toContain('Under-sink one');
    expect(svg).toContain('Jug, at least');
    expect(svg).toContain('spent so far (USD)');
  });

  it('has a text alternative with its main figures', async () => {
    const { description } = await costChart({ title: 'Costs', currency: 'USD', curves: CURVES });
    expect(description).toContain(
      'After 2.0 years from at least 90.0 USD (Jug) to 470 USD (Under-sink one).',
    );
    expect(description).toContain('Lower bounds: 1.');
  });

  it('says so when there is nothing to show', async () => {
    const { svg } = await costChart({ title: 'Costs', currency: 'USD', curves: [] });
    expect(svg).toContain('No cost to show.');
  });

  it('is drawn for one device whose cost never changes', async () => {
    const curves = [{ name: 'Gift', isWhole: true, points: [{ year: 0, amount: 0 }] }];
    const { description } = await costChart({ title: 'Costs', currency: 'USD', curves });
    expect(description).toContain('0 USD (Gift)');
  });

  it('is the same bytes a second time', async () => {
    const input = { title: 'Costs', currency: 'USD', curves: CURVES };
    expect((await costChart(input)).svg).toBe((await costChart(input)).svg);
  });
});
