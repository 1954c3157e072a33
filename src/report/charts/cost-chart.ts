import type { Mark } from 'vega';
import { significant } from '../format-number.ts';
import { printable } from '../printable.ts';
import { emptyChart, framed } from './chart-frame.ts';
import { curvePlot } from './curve-plot.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { heightForNames, lineName, widthOfNames } from './line-names.ts';
import { ticksFromZero } from './nice-ticks.ts';
import { type SeriesLook, seriesLook } from './series-look.ts';

/** What a device has cost by each moment. */
export interface CostCurve {
  /** Name of the device, and its variant where it has several. */
  readonly name: string;
  /** False: something is not counted, and the curve is a lower bound. */
  readonly isWhole: boolean;
  readonly points: readonly { readonly year: number; readonly amount: number }[];
}

export interface CostChartInput {
  /** States the finding. */
  readonly title: string;
  /** ISO 4217 code of every amount. */
  readonly currency: string;
  readonly curves: readonly CostCurve[];
}

type Series = CostCurve & { readonly look: SeriesLook };

const LEFT = 58;
const PLOT_WIDTH = 470;
const LEAST_HEIGHT = 320;
const BOTTOM = 40;

/**
 * Money spent over the years, one line a device with a step at every purchase of parts. Lines are
 * told apart by dash and shape and named at their right end; a lower bound says so.
 */
export async function costChart(input: CostChartInput): Promise<Chart> {
  const title = printable(input.title);
  const series = input.curves
    .filter((curve) => curve.points.length > 0)
    .map((curve, i): Series => ({ ...curve, name: printable(curve.name), look: seriesLook(i) }));
  if (series.length === 0) {
    return drawSvg(emptyChart(title, 'No cost to show.'), title, 'No cost to show.');
  }
  const names = series.map((each) => lineName(each.isWhole ? each.name : `${each.name}, at least`));
  const height = heightForNames(LEAST_HEIGHT, series.length);
  const spec = framed({
    title,
    key: [],
    width: LEFT + PLOT_WIDTH + widthOfNames(names),
    height: height + BOTTOM,
    body: [plot(series, names, height, printable(input.currency))],
  });
  return drawSvg(spec, title, describe(series, input.currency));
}

function plot(
  series: readonly Series[],
  names: readonly string[],
  height: number,
  currency: string,
): Mark {
  const points = series.flatMap((each) => each.points);
  const years = points.reduce((most, point) => Math.max(most, point.year), 0) || 1;
  const highest = points.reduce((most, point) => Math.max(most, point.amount), 0);
  return curvePlot({
    left: LEFT,
    width: PLOT_WIDTH,
    height,
    x: {
      type: 'linear',
      domain: [0, years],
      ticks: ticksFromZero(years, 5).filter((tick) => tick <= years),
      title: 'years after the purchase',
    },
    y: { ticks: ticksFromZero(highest, 6), title: `spent so far (${currency})` },
    curves: series.map((each, i) => {
      const own = each.points.map(({ year, amount }) => ({ x: year, y: amount }));
      const marked = [own[0], own.at(-1)].flatMap((point) => point ?? []);
      const name = names[i] ?? '';
      return { name, look: each.look, points: own, marked, end: lastAmount(each) };
    }),
  });
}

/** The cheapest and the dearest at the end, and how many curves are lower bounds. */
function describe(series: readonly Series[], currency: string): string {
  const ordered = [...series].sort((a, b) => lastAmount(a) - lastAmount(b));
  const [low, high] = [ordered[0], ordered.at(-1)];
  const bounds = series.filter((each) => !each.isWhole).length;
  if (low === undefined || high === undefined) return '';
  const text = (one: Series): string =>
    `${one.isWhole ? '' : 'at least '}${significant(lastAmount(one), 3)} ${currency} (${one.name})`;
  const range = low === high ? text(low) : `from ${text(low)} to ${text(high)}`;
  const years = significant(low.points.at(-1)?.year ?? 0, 2);
  return (
    `Money spent over the years, ${series.length} ${series.length === 1 ? 'curve' : 'curves'}. ` +
    `After ${years} years ${range}.${bounds === 0 ? '' : ` Lower bounds: ${bounds}.`}`
  );
}

function lastAmount(series: Series): number {
  return series.points.at(-1)?.amount ?? 0;
}
