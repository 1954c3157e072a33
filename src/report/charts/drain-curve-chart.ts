import type { Mark } from 'vega';
import { significant } from '../format-number.ts';
import { printable } from '../printable.ts';
import { emptyChart, framed } from './chart-frame.ts';
import { curvePlot } from './curve-plot.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { heightForNames, lineName, widthOfNames } from './line-names.ts';
import { logTicks, ticksFromZero } from './nice-ticks.ts';
import { type SeriesLook, seriesLook } from './series-look.ts';

/** The total drain ratio of a device against the size of an isolated pour. */
export interface DrainCurve {
  /** Name of the device, and its variant where it has several. */
  readonly name: string;
  /** In order of pour size, sizes above 0; a null ratio is not drawn. */
  readonly points: readonly { readonly pourMl: number; readonly ratio: number | null }[];
}

export interface DrainCurveChartInput {
  /** States the finding. */
  readonly title: string;
  readonly curves: readonly DrainCurve[];
}

interface Series extends DrainCurve {
  readonly look: SeriesLook;
  readonly known: readonly { readonly pourMl: number; readonly ratio: number }[];
}

const LEFT = 46;
const PLOT_WIDTH = 480;
const LEAST_HEIGHT = 320;
const BOTTOM = 40;
/** Symbols along a curve; each series starts at another point, so that they rarely meet. */
const SYMBOLS = 4;

/**
 * Total drain ratio against pour size, the sizes on a logarithmic axis. Lines are told apart by
 * dash and shape and named at their right end.
 *
 * Curves without any figure are left out and named in the description.
 */
export async function drainCurveChart(input: DrainCurveChartInput): Promise<Chart> {
  const title = printable(input.title);
  const all = input.curves.map((curve) => ({
    ...curve,
    name: printable(curve.name),
    known: curve.points.flatMap(({ pourMl, ratio }) =>
      ratio === null || !(pourMl > 0) ? [] : [{ pourMl, ratio }],
    ),
  }));
  const series = all
    .filter((curve) => curve.known.length > 0)
    .map((curve, i) => ({ ...curve, look: seriesLook(i) }));
  const missing = all.filter((curve) => curve.known.length === 0).map((curve) => curve.name);
  if (series.length === 0) {
    return drawSvg(emptyChart(title, 'No curve to show.'), title, 'No curve to show.');
  }
  const names = series.map((each) => lineName(each.name));
  const height = heightForNames(LEAST_HEIGHT, series.length);
  const spec = framed({
    title,
    key: [],
    width: LEFT + PLOT_WIDTH + widthOfNames(names),
    height: height + BOTTOM,
    body: [plot(series, names, height)],
  });
  return drawSvg(spec, title, describe(series, missing));
}

function plot(series: readonly Series[], names: readonly string[], height: number): Mark {
  const points = series.flatMap((each) => each.known);
  const sizes = points.map((point) => point.pourMl);
  const smallest = sizes.reduce((a, b) => Math.min(a, b));
  const largest = sizes.reduce((a, b) => Math.max(a, b));
  // A single size would leave the axis without length.
  const domain = smallest === largest ? [smallest / 2, largest * 2] : [smallest, largest];
  const highest = points.reduce((most, point) => Math.max(most, point.ratio), 0);
  return curvePlot({
    left: LEFT,
    width: PLOT_WIDTH,
    height,
    x: {
      type: 'log',
      domain,
      ticks: logTicks(domain[0] ?? 1, domain[1] ?? 1),
      title: 'pour size (mL)',
    },
    y: {
      ticks: ticksFromZero(highest, 6),
      title: 'total drain ratio (L to drain per L of clean water)',
    },
    curves: series.map(({ look, known, points: all }, i) => ({
      name: names[i] ?? '',
      look,
      points: all.flatMap(({ pourMl, ratio }) => (pourMl > 0 ? [{ x: pourMl, y: ratio }] : [])),
      marked: markedPoints(known, i).map(({ pourMl, ratio }) => ({ x: pourMl, y: ratio })),
      end: known.at(-1)?.ratio ?? 0,
    })),
  });
}

/** A few points of a curve for its symbols, spread along it and moved on from series to series. */
function markedPoints<T>(points: readonly T[], index: number): T[] {
  const step = Math.max(1, Math.floor(points.length / SYMBOLS));
  const start = index % step;
  return points.filter((_, i) => i % step === start);
}

/** What the curves hold at their two ends, lowest and highest, and which device is there. */
function describe(series: readonly Series[], missing: readonly string[]): string {
  const at = (which: 'smallest' | 'largest'): string => {
    const found = series
      .flatMap((each) => {
        const point = which === 'smallest' ? each.known[0] : each.known.at(-1);
        return point === undefined ? [] : [{ name: each.name, ...point }];
      })
      .sort((a, b) => a.ratio - b.ratio);
    const [low, high] = [found[0], found.at(-1)];
    if (low === undefined || high === undefined) return '';
    const text = (one: typeof low): string =>
      `${significant(one.ratio, 3)} (${one.name}, ${significant(one.pourMl, 3)} mL)`;
    const range = low === high ? text(low) : `from ${text(low)} to ${text(high)}`;
    return ` At the ${which} pour of each curve it is ${range}.`;
  };
  const left = missing.length === 0 ? '' : ` Without a curve: ${missing.join(', ')}.`;
  return (
    `Litres to drain per litre of clean water against the size of an isolated pour, ` +
    `${series.length} ${series.length === 1 ? 'curve' : 'curves'}.` +
    `${at('smallest')}${at('largest')}${left}`
  );
}
