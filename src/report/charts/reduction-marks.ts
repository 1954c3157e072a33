import type { ReductionOutcome } from '../../model/index.ts';
import { type KeyEntry, SAMPLE_WIDTH } from './chart-frame.ts';
import { CROSS, dataLayer, type Layer, SYMBOL_AREA } from './chart-marks.ts';
import { BLUE, GREY, VERMILLION } from './series-look.ts';

/** One row of one panel: what is known of a device's reduction of an analyte. */
export interface ReductionMark {
  readonly analyte: string;
  readonly device: string;
  readonly outcome: ReductionOutcome;
  /** False where it rests on assumed uncertainty alone: its mark is hollow. */
  readonly firm: boolean;
  /** Fractions; null where unbounded or unknown. */
  readonly low: number | null;
  readonly estimate: number | null;
  readonly high: number | null;
  /** The statement as worded in the tables; printed at the end of the row. */
  readonly shown: string;
}

/** Left edge of the plot in percent; what lies below is drawn at it. */
export const FLOOR = -12;

const RISE_AT = -6;
const TICK = 4;
/** Pixels by which an arrow stands off 100 %, so that it hides no bound near it. */
const ARROW_SHIFT = 3;

interface Line {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly colour: string;
  readonly dash: readonly number[];
}

interface Point {
  readonly at: number;
  readonly y: number;
  readonly shape: string;
  readonly shift: number;
  readonly colour: string;
  readonly fill: string;
}

interface Drawn {
  readonly lines: readonly Line[];
  readonly ends: readonly { readonly at: number; readonly y: number; readonly colour: string }[];
  readonly points: readonly Point[];
}

/** Lines, end ticks and symbols of the rows of a panel, on its scale `percent`. */
export function reductionLayers(rows: readonly ReductionMark[], rowHeight: number): Layer[] {
  const drawn = rows.map((row, i) => drawnRow(row, (i + 0.5) * rowHeight));
  return [
    dataLayer(
      'ranges',
      'rule',
      drawn.flatMap((each) => each.lines),
      {
        x: { scale: 'percent', field: 'from' },
        x2: { scale: 'percent', field: 'to' },
        y: { field: 'y' },
        stroke: { field: 'colour' },
        strokeWidth: { value: 2 },
        strokeDash: { field: 'dash' },
      },
    ),
    dataLayer(
      'ends',
      'rule',
      drawn.flatMap((each) => each.ends),
      {
        x: { scale: 'percent', field: 'at' },
        y: { field: 'y', offset: -TICK },
        y2: { field: 'y', offset: TICK },
        stroke: { field: 'colour' },
        strokeWidth: { value: 1.5 },
      },
    ),
    dataLayer(
      'points',
      'symbol',
      drawn.flatMap((each) => each.points),
      {
        x: { scale: 'percent', field: 'at', offset: { field: 'shift' } },
        y: { field: 'y' },
        shape: { field: 'shape' },
        size: { value: SYMBOL_AREA },
        fill: { field: 'fill' },
        stroke: { field: 'colour' },
        strokeWidth: { value: 1.4 },
      },
    ),
  ];
}

function drawnRow(row: ReductionMark, y: number): Drawn {
  const low = row.low === null ? FLOOR : percent(row.low);
  const high = row.high === null ? 100 : percent(row.high);
  const colour = COLOURS[row.outcome];
  const point = (at: number, shape: string): Point => ({
    at,
    y,
    shape,
    shift: 0,
    colour,
    fill: row.firm ? colour : 'white',
  });
  const range = { from: low, to: high, y, colour, dash: [] };
  const lowEnd = low > FLOOR ? [{ at: low, y, colour }] : [];
  const arrow = row.high === null ? [{ ...point(100, 'triangle-right'), shift: ARROW_SHIFT }] : [];
  const highEnd = row.high === null ? [] : [{ at: high, y, colour }];
  switch (row.outcome) {
    case 'measured':
      return {
        lines: low < high && row.low !== null ? [range] : [],
        ends: [],
        points: [
          ...arrow,
          ...(row.estimate === null ? [] : [point(percent(row.estimate), 'circle')]),
        ],
      };
    case 'between':
    case 'at-least':
      return { lines: [range], ends: [...lowEnd, ...highEnd], points: arrow };
    case 'not-shown':
      return {
        lines: [{ ...range, dash: [3, 2] }],
        ends: highEnd,
        points: [...arrow, point(0, CROSS)],
      };
    case 'rise':
      return { lines: [], ends: [], points: [point(RISE_AT, 'triangle-left')] };
    case 'untested':
    case 'untestable':
      return { lines: [], ends: [], points: [] };
    default:
      return row.outcome satisfies never;
  }
}

const COLOURS: Readonly<Record<ReductionOutcome, string>> = {
  measured: BLUE,
  between: BLUE,
  'at-least': BLUE,
  'not-shown': GREY,
  rise: VERMILLION,
  untestable: GREY,
  untested: GREY,
};

function percent(fraction: number): number {
  return Math.max(FLOOR, Math.min(100, fraction * 100));
}

/** The key: an entry for each outcome that occurs and has a mark. */
export function reductionKey(outcomes: ReadonlySet<ReductionOutcome>): KeyEntry[] {
  const right = SAMPLE_WIDTH - 8;
  const middle = right / 2;
  const line = (colour: string, dash: readonly number[] = []) => ({
    x: 0,
    y: 0,
    x2: right,
    y2: 0,
    colour,
    width: 2,
    dash,
  });
  const end = (x: number) => ({ x, y: -TICK, x2: x, y2: TICK, colour: BLUE });
  const symbol = (x: number, shape: string, colour: string) => ({
    x,
    y: 0,
    shape,
    colour,
  });
  const entries: readonly (KeyEntry & { readonly outcome: ReductionOutcome })[] = [
    {
      outcome: 'measured',
      label: 'measured, with its interval',
      lines: [line(BLUE)],
      symbols: [symbol(middle, 'circle', BLUE)],
    },
    {
      outcome: 'between',
      label: 'between two bounds',
      lines: [line(BLUE), end(0), end(right)],
    },
    {
      outcome: 'at-least',
      label: 'at least; complete removal possible, not shown',
      lines: [line(BLUE), end(0)],
      symbols: [symbol(right - 2, 'triangle-right', BLUE)],
    },
    {
      outcome: 'not-shown',
      label: 'no reduction shown',
      lines: [line(GREY, [3, 2])],
      symbols: [symbol(middle, CROSS, GREY)],
    },
    {
      outcome: 'rise',
      label: 'rise (hollow: apparent)',
      symbols: [symbol(middle, 'triangle-left', VERMILLION)],
    },
  ];
  return entries.filter((entry) => outcomes.has(entry.outcome));
}
