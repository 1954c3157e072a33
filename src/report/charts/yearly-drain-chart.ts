import type { Axis, Mark } from 'vega';
import { significant } from '../format-number.ts';
import { printable } from '../printable.ts';
import { emptyChart, framed, type KeyEntry } from './chart-frame.ts';
import { boxes, dataLayer, group, layered, texts } from './chart-marks.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { ticksFromZero } from './nice-ticks.ts';
import { BAND, BLUE, GREY, INK, PALE } from './series-look.ts';
import { shortened, textWidth, widestText } from './text-width.ts';

/** What a device sends to drain in a year of a scenario. */
export interface YearlyDrain {
  readonly scenario: string;
  /** Name of the device, and its variant where it has several. */
  readonly device: string;
  /** Litres a year while producing; null where not known. */
  readonly producingL: number | null;
  /** Litres a year by flushing; null where not known. */
  readonly flushingL: number | null;
}

export interface YearlyDrainChartInput {
  /** States the finding. */
  readonly title: string;
  /** One panel a scenario, in order of first appearance; rows in the order given. */
  readonly rows: readonly YearlyDrain[];
}

const ROW = 18;
const BAR = 12;
const PLOT = 420;
const GAP = 8;
const SIZE = 11;
const HEAD = 20;
const AXIS_HEIGHT = 24;
const AXIS_TITLE_HEIGHT = 16;
const LONGEST_NAME = 420;
const FLUSH_FILL = '#f7d08a';

const KEY: readonly KeyEntry[] = [
  {
    label: 'while producing',
    boxes: [{ x: 0, y: -BAR / 2, width: 26, height: BAR, fill: BLUE, stroke: INK }],
  },
  {
    label: 'by flushing',
    boxes: [{ x: 0, y: -BAR / 2, width: 26, height: BAR, fill: FLUSH_FILL, stroke: INK }],
  },
];

/**
 * Yearly drain of each device and scenario as a horizontal bar, what drains while producing (dark)
 * and by flushing (light) end to end, the total at the end of the bar. One scale serves all
 * scenarios. A row without both figures has no bar and says so.
 */
export async function yearlyDrainChart(input: YearlyDrainChartInput): Promise<Chart> {
  const title = printable(input.title);
  const rows = input.rows.map((row) => ({
    ...row,
    scenario: printable(row.scenario),
    device: shortened(printable(row.device), SIZE, LONGEST_NAME),
  }));
  if (rows.length === 0) {
    return drawSvg(
      emptyChart(title, 'No yearly drain to show.'),
      title,
      'No yearly drain to show.',
    );
  }
  const scenarios = [...new Set(rows.map((row) => row.scenario))];
  const nameWidth =
    Math.ceil(
      widestText(
        rows.map((row) => row.device),
        SIZE,
      ),
    ) + GAP;
  const ticks = ticksFromZero(
    rows.reduce((top, row) => Math.max(top, totalOf(row) ?? 0), 0),
    5,
  );
  const top = ticks.at(-1) ?? 1;
  const labelEnd = rows.reduce((end, row) => {
    const bar = (PLOT * (totalOf(row) ?? 0)) / top;
    return Math.max(end, bar + GAP + textWidth(shownTotal(row), SIZE));
  }, PLOT);
  const headEnd = widestText(scenarios, SIZE) * 1.15;
  const width = nameWidth + Math.ceil(Math.max(labelEnd, headEnd));

  const body: Mark[] = [];
  let y = 0;
  scenarios.forEach((scenario, i) => {
    const own = rows.filter((row) => row.scenario === scenario);
    const isLast = i === scenarios.length - 1;
    const at = { index: i, y: y + HEAD, nameWidth, width, isLast };
    body.push(...panel(scenario, own, ticks, at));
    y += HEAD + own.length * ROW + AXIS_HEIGHT + (isLast ? AXIS_TITLE_HEIGHT : 6);
  });
  const spec = framed({ title, key: KEY, width, height: y, body });
  return drawSvg(spec, title, describe(rows, scenarios));
}

