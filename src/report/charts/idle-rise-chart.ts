import { significant } from '../format-number.ts';
import { durationText } from '../format-quantity.ts';
import { printable } from '../printable.ts';
import { emptyChart, framed } from './chart-frame.ts';
import { group, type LineItem, layered, lines, symbols, texts } from './chart-marks.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { heightForNames, lineName, nameLayers, TEXT_SIZE, widthOfNames } from './line-names.ts';
import { ticksFromZero } from './nice-ticks.ts';
import { GREY, PALE, type SeriesLook, seriesLook } from './series-look.ts';
import { textWidth } from './text-width.ts';

/** First readings of one device in one state, by the length of the pause before them. */
export interface IdleCurve {
  readonly name: string;
  readonly points: readonly { readonly pauseS: number; readonly reading: number }[];
}

export interface IdleRiseChartInput {
  /** States the finding. */
  readonly title: string;
  /** Unit of the readings: all of one meter and scale. */
  readonly unit: string;
  readonly curves: readonly IdleCurve[];
}

interface Series extends IdleCurve {
  readonly look: SeriesLook;
}

const LEFT = 52;
const PLOT_WIDTH = 470;
const LEAST_HEIGHT = 260;
const BOTTOM = 44;
const TICK_GAP = 12;

/**
 * First reading after a pause against the length of the pause, on a square-root axis so that short
 * pauses keep room. Lines are told apart by dash and shape and named at their right end.
 */
export async function idleRiseChart(input: IdleRiseChartInput): Promise<Chart> {
  const title = printable(input.title);
  const series = input.curves
    .filter(({ points }) => points.length > 0)
    .map(
      (curve, i): Series => ({
        name: printable(curve.name),
        points: [...curve.points].sort((a, b) => a.pauseS - b.pauseS),
        look: seriesLook(i),
      }),
    );
  if (series.length === 0) {
    return drawSvg(emptyChart(title, 'No reading to show.'), title, 'No reading to show.');
  }
  const names = series.map(({ name }) => lineName(name));
  const height = heightForNames(LEAST_HEIGHT, series.length);
  const spec = framed({
    title,
    key: [],
    width: LEFT + PLOT_WIDTH + widthOfNames(names),
    height: height + BOTTOM,
    body: [plot(series, names, height, printable(input.unit))],
  });
  return drawSvg(spec, title, describe(series, input.unit));
}

function plot(series: readonly Series[], names: readonly string[], height: number, unit: string) {
  const points = series.flatMap((each) => each.points);
  const longest = points.reduce((most, { pauseS }) => Math.max(most, pauseS), 0) || 1;
  const ticks = ticksFromZero(
    points.reduce((most, { reading }) => Math.max(most, reading), 0),
    5,
  );
  const top = ticks.at(-1) ?? 1;
  const x = (pauseS: number): number => PLOT_WIDTH * Math.sqrt(pauseS / longest);
  const y = (value: number): number => height * (1 - value / top);
  const grid = ticks.map((tick): LineItem => {
    return { x: 0, y: y(tick), x2: PLOT_WIDTH, y2: y(tick), colour: PALE, width: 1 };
  });
  const readings = ticks.map((tick) => ({
    x: -6,
    y: y(tick),
    text: String(tick),
    align: 'right' as const,
    size: TEXT_SIZE,
  }));
  const pauses = pauseTicks(
    points.map(({ pauseS }) => pauseS),
    x,
  ).map((pauseS) => ({
    x: x(pauseS),
    y: height + 12,
    text: durationText(pauseS),
    align: 'center' as const,
    size: TEXT_SIZE,
  }));
  const curves = series.flatMap(({ points: own, look }) =>
    own.slice(1).map((point, i): LineItem => {
      const before = own[i] ?? point;
      return {
        x: x(before.pauseS),
        y: y(before.reading),
        x2: x(point.pauseS),
        y2: y(point.reading),
        colour: look.colour,
        width: 1.8,
        dash: look.dash,
      };
    }),
  );
  const dots = series.flatMap(({ points: own, look }) =>
    own.map(({ pauseS, reading }) => ({ x: x(pauseS), y: y(reading), ...look })),
  );
  const ends = series.map(({ points: own, look }, i) => {
    const { pauseS, reading } = own.at(-1) ?? { pauseS: 0, reading: 0 };
    return { name: names[i] ?? '', look, x: x(pauseS), y: y(reading) };
  });
  return group(
    'plot',
    { x: LEFT, y: 0, width: PLOT_WIDTH, height: height + BOTTOM },
    layered([
      lines('grid', grid),
      lines('axes', [
        { x: 0, y: 0, x2: 0, y2: height, colour: GREY, width: 1 },
        { x: 0, y: height, x2: PLOT_WIDTH, y2: height, colour: GREY, width: 1 },
      ]),
      texts('readings', readings),
      texts('pauses', pauses),
      texts('titles', [
        {
          x: 0,
          y: height + 32,
          text: 'pause before the first water (square-root axis)',
          size: TEXT_SIZE,
        },
        { x: 6, y: 8, text: `first reading (${unit})`, size: TEXT_SIZE, colour: GREY },
      ]),
      lines('curves', curves),
      symbols('points', dots),
      ...nameLayers(ends, { width: PLOT_WIDTH, height }),
    ]),
  );
}

/** Tested pauses whose labels do not meet, the longest first. */
function pauseTicks(pauses: readonly number[], x: (pauseS: number) => number): number[] {
  const shown: number[] = [];
  for (const pauseS of [...new Set(pauses)].sort((a, b) => b - a)) {
    const next = shown.at(-1);
    const half = (value: number): number => textWidth(durationText(value), TEXT_SIZE) / 2;
    const fits =
      next === undefined || x(next) - half(next) - (x(pauseS) + half(pauseS)) >= TICK_GAP;
    if (fits) shown.push(pauseS);
  }
  return shown;
}

/** The lowest and the highest first reading, each with device and pause. */
function describe(series: readonly Series[], unit: string): string {
  const all = series
    .flatMap(({ name, points }) => points.map((point) => ({ name, ...point })))
    .sort((a, b) => a.reading - b.reading);
  const text = ({ name, pauseS, reading }: (typeof all)[number]): string =>
    `${significant(reading, 3)} ${unit} (${name}, after ${durationText(pauseS)})`;
  const [low] = all;
  const high = all.at(-1);
  if (low === undefined || high === undefined) return '';
  const range = low === high ? text(low) : `from ${text(low)} to ${text(high)}`;
  return `First readings after a pause, ${series.length} ${series.length === 1 ? 'line' : 'lines'}: ${range}.`;
}
