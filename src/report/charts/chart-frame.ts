import type { Mark, Spec } from 'vega';
import { wrapText } from '../wrap-text.ts';
import {
  type BoxItem,
  boxes,
  group,
  type LineItem,
  layered,
  lines,
  type SymbolItem,
  symbols,
  texts,
} from './chart-marks.ts';
import { GREY, INK } from './series-look.ts';
import { textWidth } from './text-width.ts';

const MARGIN = 14;
const TITLE_SIZE = 15;
const TITLE_LINE = 20;
const KEY_LINE = 20;
const KEY_SIZE = 11;
const KEY_GAP = 22;
/** Room for the sample in front of its label in the key. */
export const SAMPLE_WIDTH = 34;

/** An entry of the key: a label and its sample, drawn around the middle of its left edge. */
export interface KeyEntry {
  readonly label: string;
  readonly lines?: readonly LineItem[];
  readonly symbols?: readonly SymbolItem[];
  readonly boxes?: readonly BoxItem[];
}

/**
 * A chart with its title and key above the body: left-aligned, white behind, every size fixed.
 *
 * @param body marks in coordinates of the body, whose top left corner is 0, 0
 */
export function framed(parts: {
  readonly title: string;
  readonly key: readonly KeyEntry[];
  readonly width: number;
  readonly height: number;
  readonly body: readonly Mark[];
}): Spec {
  const { width, height } = parts;
  const measure = (text: string): number => textWidth(text, TITLE_SIZE, 'bold');
  const titleLines = wrapText(parts.title, width, measure);
  const keyTop = MARGIN + titleLines.length * TITLE_LINE + 4;
  const key = placeKey(parts.key, MARGIN, keyTop, width);
  const bodyTop = keyTop + key.height + 6;
  const title = texts(
    'title',
    titleLines.map((text, i) => ({
      x: MARGIN,
      y: MARGIN + (i + 0.5) * TITLE_LINE,
      text,
      size: TITLE_SIZE,
      weight: 'bold',
    })),
  );
  const frame = layered([title, ...key.layers]);
  return {
    $schema: 'https://vega.github.io/schema/vega/v6.json',
    autosize: 'none',
    padding: 0,
    background: 'white',
    width: width + 2 * MARGIN,
    height: bodyTop + height + MARGIN,
    data: frame.data,
    marks: [
      ...frame.marks,
      group('body', { x: MARGIN, y: bodyTop, width, height }, { marks: [...parts.body] }),
    ],
  };
}

function placeKey(entries: readonly KeyEntry[], left: number, top: number, width: number) {
  let x = 0;
  let line = 0;
  const placed = entries.map((entry) => {
    const needs = SAMPLE_WIDTH + textWidth(entry.label, KEY_SIZE);
    if (x > 0 && x + needs > width) {
      x = 0;
      line += 1;
    }
    const at = { entry, x: left + x, y: top + (line + 0.5) * KEY_LINE };
    x += needs + KEY_GAP;
    return at;
  });
  const moved = <T extends { x: number; y: number }>(
    of: (entry: KeyEntry) => readonly T[] | undefined,
  ): T[] =>
    placed.flatMap(({ entry, x: dx, y: dy }) =>
      (of(entry) ?? []).map((item) => ({ ...item, x: item.x + dx, y: item.y + dy })),
    );
  const keyLines = placed.flatMap(({ entry, x: dx, y: dy }) =>
    (entry.lines ?? []).map((item) => ({
      ...item,
      x: item.x + dx,
      y: item.y + dy,
      x2: item.x2 + dx,
      y2: item.y2 + dy,
    })),
  );
  const labels = placed.map(({ entry, x: dx, y }) => ({
    x: dx + SAMPLE_WIDTH,
    y,
    text: entry.label,
    size: KEY_SIZE,
    colour: INK,
  }));
  return {
    height: entries.length === 0 ? 0 : (line + 1) * KEY_LINE,
    layers: [
      boxes(
        'key-boxes',
        moved((entry) => entry.boxes),
      ),
      lines('key-lines', keyLines),
      symbols(
        'key-symbols',
        moved((entry) => entry.symbols),
      ),
      texts('key-labels', labels),
    ],
  };
}

/** A chart that has nothing to show, and says so. */
export function emptyChart(title: string, text: string): Spec {
  const width = 480;
  const nothing = layered([texts('nothing', [{ x: 0, y: 14, text, colour: GREY }])]);
  const body = group('empty', { x: 0, y: 0, width, height: 28 }, nothing);
  return framed({ title, key: [], width, height: 28, body: [body] });
}