function panel(
  scenario: string,
  rows: readonly YearlyDrain[],
  ticks: readonly number[],
  at: {
    readonly index: number;
    readonly y: number;
    readonly nameWidth: number;
    readonly width: number;
    readonly isLast: boolean;
  },
): Mark[] {
  const top = ticks.at(-1) ?? 1;
  const height = rows.length * ROW;
  const middle = (i: number): number => (i + 0.5) * ROW;
  const bands = rows.flatMap((_, i) =>
    i % 2 === 0 ? [{ x: 0, y: i * ROW, width: at.width, height: ROW, fill: BAND }] : [],
  );
  const names = rows.map((row, i) => ({ x: 0, y: middle(i), text: row.device, size: SIZE }));
  const head = { x: 0, y: -HEAD / 2, text: scenario, size: SIZE, weight: 'bold' } as const;
  const bars = rows.flatMap((row, i) => {
    const { producingL, flushingL } = row;
    if (producingL === null || flushingL === null) return [];
    const y = middle(i) - BAR / 2;
    return [
      { y, from: 0, to: producingL, fill: BLUE },
      { y, from: producingL, to: producingL + flushingL, fill: FLUSH_FILL },
    ].filter((bar) => bar.to > bar.from);
  });
  const totals = rows.map((row, i) => ({
    x: (PLOT * (totalOf(row) ?? 0)) / top + GAP,
    y: middle(i),
    text: shownTotal(row),
    size: SIZE,
    ...(totalOf(row) === null ? { colour: GREY } : {}),
  }));
  const axis: Axis = {
    orient: 'bottom',
    scale: 'litres',
    values: [...ticks],
    format: '~f',
    grid: true,
    gridColor: PALE,
    domainColor: GREY,
    tickColor: GREY,
    labelOverlap: false,
    titleFontSize: SIZE,
    titleFontWeight: 'normal',
    titlePadding: 3,
    aria: false,
    ...(at.isLast ? { title: 'drain (L per year)' } : {}),
  };
  return [
    group(
      `names-${at.index}`,
      { x: 0, y: at.y, width: at.width, height },
      layered([boxes('bands', bands), texts('scenario', [head]), texts('devices', names)]),
    ),
    group(
      `panel-${at.index}`,
      { x: at.nameWidth, y: at.y, width: PLOT, height },
      {
        ...layered([
          dataLayer('bars', 'rect', bars, {
            x: { scale: 'litres', field: 'from' },
            x2: { scale: 'litres', field: 'to' },
            y: { field: 'y' },
            height: { value: BAR },
            fill: { field: 'fill' },
            stroke: { value: INK },
            strokeWidth: { value: 0.6 },
          }),
          texts('totals', totals),
        ]),
        scales: [{ name: 'litres', type: 'linear', domain: [0, top], range: [0, PLOT] }],
        axes: [axis],
      },
    ),
  ];
}

function totalOf(row: YearlyDrain): number | null {
  return row.producingL === null || row.flushingL === null ? null : row.producingL + row.flushingL;
}

function shownTotal(row: YearlyDrain): string {
  const total = totalOf(row);
  if (total === null || row.flushingL === null) return 'not known';
  const text = `${significant(total, 3)} L`;
  return row.flushingL > 0 ? `${text}, ${flushShare(row.flushingL / total)} by flushing` : text;
}

/** A share of a whole that is neither 0 nor, unless it is all, 100 %. */
function flushShare(share: number): string {
  if (share === 1) return 'all';
  if (share < 0.01) return 'below 1 %';
  if (share > 0.99) return 'over 99 %';
  return `${significant(share * 100, 2)} %`;
}

/** Smallest and largest total of each scenario and their share by flushing. */
function describe(rows: readonly YearlyDrain[], scenarios: readonly string[]): string {
  const sentences = scenarios.map((scenario) => {
    const known = rows
      .filter((row) => row.scenario === scenario && totalOf(row) !== null)
      .sort((a, b) => (totalOf(a) ?? 0) - (totalOf(b) ?? 0));
    const [low, high] = [known[0], known.at(-1)];
    if (low === undefined || high === undefined) return `${scenario}: not known.`;
    const text = (row: YearlyDrain): string => `${shownTotal(row)} (${row.device})`;
    return low === high
      ? `${scenario}: ${text(low)}.`
      : `${scenario}: from ${text(low)} to ${text(high)}.`;
  });
  return (
    `Litres a year to drain, split into drain while producing and by flushing, ` +
    `${rows.length} bars. ${sentences.join(' ')}`
  );
}
