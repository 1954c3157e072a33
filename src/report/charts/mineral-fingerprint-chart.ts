import type { Mark } from 'vega';
import { atMostDigits } from '../format-number.ts';
import { printable } from '../printable.ts';
import { emptyChart, framed, type KeyEntry } from './chart-frame.ts';
import { type BoxItem, boxes, group, type LineItem, layered, lines, texts } from './chart-marks.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { BAND, BLUE, GREY, INK, PALE } from './series-look.ts';
import { shortened, textWidth, widestText } from './text-width.ts';

/** What is known of one mineral in one water; null high: above the lab's range. */
export interface FingerprintFigure {
  readonly mineral: string;
  readonly low: number;
  readonly high: number | null;
}

/** A feed or product with its figures; a mineral left out was not tested. */
export interface FingerprintWater {
  readonly name: string;
  readonly figures: readonly FingerprintFigure[];
}

export interface MineralFingerprintInput {
  /** States the finding. */
  readonly title: string;
  /** Columns, in order, each with its unit. */
  readonly minerals: readonly {
    readonly key: string;
    readonly name: string;
    readonly unit: string;
  }[];
  /** Rows, in order: the feed first. */
  readonly waters: readonly FingerprintWater[];
}

const ROW = 18;
const BAR = 10;
const PLOT = 56;
const GAP = 6;
const COLUMN_GAP = 14;
const SIZE = 11;
const HEAD = 34;
const LONGEST_NAME = 300;

const KEY: readonly KeyEntry[] = [
  {
    label: 'at least present',
    boxes: [{ x: 0, y: -BAR / 2, width: 26, height: BAR, fill: BLUE, stroke: INK }],
  },
  {
    label: 'possible up to the limit (<)',
    boxes: [{ x: 0, y: -BAR / 2, width: 26, height: BAR, fill: 'white', stroke: INK }],
  },
];

/**
 * Mineral fingerprint of waters: one row a water, one column a mineral, a bar in each cell and its
 * figure beside it. A dark bar is what is there at least, an empty one what may be there; the figure
 * says the same in words, so that no colour is needed. Each column has its own scale from 0 to its
 * largest figure, which its head prints.
 *
 * @throws {RangeError} two figures for one water and mineral
 */
export async function mineralFingerprintChart(input: MineralFingerprintInput): Promise<Chart> {
  const title = printable(input.title);
  const { minerals } = input;
  if (minerals.length === 0 || input.waters.length === 0) {
    return drawSvg(emptyChart(title, 'No minerals to show.'), title, 'No minerals to show.');
  }
  const names = input.waters.map(({ name }) => shortened(printable(name), SIZE, LONGEST_NAME));
  const columns = minerals.map(({ key }) => input.waters.map((water) => figureIn(water, key)));
  let x = Math.ceil(widestText(names, SIZE)) + GAP + COLUMN_GAP;
  const placed = minerals.map((mineral, i) => {
    const figures = columns[i] ?? [];
    const head = [printable(mineral.name), `${scaleText(figures)} ${mineral.unit}`] as const;
    const shown = figures.map(shownFigure);
    const body = PLOT + GAP + widestText(shown, SIZE);
    const heads = Math.max(...head.map((text) => textWidth(text, SIZE, 'bold')));
    const at = { head, figures, shown, x };
    x += Math.ceil(Math.max(body, heads)) + COLUMN_GAP;
    return at;
  });
  const width = x - COLUMN_GAP;
  const height = HEAD + names.length * ROW;
  const marks: Mark[] = [
    group('rows', { x: 0, y: HEAD, width, height: height - HEAD }, rowNames(names, width)),
    ...placed.map((column, i) =>
      group(
        `column-${i}`,
        { x: column.x, y: HEAD, width: PLOT, height: height - HEAD },
        cells(column.head, column.figures, column.shown),
      ),
    ),
  ];
  const spec = framed({ title, key: KEY, width, height, body: marks });
  return drawSvg(spec, title, describe(input, columns));
}

