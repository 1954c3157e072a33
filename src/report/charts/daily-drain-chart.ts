import type { Mark } from 'vega';
import { significant } from '../format-number.ts';
import { printable } from '../printable.ts';
import { emptyChart, framed } from './chart-frame.ts';
import { group, type LineItem, layered, lines, symbols, texts } from './chart-marks.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { heightForNames, lineName, nameLayers, TEXT_SIZE, widthOfNames } from './line-names.ts';
import { ticksFromZero } from './nice-ticks.ts';
import { GREY, PALE, type SeriesLook, seriesLook } from './series-look.ts';

/** Total drain ratio at a number of pours a day, with its range where it is known. */
export interface DailyDrainPoint {
  readonly perDay: number;
  readonly ratio: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** A device in one state, at one pour size. */
export interface DailyDrainCurve {
  readonly name: string;
  readonly points: readonly DailyDrainPoint[];
}

export interface DailyDrainChartInput {
  /** States the finding. */
  readonly title: string;
  readonly curves: readonly DailyDrainCurve[];
}

interface Known {
  readonly perDay: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

interface Series {
  readonly name: string;
  readonly look: SeriesLook;
  readonly ratio: readonly Known[];
  readonly recovery: readonly Known[];
}

const LEFT = 46;
const PLOT_WIDTH = 460;
const LEAST_HEIGHT = 220;
const BETWEEN = 34;
const BOTTOM = 54;
/** Pixels between the range bars of two series at one number of pours. */
const APART = 2.5;

/**
 * Total drain ratio, and below it recovery, against pours a day of one size. Lines are told apart by
 * dash and shape and named at their right end; a bar through a point is its range.
 *
 * Numbers of pours stand on a logarithmic axis. Curves without any figure are left out and named in
 * the description.
 */
export async function dailyDrainChart(input: DailyDrainChartInput): Promise<Chart> {
  const title = printable(input.title);
  const all = input.curves.map(({ name, points }) => ({
    name: printable(name),
    known: points.filter(({ perDay, ratio }) => ratio !== null && perDay > 0),
  }));
  const series = all
    .filter(({ known }) => known.length > 0)
    .map(
      ({ name, known }, i): Series => ({
        name,
        look: seriesLook(i),
        ratio: known.map(pointOf).sort((a, b) => a.perDay - b.perDay),
        recovery: known
          .map(pointOf)
          .map(recoveryOf)
          .sort((a, b) => a.perDay - b.perDay),
      }),
    );
  const missing = all.filter(({ known }) => known.length === 0).map(({ name }) => name);
  if (series.length === 0) {
    return drawSvg(emptyChart(title, 'No curve to show.'), title, 'No curve to show.');
  }
  const names = series.map(({ name }) => lineName(name));
  const height = heightForNames(LEAST_HEIGHT, series.length);
  const spec = framed({
    title,
    key: [],
    width: LEFT + PLOT_WIDTH + widthOfNames(names),
    height: 2 * height + BETWEEN + BOTTOM,
    body: [
      panel('ratio', series, names, { top: 0, height, axis: 'L to drain per L of clean water' }),
      panel('recovery', series, names, {
        top: height + BETWEEN,
        height,
        axis: 'recovery (%)',
      }),
    ],
  });
  return drawSvg(spec, title, describe(series, missing));
}

function pointOf({ perDay, ratio, low, high }: DailyDrainPoint): Known {
  const value = ratio ?? 0;
  return { perDay, value, low: low ?? value, high: high ?? value };
}

/** Recovery in percent: more drain is less recovery, so the ends change places. */
function recoveryOf({ perDay, value, low, high }: Known): Known {
  const share = (ratio: number): number => 100 / (1 + ratio);
  return { perDay, value: share(value), low: share(high), high: share(low) };
}

function panel(
  what: 'ratio' | 'recovery',
  series: readonly Series[],
  names: readonly string[],
  place: { readonly top: number; readonly height: number; readonly axis: string },
): Mark {
  const { top, height, axis } = place;
  const points = series.flatMap((each) => each[what]);
  const counts = [...new Set(points.map(({ perDay }) => perDay))].sort((a, b) => a - b);
  const [least = 1] = counts;
  const most = counts.at(-1) ?? least;
  const ticks = ticksFromZero(
    points.reduce((highest, { high }) => Math.max(highest, high), 0),
    5,
  );
  const last = ticks.at(-1) ?? 1;
  const x = (perDay: number): number =>
    most > least
      ? PLOT_WIDTH * (0.06 + (0.88 * Math.log(perDay / least)) / Math.log(most / least))
      : PLOT_WIDTH / 2;
  const y = (value: number): number => height * (1 - value / last);
  const shift = (i: number): number => (i - (series.length - 1) / 2) * APART;
  const grid = ticks.map((tick): LineItem => {
    return { x: 0, y: y(tick), x2: PLOT_WIDTH, y2: y(tick), colour: PALE, width: 1 };
  });
  const curves = series.flatMap((each, i) =>
    each[what].slice(1).map((point, at): LineItem => {
      const before = each[what][at] ?? point;
      return {
        x: x(before.perDay) + shift(i),
        y: y(before.value),
        x2: x(point.perDay) + shift(i),
        y2: y(point.value),
        colour: each.look.colour,
        width: 1.6,
        dash: each.look.dash,
      };
    }),
  );
  const bars = series.flatMap((each, i) =>
    each[what].flatMap(({ perDay, low, high }): LineItem[] =>
      high > low
        ? [
            {
              x: x(perDay) + shift(i),
              y: y(low),
              x2: x(perDay) + shift(i),
              y2: y(high),
              colour: each.look.colour,
              width: 1,
            },
          ]
        : [],
    ),
  );
  const dots = series.flatMap((each, i) =>
    each[what].map(({ perDay, value }) => ({
      x: x(perDay) + shift(i),
      y: y(value),
      ...each.look,
    })),
  );
  const labels = [
    ...ticks.map((tick) => ({
      x: -6,
      y: y(tick),
      text: String(tick),
      align: 'right' as const,
      size: TEXT_SIZE,
    })),
    ...counts.map((perDay) => ({
      x: x(perDay),
      y: height + 12,
      text: String(perDay),
      align: 'center' as const,
      size: TEXT_SIZE,
    })),
    { x: 6, y: -8, text: axis, size: TEXT_SIZE, colour: GREY },
    ...(what === 'recovery'
      ? [{ x: 0, y: height + 30, text: 'pours a day (logarithmic axis)', size: TEXT_SIZE }]
      : []),
  ];
  const ends = series.map((each, i) => {
    const end = y(each[what].at(-1)?.value ?? 0);
    return { name: names[i] ?? '', look: each.look, x: PLOT_WIDTH, y: end };
  });
  return group(
    what,
    { x: LEFT, y: top + 14, width: PLOT_WIDTH, height },
    layered([
      lines(`${what}-grid`, grid),
      lines(`${what}-axes`, [
        { x: 0, y: 0, x2: 0, y2: height, colour: GREY, width: 1 },
        { x: 0, y: height, x2: PLOT_WIDTH, y2: height, colour: GREY, width: 1 },
      ]),
      texts(`${what}-labels`, labels),
      lines(`${what}-ranges`, bars),
      lines(`${what}-curves`, curves),
      symbols(`${what}-points`, dots),
      ...nameLayers(ends, { width: PLOT_WIDTH, height, prefix: `${what}-` }),
    ]),
  );
}

/** Lowest and highest ratio at the fewest and at the most pours a day, each with its device. */
function describe(series: readonly Series[], missing: readonly string[]): string {
  const counts = series.flatMap(({ ratio }) => ratio.map(({ perDay }) => perDay));
  const at = (perDay: number): string => {
    const found = series
      .flatMap(({ name, ratio }) =>
        ratio.filter((point) => point.perDay === perDay).map(({ value }) => ({ name, value })),
      )
      .sort((a, b) => a.value - b.value);
    const [low, high] = [found[0], found.at(-1)];
    if (low === undefined || high === undefined) return '';
    const text = ({ name, value }: typeof low): string => `${significant(value, 3)} (${name})`;
    const range = low === high ? text(low) : `from ${text(low)} to ${text(high)}`;
    return ` With ${perDay} a day ${range}.`;
  };
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  const left = missing.length === 0 ? '' : ` Without a curve: ${missing.join(', ')}.`;
  return (
    'Litres to drain per litre of clean water, and recovery, against pours a day, ' +
    `${series.length} ${series.length === 1 ? 'curve' : 'curves'}.` +
    `${at(least)}${least === most ? '' : at(most)}${left}`
  );
}
