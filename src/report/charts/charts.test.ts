import { describe, expect, it } from 'vitest';
import { OUTCOMES, type ReductionOutcome } from '../../model/index.ts';
import { drainCurveChart } from './drain-curve-chart.ts';
import type { ReductionMark } from './reduction-marks.ts';
import { reductionsChart } from './reductions-chart.ts';
import { yearlyDrainChart } from './yearly-drain-chart.ts';

/** How many marks stand in all groups of marks of a name. */
function countMarks(svg: string, name: string): number {
  const groups = svg.split(/<g class="mark-(?:symbol|rule|rect|text|line) /);
  return groups
    .filter((group) => group.startsWith(`role-mark ${name}"`))
    .reduce(
      (sum, group) => sum + (group.split('</g>')[0]?.match(/<(path|line|text)/g) ?? []).length,
      0,
    );
}

/** The words of the picture, as a reader sees them. */
function words(svg: string): string[] {
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text);
}

function size(svg: string): { width: number; height: number } {
  const [, width = '0', height = '0'] = /width="(\d+)" height="(\d+)"/.exec(svg) ?? [];
  return { width: Number(width), height: Number(height) };
}

const BAD_NAME = '<script>alert("x")</script> & co';

const BOUNDS: Readonly<Record<ReductionOutcome, Partial<ReductionMark>>> = {
  measured: { low: 0.9, estimate: 0.916, high: 0.93, shown: '91.6 % (90.0 to 93.0)' },
  between: { low: 0.74, high: 0.93, shown: '74 % to 93 %' },
  'at-least': { low: 0.984, shown: '≥ 98.4 %' },
  'not-shown': { low: -0.2, high: 0.3, shown: 'no reduction shown' },
  rise: { low: -0.5, high: -0.1, shown: '+0.8 mg/L' },
  untestable: { shown: 'feed too low to show' },
  untested: { shown: 'not tested' },
};

function mark(outcome: ReductionOutcome, analyte: string, device: string): ReductionMark {
  return {
    outcome,
    analyte,
    device,
    firm: true,
    low: null,
    estimate: null,
    high: null,
    shown: '',
    ...BOUNDS[outcome],
  };
}

const ONE_OF_EACH = {
  title: 'One of each outcome',
  analytes: [{ key: 'lead', name: 'Lead' }],
  devices: OUTCOMES.map((key) => ({ key, name: `Device ${key}` })),
  reductions: OUTCOMES.map((outcome) => mark(outcome, 'lead', outcome)),
};

describe('the chart of reductions', () => {
  it('draws each outcome in its own way and words every row', async () => {
    const { svg } = await reductionsChart(ONE_OF_EACH);
    // A line for measured, between, at-least and not-shown.
    expect(countMarks(svg, 'ranges')).toBe(4);
    // Both ends of between, the low end of at-least, the high end of not-shown.
    expect(countMarks(svg, 'ends')).toBe(4);
    // A dot, an arrow, a cross and a triangle.
    expect(countMarks(svg, 'points')).toBe(4);
    expect(countMarks(svg, 'shown')).toBe(OUTCOMES.length);
    for (const { shown } of ONE_OF_EACH.reductions) expect(words(svg)).toContain(shown);
    expect(words(svg)).toContain('reduction (%)');
  });

  it('explains only the outcomes that occur', async () => {
    const some = { ...ONE_OF_EACH, reductions: [mark('rise', 'lead', 'rise')] };
    const { svg } = await reductionsChart(some);
    expect(words(svg)).toContain('rise (hollow: apparent)');
    expect(words(svg)).not.toContain('no reduction shown');
    expect(countMarks(svg, 'key-labels')).toBe(1);
  });

  it('prints a pair without a result as not tested', async () => {
    const { svg } = await reductionsChart({ ...ONE_OF_EACH, reductions: [] });
    expect(words(svg).filter((text) => text === 'not tested')).toHaveLength(OUTCOMES.length);
    expect(countMarks(svg, 'points')).toBe(0);
  });

  it('draws an apparent rise hollow', async () => {
    const firm = { ...ONE_OF_EACH, reductions: [mark('rise', 'lead', 'rise')] };
    const apparent = { ...firm, reductions: [{ ...mark('rise', 'lead', 'rise'), firm: false }] };
    const hollow = /role-mark points".*?fill="white"/;
    expect((await reductionsChart(apparent)).svg).toMatch(hollow);
    expect((await reductionsChart(firm)).svg).not.toMatch(hollow);
  });

  it('has a panel for every analyte and room for fourteen devices and thirty analytes', async () => {
    const analytes = Array.from({ length: 30 }, (_, i) => ({ key: `a${i}`, name: `Analyte ${i}` }));
    const devices = Array.from({ length: 14 }, (_, i) => ({ key: `d${i}`, name: `Device ${i}` }));
    const reductions = analytes.flatMap(({ key }) =>
      devices.map((device) => mark('measured', key, device.key)),
    );
    const { svg } = await reductionsChart({ title: 'Many', analytes, devices, reductions });
    expect(countMarks(svg, 'points')).toBe(30 * 14);
    expect(countMarks(svg, 'analyte')).toBe(30);
    expect(size(svg).height).toBeGreaterThan(30 * 14 * 5);
  });

  it('widens for long names', async () => {
    const long = {
      ...ONE_OF_EACH,
      devices: [{ key: 'rise', name: 'A name of many words'.repeat(2) }],
    };
    const wide = size((await reductionsChart(long)).svg).width;
    expect(wide).toBeGreaterThan(size((await reductionsChart(ONE_OF_EACH)).svg).width);
  });

  it('counts the outcomes in its text alternative', async () => {
    const { description } = await reductionsChart(ONE_OF_EACH);
    expect(description).toBe(
      'Reductions in percent as ranges; analytes: 1, devices: 7. Measured or bounded: 3. No ' +
        'reduction shown: 1. Rises: 1. Feed too low to show a reduction: 1. Not tested: 1.',
    );
  });

  it('says so when there is nothing to show', async () => {
    const empty = { title: 'Empty', analytes: [], devices: [], reductions: [] };
    expect(words((await reductionsChart(empty)).svg)).toEqual(['Empty', 'No reductions to show.']);
  });

  it('refuses two reductions for one analyte and device', async () => {
    const twice = [...ONE_OF_EACH.reductions, mark('rise', 'lead', 'rise')];
    await expect(reductionsChart({ ...ONE_OF_EACH, reductions: twice })).rejects.toThrow(
      RangeError,
    );
  });
});