type Cell = FingerprintFigure | null;

function figureIn(water: FingerprintWater, key: string): Cell {
  const found = water.figures.filter(({ mineral }) => mineral === key);
  if (found.length > 1) throw new RangeError(`two figures of ${key} for ${water.name}`);
  return found[0] ?? null;
}

/** The largest finite end of a column; 0 where there is none. */
function topOf(figures: readonly Cell[]): number {
  return figures.reduce((top, cell) => Math.max(top, cell?.high ?? cell?.low ?? 0), 0);
}

function scaleText(figures: readonly Cell[]): string {
  return `0 to ${atMostDigits(topOf(figures), 3)}`;
}

function shownFigure(cell: Cell): string {
  if (cell === null) return 'not tested';
  const { low, high } = cell;
  if (high === null) return `> ${atMostDigits(low, 3)}`;
  if (low === 0 && high > 0) return `< ${atMostDigits(high, 3)}`;
  const [from, to] = [atMostDigits(low, 3), atMostDigits(high, 3)];
  return from === to ? from : `${from} to ${to}`;
}

function rowNames(names: readonly string[], width: number) {
  const stripes = names.flatMap((_, i) =>
    i % 2 === 0 ? [{ x: 0, y: i * ROW, width, height: ROW, fill: BAND }] : [],
  );
  const labels = names.map((text, i) => ({ x: 0, y: (i + 0.5) * ROW, text, size: SIZE }));
  return layered([boxes('bands', stripes), texts('waters', labels)]);
}

function cells(
  head: readonly string[],
  figures: readonly Cell[],
  shown: readonly string[],
): ReturnType<typeof layered> {
  const top = topOf(figures) || 1;
  const scaled = (value: number): number => (PLOT * value) / top;
  const sure: BoxItem[] = [];
  const possible: BoxItem[] = [];
  const axis: LineItem[] = [{ x: 0, y: 0, x2: 0, y2: figures.length * ROW, colour: GREY }];
  for (const [i, cell] of figures.entries()) {
    if (cell === null) continue;
    const y = i * ROW + (ROW - BAR) / 2;
    const low = scaled(cell.low);
    const high = cell.high === null ? PLOT : scaled(cell.high);
    if (high > low) {
      possible.push({ x: low, y, width: high - low, height: BAR, fill: 'white', stroke: INK });
    }
    if (low > 0) sure.push({ x: 0, y, width: low, height: BAR, fill: BLUE, stroke: INK });
  }
  const heads = head.map((text, i) => ({
    x: 0,
    y: -HEAD + 8 + i * 14,
    text,
    size: SIZE,
    ...(i === 0 ? { weight: 'bold' as const } : { colour: GREY }),
  }));
  const labels = shown.map((text, i) => ({
    x: PLOT + GAP,
    y: (i + 0.5) * ROW,
    text,
    size: SIZE,
    ...(figures[i] === null ? { colour: GREY } : {}),
  }));
  const end = [{ x: PLOT, y: 0, x2: PLOT, y2: figures.length * ROW, colour: PALE }];
  return layered([
    lines('ends', end),
    boxes('possible', possible),
    boxes('sure', sure),
    lines('axis', axis),
    texts('heads', heads),
    texts('figures', labels),
  ]);
}

/** The feed's figures in words, and how many waters follow. */
function describe(input: MineralFingerprintInput, columns: readonly (readonly Cell[])[]): string {
  const [first] = input.waters;
  const figures = input.minerals.slice(0, 3).map((mineral, i) => {
    const cell = columns[i]?.[0] ?? null;
    return `${mineral.name} ${shownFigure(cell)}${cell === null ? '' : ` ${mineral.unit}`}`;
  });
  return `Minerals of ${input.waters.length} waters as bars, one column a mineral. ${first?.name ?? ''}: ${figures.join(', ')}.`;
}
