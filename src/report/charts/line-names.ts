import { lines, symbols, texts } from './chart-marks.ts';
import type { SeriesLook } from './series-look.ts';
import { spreadLabels } from './spread-labels.ts';
import { shortened, widestText } from './text-width.ts';

/** Size of the texts of a line chart. */
export const TEXT_SIZE = 11;

/** Height of one name, from line to line. */
const NAME_LINE = 16;
const LEADER = 26;
const SAMPLE = 30;
const LONGEST_NAME = 420;

/** A line with its name and the place where it ends, in the pixels of the plot. */
export interface NamedEnd {
  readonly name: string;
  readonly look: SeriesLook;
  readonly x: number;
  readonly y: number;
}

/** A name cut to what a chart has room for. */
export function lineName(name: string): string {
  return shortened(name, TEXT_SIZE, LONGEST_NAME);
}

/** Height of a plot with room for a name to every line. */
export function heightForNames(least: number, count: number): number {
  return Math.max(least, count * NAME_LINE);
}

/** Width that names beside a plot take, their leaders and samples included. */
export function widthOfNames(names: readonly string[]): number {
  return LEADER + SAMPLE + Math.ceil(widestText(names, TEXT_SIZE));
}

/**
 * Names right of a plot, each with a leader from the end of its line and a sample of the line, moved
 * apart where ends lie close.
 *
 * @param plot size of the plot in pixels; `prefix` keeps layers of two plots of a chart apart
 */
export function nameLayers(
  ends: readonly NamedEnd[],
  { width, height, prefix = '' }: { width: number; height: number; prefix?: string },
) {
  const places = spreadLabels(
    ends.map(({ y }) => y),
    NAME_LINE,
    NAME_LINE / 2,
    height - NAME_LINE / 2,
  );
  const start = width + LEADER;
  const at = ends.map((end, i) => ({ ...end, to: places[i] ?? 0 }));
  return [
    lines(
      `${prefix}leaders`,
      at.map(({ x, y, to }) => {
        return { x: x + 3, y, x2: start - 3, y2: to, colour: '#b0b0b0', width: 0.8 };
      }),
    ),
    lines(
      `${prefix}samples`,
      at.map(({ look: { colour, dash }, to }) => {
        return { x: start, y: to, x2: start + SAMPLE - 6, y2: to, colour, width: 1.8, dash };
      }),
    ),
    symbols(
      `${prefix}sample-points`,
      at.map(({ look, to }) => ({ x: start + (SAMPLE - 6) / 2, y: to, ...look })),
    ),
    texts(
      `${prefix}names`,
      at.map(({ name, to }) => ({ x: start + SAMPLE, y: to, text: name, size: TEXT_SIZE })),
    ),
  ];
}