const SIZES = [100, 250, 500, 1000, 5000];

const CURVES = {
  title: 'Flushing decides small pours',
  curves: [1.4, 0.5, 0].map((flushL, i) => ({
    name: `Device ${i}`,
    points: SIZES.map((pourMl) => ({ pourMl, ratio: 0.5 + (flushL * 1000) / pourMl })),
  })),
};

describe('the chart of drain ratio against pour size', () => {
  it('draws and names a line for each device, with units at both axes', async () => {
    const { svg } = await drainCurveChart(CURVES);
    expect(svg.match(/mark-line role-mark curve-/g)).toHaveLength(3);
    expect(countMarks(svg, 'names')).toBe(3);
    expect(countMarks(svg, 'sample-points')).toBe(3);
    expect(words(svg)).toEqual(
      expect.arrayContaining([
        'pour size (mL)',
        'total drain ratio (L to drain per L of clean water)',
        'Device 0',
        '1000',
      ]),
    );
  });

  it('tells the lines apart without colour', async () => {
    const { svg } = await drainCurveChart(CURVES);
    const looks = [...svg.matchAll(/curve-\d".*?<path ([^>]*)>/gs)].map(
      ([, path = '']) => /stroke-dasharray="[^"]*"/.exec(path)?.[0],
    );
    expect(new Set(looks).size).toBe(3);
  });

  it('leaves out a device without a curve and says so', async () => {
    const none = { name: 'Tank A', points: SIZES.map((pourMl) => ({ pourMl, ratio: null })) };
    const chart = await drainCurveChart({ ...CURVES, curves: [...CURVES.curves, none] });
    expect(words(chart.svg)).not.toContain('Tank A');
    expect(chart.description).toMatch(/Without a curve: Tank A\.$/);
  });

  it('gives both ends in its text alternative', async () => {
    expect((await drainCurveChart(CURVES)).description).toBe(
      'Litres to drain per litre of clean water against the size of an isolated pour, 3 curves. ' +
        'At the smallest pour of each curve it is from 0.500 (Device 2, 100 mL) to 14.5 ' +
        '(Device 0, 100 mL). At the largest pour of each curve it is from 0.500 (Device 2, ' +
        '5000 mL) to 0.780 (Device 0, 5000 mL).',
    );
  });

  it('draws a single point, a ratio of zero, and nothing at all', async () => {
    const one = { name: 'One', points: [{ pourMl: 250, ratio: 0 }] };
    expect(countMarks((await drainCurveChart({ title: 't', curves: [one] })).svg, 'points')).toBe(
      1,
    );
    const none = await drainCurveChart({ title: 't', curves: [] });
    expect(words(none.svg)).toEqual(['t', 'No curve to show.']);
  });

  it('names thirty lines without two labels on one place', async () => {
    const curves = Array.from({ length: 30 }, (_, i) => ({ ...CURVES.curves[0], name: `D${i}` }));
    const { svg } = await drainCurveChart({
      title: 't',
      curves: curves.map(({ name, points = [] }) => ({ name, points })),
    });
    const group = svg.split('role-mark names"')[1]?.split('</g>')[0] ?? '';
    const places = [...group.matchAll(/translate\([\d.]+,([\d.]+)\)/g)]
      .map(([, y]) => Number(y))
      .sort((a, b) => a - b);
    expect(places).toHaveLength(30);
    places.slice(1).forEach((y, i) => {
      expect(y - (places[i] ?? 0)).toBeGreaterThan(14);
    });
  });
});

