import type { Axis, Mark } from 'vega';
import type { ReductionOutcome } from '../../model/index.ts';
import { printable } from '../printable.ts';
import { wrapText } from '../wrap-text.ts';
import { emptyChart, framed } from './chart-frame.ts';
import { boxes, group, layered, texts } from './chart-marks.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { FLOOR, type ReductionMark, reductionKey, reductionLayers } from './reduction-marks.ts';
import { BAND, GREY, PALE } from './series-look.ts';
import { shortened, textWidth, widestText } from './text-width.ts';

export interface ReductionsChartInput {
  /** States the finding. */
  readonly title: string;
  /** Panels, in order. */
  readonly analytes: readonly { readonly key: string; readonly name: string }[];
  /** Rows of every panel, in order. */
  readonly devices: readonly { readonly key: string; readonly name: string }[];
  /** At most one for an analyte and a device; a pair without one is printed as not tested. */
  readonly reductions: readonly ReductionMark[];
}

const ROW = 16;
const PLOT = 150;
const GAP = 12;
const PANEL_GAP = 26;
const SIZE = 11;
const AXIS_HEIGHT = 20;
const AXIS_TITLE_HEIGHT = 16;
const HEAD_LINE = 15;
const WIDEST = 1000;
const MOST_COLUMNS = 3;
const LONGEST_NAME = 420;
const LONGEST_SHOWN = 240;

/**
 * Reductions of every analyte across the devices as ranges, one panel an analyte, one row a
 * device. A dot is an estimate, a line a range, ticks its ends; an arrow to the side of 100 % says
 * that complete removal is possible and not shown; a rise, and no reduction shown, have shapes of
 * their own. A line that reaches the left edge goes on below it. Each row ends with its statement.
 *
 * @throws {RangeError} two reductions for one analyte and device
 */
export async function reductionsChart(input: ReductionsChartInput): Promise<Chart> {
  const { analytes, devices } = input;
  const title = printable(input.title);
  const shown = rowsOf(input);
  if (analytes.length === 0 || devices.length === 0) {
    return drawSvg(emptyChart(title, 'No reductions to show.'), title, 'No reductions to show.');
  }
  const names = devices.map((device) => shortened(printable(device.name), SIZE, LONGEST_NAME));
  const nameWidth = Math.ceil(widestText(names, SIZE)) + GAP;
  const shownWidth = Math.ceil(
    widestText(
      shown.flat().map((row) => row.shown),
      SIZE,
    ),
  );
  const panelWidth = PLOT + GAP + shownWidth + PANEL_GAP;
  const columns = Math.max(
    1,
    Math.min(MOST_COLUMNS, analytes.length, Math.floor((WIDEST - nameWidth) / panelWidth)),
  );
  const width = nameWidth + columns * panelWidth - PANEL_GAP;
  const heads = analytes.map((analyte) =>
    wrapText(printable(analyte.name), panelWidth - PANEL_GAP, (text) =>
      textWidth(text, SIZE, 'bold'),
    ),
  );

  const body: Mark[] = [];
  let top = 0;
  for (let first = 0; first < analytes.length; first += columns) {
    const inLine = Math.min(columns, analytes.length - first);
    const headHeight =
      Math.max(...heads.slice(first, first + inLine).map((head) => head.length)) * HEAD_LINE + 4;
    const plotTop = top + headHeight;
    body.push(bands(first, names, { width, top: plotTop }));
    for (let i = first; i < first + inLine; i += 1) {
      const isLowest = i + columns >= analytes.length;
      body.push(
        panel(heads[i] ?? [], shown[i] ?? [], {
          index: i,
          x: nameWidth + (i - first) * panelWidth,
          y: plotTop,
          isLowest,
        }),
      );
    }
    const holdsLowest = first + inLine + columns > analytes.length;
    top = plotTop + devices.length * ROW + AXIS_HEIGHT + (holdsLowest ? AXIS_TITLE_HEIGHT : 0) + 8;
  }
  const key = reductionKey(new Set(shown.flat().map((row) => row.outcome)));
  const spec = framed({ title, key, width, height: top, body });
  return drawSvg(spec, title, describe(input, shown.flat()));
}

