import type { Data, Mark, Scope } from 'vega';
import { INK } from './series-look.ts';

/**
 * Marks at given pixels, each kind with its data inline, for all that has no scale: labels,
 * samples in the key, bands.
 */
export interface Layer {
  readonly data: Data;
  readonly mark: Mark;
}

export interface TextItem {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly align?: 'left' | 'right' | 'center';
  readonly weight?: 'normal' | 'bold';
  readonly size?: number;
  readonly colour?: string;
}

export interface LineItem {
  readonly x: number;
  readonly y: number;
  readonly x2: number;
  readonly y2: number;
  readonly colour: string;
  readonly width?: number;
  readonly dash?: readonly number[];
}

export interface SymbolItem {
  readonly x: number;
  readonly y: number;
  readonly shape: string;
  readonly colour: string;
  readonly hollow?: boolean;
}

export interface BoxItem {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly fill: string;
  readonly stroke?: string;
}

export const TEXT_SIZE = 11;
export const SYMBOL_AREA = 46;
/** A symbol of two crossing strokes. */
export const CROSS = 'M-1,-1L1,1M-1,1L1,-1';

/** Texts, their y in the middle of the line. */
export function texts(name: string, items: readonly TextItem[]): Layer {
  const values = items.map((item) => ({
    align: 'left',
    weight: 'normal',
    size: TEXT_SIZE,
    colour: INK,
    ...item,
  }));
  return layer(name, 'text', values, {
    text: { field: 'text' },
    align: { field: 'align' },
    baseline: { value: 'middle' },
    fontSize: { field: 'size' },
    fontWeight: { field: 'weight' },
    fill: { field: 'colour' },
  });
}

export function lines(name: string, items: readonly LineItem[]): Layer {
  const values = items.map((item) => ({ width: 1.5, dash: [], ...item }));
  return layer(name, 'rule', values, {
    x2: { field: 'x2' },
    y2: { field: 'y2' },
    stroke: { field: 'colour' },
    strokeWidth: { field: 'width' },
    strokeDash: { field: 'dash' },
  });
}

export function symbols(name: string, items: readonly SymbolItem[]): Layer {
  const values = items.map((item) => ({
    ...item,
    fill: item.hollow === true ? 'white' : item.colour,
  }));
  return layer(name, 'symbol', values, {
    shape: { field: 'shape' },
    size: { value: SYMBOL_AREA },
    fill: { field: 'fill' },
    stroke: { field: 'colour' },
    strokeWidth: { value: 1.4 },
  });
}

export function boxes(name: string, items: readonly BoxItem[]): Layer {
  const values = items.map((item) => ({ stroke: item.fill, ...item }));
  return layer(name, 'rect', values, {
    width: { field: 'width' },
    height: { field: 'height' },
    fill: { field: 'fill' },
    stroke: { field: 'stroke' },
    strokeWidth: { value: 1 },
  });
}

function layer(name: string, type: Mark['type'], values: readonly object[], encode: object): Layer {
  return dataLayer(name, type, values, { x: { field: 'x' }, y: { field: 'y' }, ...encode });
}

/** A mark of any encoding with its data inline. */
export function dataLayer(
  name: string,
  type: Mark['type'],
  values: readonly object[],
  enter: object,
): Layer {
  const data = `${name}-data`;
  return {
    data: { name: data, values: [...values] },
    mark: { type, name, aria: false, from: { data }, encode: { enter } } as Mark,
  };
}

/** The data and marks of layers, drawn in order, for a specification or a group. */
export function layered(layers: readonly Layer[]): Required<Pick<Scope, 'data' | 'marks'>> {
  return { data: layers.map((each) => each.data), marks: layers.map((each) => each.mark) };
}

/** A group of its own coordinates at a place, with what it holds. */
export function group(
  name: string,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  scope: Scope,
): Mark {
  const { x, y, width, height } = box;
  const enter = {
    x: { value: x },
    y: { value: y },
    width: { value: width },
    height: { value: height },
  };
  // Axes and grids of the group take their lengths from these.
  const signals = [
    { name: 'width', value: width },
    { name: 'height', value: height },
  ];
  return { type: 'group', name, aria: false, encode: { enter }, signals, ...scope };
}