const YEARS = {
  title: 'Flushing is half of the yearly drain',
  rows: ['family', 'carafe'].flatMap((scenario) => [
    { scenario, device: 'Device A', producingL: 1500, flushingL: 1500 },
    { scenario, device: 'Device B', producingL: 800, flushingL: 0 },
    { scenario, device: 'Pitcher', producingL: 0, flushingL: 0 },
    { scenario, device: 'Device C', producingL: null, flushingL: 10 },
  ]),
};

describe('the chart of yearly drain', () => {
  it('stacks producing and flushing, with the total behind each bar', async () => {
    const { svg } = await yearlyDrainChart(YEARS);
    expect(countMarks(svg, 'bars')).toBe(2 * 3);
    expect(countMarks(svg, 'scenario')).toBe(2);
    expect(countMarks(svg, 'totals')).toBe(8);
    const totals = ['3000 L, 50 % by flushing', '800 L', '0 L', 'not known'];
    expect(words(svg)).toEqual(expect.arrayContaining([...totals, 'drain (L per year)']));
  });

  it('never calls a part the whole, nor a little nothing', async () => {
    const row = (producingL: number, flushingL: number) => ({
      title: 't',
      rows: [{ scenario: 's', device: 'd', producingL, flushingL }],
    });
    expect(words((await yearlyDrainChart(row(1, 999))).svg)).toContain(
      '1000 L, over 99 % by flushing',
    );
    expect(words((await yearlyDrainChart(row(999, 1))).svg)).toContain(
      '1000 L, below 1 % by flushing',
    );
    expect(words((await yearlyDrainChart(row(0, 5))).svg)).toContain('5.00 L, all by flushing');
  });

  it('gives the ends of each scenario in its text alternative', async () => {
    expect((await yearlyDrainChart(YEARS)).description).toContain(
      'family: from 0 L (Pitcher) to 3000 L, 50 % by flushing (Device A).',
    );
  });

  it('says so when there is nothing to show', async () => {
    const { svg } = await yearlyDrainChart({ title: 't', rows: [] });
    expect(words(svg)).toEqual(['t', 'No yearly drain to show.']);
  });
});

describe('every chart', () => {
  const hostile = [
    () =>
      reductionsChart({
        title: BAD_NAME,
        analytes: [{ key: 'lead', name: BAD_NAME }],
        devices: [{ key: 'rise', name: BAD_NAME }],
        reductions: [{ ...mark('rise', 'lead', 'rise'), shown: BAD_NAME }],
      }),
    () =>
      drainCurveChart({
        title: BAD_NAME,
        curves: CURVES.curves.map((curve) => ({ ...curve, name: BAD_NAME })),
      }),
    () =>
      yearlyDrainChart({
        title: BAD_NAME,
        rows: YEARS.rows.map((row) => ({ ...row, scenario: BAD_NAME, device: BAD_NAME })),
      }),
  ];

  it('escapes what the bench calls its devices', async () => {
    for (const draw of hostile) {
      const { svg } = await draw();
      expect(svg).not.toContain('<script');
      expect(svg).toContain('&lt;script&gt;');
      expect(svg).not.toMatch(/&(?!amp;|lt;|gt;|quot;|#)/);
    }
  });

  it('holds no control character, which XML could not carry', async () => {
    const { svg } = await yearlyDrainChart({
      title: 'a\u0000b',
      rows: [{ scenario: '\u001b[31m', device: '\ufffe\u0007', producingL: 1, flushingL: 1 }],
    });
    for (const sign of ['\u0000', '\u001b', '\u0007', '\ufffe']) expect(svg).not.toContain(sign);
  });

  it('is the same bytes every time, also side by side', async () => {
    const draws = [
      () => reductionsChart(ONE_OF_EACH),
      () => drainCurveChart(CURVES),
      () => yearlyDrainChart(YEARS),
    ];
    const first = await Promise.all(draws.map((draw) => draw()));
    for (const [i, draw] of draws.entries()) expect(await draw()).toEqual(first[i]);
  });

  it('is one image with a title and a description, and refers to nothing outside', async () => {
    for (const chart of [await reductionsChart(ONE_OF_EACH), await drainCurveChart(CURVES)]) {
      expect(chart.svg).toMatch(/^<svg [^>]*role="img"><title>[^<]+<\/title><desc>[^<]+<\/desc>/);
      expect(chart.svg).not.toMatch(/href|url\(|<image|<style/);
      expect(chart.svg).toContain('font-family="sans-serif"');
    }
  });
});