/** The rows of each panel, in the order of the devices. */
function rowsOf(input: ReductionsChartInput): ReductionMark[][] {
  const known = new Map<string, ReductionMark>();
  for (const mark of input.reductions) {
    const pair = JSON.stringify([mark.analyte, mark.device]);
    if (known.has(pair)) throw new RangeError(`two reductions for ${pair}`);
    known.set(pair, mark);
  }
  return input.analytes.map((analyte) =>
    input.devices.map((device) => {
      const mark = known.get(JSON.stringify([analyte.key, device.key])) ?? {
        ...UNTESTED,
        analyte: analyte.key,
        device: device.key,
      };
      return { ...mark, shown: shortened(printable(mark.shown), SIZE, LONGEST_SHOWN) };
    }),
  );
}

const UNTESTED = {
  outcome: 'untested',
  firm: true,
  low: null,
  estimate: null,
  high: null,
  shown: 'not tested',
} as const;

/** Names at the left and a band behind every second row, across all panels of one line. */
function bands(
  first: number,
  names: readonly string[],
  at: { readonly width: number; readonly top: number },
): Mark {
  const rows = names.map((text, i) => ({ x: 0, y: (i + 0.5) * ROW, text, size: SIZE }));
  const stripes = names.flatMap((_, i) =>
    i % 2 === 0 ? [{ x: 0, y: i * ROW, width: at.width, height: ROW, fill: BAND }] : [],
  );
  const layers = [boxes(`bands-${first}`, stripes), texts(`devices-${first}`, rows)];
  const height = names.length * ROW;
  return group(`line-${first}`, { x: 0, y: at.top, width: at.width, height }, layered(layers));
}

function panel(
  head: readonly string[],
  rows: readonly ReductionMark[],
  at: {
    readonly index: number;
    readonly x: number;
    readonly y: number;
    readonly isLowest: boolean;
  },
): Mark {
  const headTop = -head.length * HEAD_LINE - 2;
  const layers = layered([
    texts(
      'analyte',
      head.map((text, i) => ({
        x: 0,
        y: headTop + (i + 0.5) * HEAD_LINE,
        text,
        size: SIZE,
        weight: 'bold',
      })),
    ),
    ...reductionLayers(rows, ROW),
    texts(
      'shown',
      rows.map((row, i) => ({
        x: PLOT + GAP,
        y: (i + 0.5) * ROW,
        text: row.shown,
        size: SIZE,
        ...(isSilent(row.outcome) ? { colour: GREY } : {}),
      })),
    ),
  ]);
  const axis: Axis = {
    orient: 'bottom',
    scale: 'percent',
    values: [0, 25, 50, 75, 100],
    grid: true,
    gridColor: PALE,
    domainColor: GREY,
    tickColor: GREY,
    labelFontSize: 10,
    labelOverlap: false,
    titleFontSize: 10,
    titleFontWeight: 'normal',
    titlePadding: 3,
    aria: false,
    ...(at.isLowest ? { title: 'reduction (%)' } : {}),
  };
  return group(
    `panel-${at.index}`,
    { x: at.x, y: at.y, width: PLOT, height: rows.length * ROW },
    {
      ...layers,
      scales: [{ name: 'percent', type: 'linear', domain: [FLOOR, 100], range: [0, PLOT] }],
      axes: [axis],
    },
  );
}

/** Outcomes that have a statement and no mark. */
function isSilent(outcome: ReductionOutcome): boolean {
  return outcome === 'untested' || outcome === 'untestable';
}

function describe(input: ReductionsChartInput, rows: readonly ReductionMark[]): string {
  const counted = (label: string, ...outcomes: readonly ReductionOutcome[]): string =>
    `${label}: ${rows.filter((row) => outcomes.includes(row.outcome)).length}.`;
  return [
    'Reductions in percent as ranges;',
    `analytes: ${input.analytes.length}, devices: ${input.devices.length}.`,
    counted('Measured or bounded', 'measured', 'between', 'at-least'),
    counted('No reduction shown', 'not-shown'),
    counted('Rises', 'rise'),
    counted('Feed too low to show a reduction', 'untestable'),
    counted('Not tested', 'untested'),
  ].join(' ');
}
