import type { Axis, Mark, Scale } from 'vega';
import { dataLayer, group, layered, SYMBOL_AREA } from './chart-marks.ts';
import { nameLayers, TEXT_SIZE } from './line-names.ts';
import { GREY, PALE, type SeriesLook } from './series-look.ts';

/** A point in the units of the axes; null is a gap in the line. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number | null;
}

/** A curve with its look, the points that carry a symbol, and the name at its right end. */
export interface PlottedCurve {
  readonly name: string;
  readonly look: SeriesLook;
  readonly points: readonly CurvePoint[];
  readonly marked: readonly CurvePoint[];
  /** Where the line ends, in the unit of the upright axis. */
  readonly end: number;
}

export interface CurvePlot {
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly x: {
    readonly type: 'linear' | 'log';
    readonly domain: readonly number[];
    readonly ticks: readonly number[];
    readonly title: string;
  };
  /** From zero to the last tick. */
  readonly y: { readonly ticks: readonly number[]; readonly title: string };
  readonly curves: readonly PlottedCurve[];
}

/** Curves over two axes, told apart by dash and shape, each named at its right end. */
export function curvePlot({ left, width, height, x, y, curves }: CurvePlot): Mark {
  const top = y.ticks.at(-1) ?? 1;
  const look = {
    titleFontSize: TEXT_SIZE,
    titleFontWeight: 'normal',
    labelOverlap: false,
  } as const;
  const common = { domainColor: GREY, tickColor: GREY, gridColor: PALE, aria: false, ...look };
  const axis = (orient: 'bottom' | 'left', values: readonly number[], title: string): Axis => ({
    ...common,
    orient,
    scale: orient === 'left' ? 'y' : 'x',
    values: [...values],
    format: '~f',
    title,
    ...(orient === 'left' ? { grid: true } : {}),
  });
  const scales: Scale[] = [
    { name: 'x', type: x.type, domain: [...x.domain], range: [0, width] },
    { name: 'y', type: 'linear', domain: [0, top], range: [height, 0] },
  ];
  const ends = curves.map((curve) => ({
    name: curve.name,
    look: curve.look,
    x: width,
    y: height * (1 - curve.end / top),
  }));
  return group(
    'plot',
    { x: left, y: 0, width, height },
    {
      ...layered([...curveLayers(curves), ...nameLayers(ends, { width, height })]),
      scales,
      axes: [axis('bottom', x.ticks, x.title), axis('left', y.ticks, y.title)],
    },
  );
}

function curveLayers(curves: readonly PlottedCurve[]) {
  const place = { x: { scale: 'x', field: 'x' }, y: { scale: 'y', field: 'y' } };
  const lines = curves.map(({ look, points }, i) =>
    dataLayer(`curve-${i}`, 'line', points, {
      ...place,
      defined: { signal: 'isValid(datum.y)' },
      stroke: { value: look.colour },
      strokeWidth: { value: 1.8 },
      strokeDash: { value: look.dash },
    }),
  );
  const shapes = curves.flatMap(({ look, marked }) =>
    marked.map((point) => ({ ...point, ...look })),
  );
  const marks = dataLayer('points', 'symbol', shapes, {
    ...place,
    shape: { field: 'shape' },
    fill: { field: 'colour' },
    size: { value: SYMBOL_AREA },
  });
  return [...lines, marks];
}
