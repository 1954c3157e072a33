import { significant } from '../format-number.ts';
import { volumeText } from '../format-quantity.ts';
import { printable } from '../printable.ts';
import { emptyChart, framed, type KeyEntry } from './chart-frame.ts';
import { boxes, group, layered, lines, symbols, texts } from './chart-marks.ts';
import { type Chart, drawSvg } from './draw-svg.ts';
import { BAND, GREY, INK, PALE, type SeriesLook, seriesLook } from './series-look.ts';

/** The device that drains least at one pour size and number of pours a day. */
export interface DrainRegion {
  readonly pourMl: number;
  readonly poursPerDay: number;
  /** Name of the device, and its variant where it has several. */
  readonly name: string;
  /** Litres to drain per clean litre; null where it is not known. */
  readonly ratio: number | null;
  /** Whether it drains less than every other; null where that was not looked at. */
  readonly isToldApart: boolean | null;
}

export interface DrainRegionsChartInput {
  /** States the finding. */
  readonly title: string;
  readonly regions: readonly DrainRegion[];
}

const LEFT = 74;
const CELL_WIDTH = 92;
const CELL_HEIGHT = 34;
const BOTTOM = 44;
const SIZE = 11;

/**
 * A field of pour sizes against pours a day, each cell marked by the device that drains least there.
 *
 * Devices are told apart by symbol and colour; a hollow symbol says that the device is not told apart
 * from another. The figure beside it is its total drain ratio. Same input, same bytes.
 */
export async function drainRegionsChart(input: DrainRegionsChartInput): Promise<Chart> {
  const title = printable(input.title);
  const regions = input.regions.map((region) => ({ ...region, name: printable(region.name) }));
  if (regions.length === 0) {
    return drawSvg(emptyChart(title, 'No region to show.'), title, 'No region to show.');
  }
  const sizes = ascending(regions.map(({ pourMl }) => pourMl));
  const counts = ascending(regions.map(({ poursPerDay }) => poursPerDay));
  const names = [...new Set(regions.map(({ name }) => name))];
  const looks = new Map(names.map((name, index) => [name, seriesLook(index)]));
  const width = LEFT + counts.length * CELL_WIDTH;
  const height = sizes.length * CELL_HEIGHT;
  const cells = regions.map((region) => ({
    ...region,
    look: looks.get(region.name) ?? seriesLook(0),
    x: LEFT + counts.indexOf(region.poursPerDay) * CELL_WIDTH,
    // The largest pour on top, as on an axis.
    y: (sizes.length - 1 - sizes.indexOf(region.pourMl)) * CELL_HEIGHT,
  }));
  const spec = framed({
    title,
    key: [
      ...names.map((name) => keyEntry(name, looks.get(name) ?? seriesLook(0))),
      { label: 'filled: less than every other; hollow: not told apart' },
    ],
    width,
    height: height + BOTTOM,
    body: [
      group(
        'regions',
        { x: 0, y: 0, width, height: height + BOTTOM },
        layered([
          boxes(
            'cells',
            cells.map(({ x, y, isToldApart }) => ({
              x,
              y,
              width: CELL_WIDTH,
              height: CELL_HEIGHT,
              fill: isToldApart === true ? BAND : 'white',
              stroke: PALE,
            })),
          ),
          symbols(
            'least',
            cells.map(({ x, y, look, isToldApart }) => ({
              x: x + 20,
              y: y + CELL_HEIGHT / 2,
              shape: look.shape,
              colour: look.colour,
              hollow: isToldApart !== true,
            })),
          ),
          texts(
            'ratios',
            cells.map(({ x, y, ratio }) => ({
              x: x + 36,
              y: y + CELL_HEIGHT / 2,
              text: ratio === null ? '' : significant(ratio, 3),
              size: SIZE,
              colour: INK,
            })),
          ),
          texts(
            'sizes',
            sizes.map((size, index) => ({
              x: LEFT - 8,
              y: (sizes.length - 0.5 - index) * CELL_HEIGHT,
              text: volumeText(size / 1000),
              align: 'right' as const,
              size: SIZE,
            })),
          ),
          texts(
            'counts',
            counts.map((count, index) => ({
              x: LEFT + (index + 0.5) * CELL_WIDTH,
              y: height + 12,
              text: String(count),
              align: 'center' as const,
              size: SIZE,
            })),
          ),
          texts('axes', [
            {
              x: LEFT + (counts.length * CELL_WIDTH) / 2,
              y: height + 32,
              text: 'pours a day',
              align: 'center',
              size: SIZE,
              colour: GREY,
            },
            { x: 0, y: CELL_HEIGHT / 2, text: 'pour', size: SIZE, colour: GREY },
          ]),
          lines('floor', [{ x: LEFT, y: height, x2: width, y2: height, colour: GREY, width: 1 }]),
        ]),
      ),
    ],
  });
  return drawSvg(spec, title, describe(regions, names));
}

function keyEntry(name: string, look: SeriesLook): KeyEntry {
  return {
    label: name,
    symbols: [
      { x: 8, y: 0, shape: look.shape, colour: look.colour },
      { x: 24, y: 0, shape: look.shape, colour: look.colour, hollow: true },
    ],
  };
}

function ascending(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** How many cells each device has, how many of them firmly, and the range of the ratios. */
function describe(regions: readonly DrainRegion[], names: readonly string[]): string {
  const parts = names.map((name) => {
    const own = regions.filter((region) => region.name === name);
    const firm = own.filter(({ isToldApart }) => isToldApart === true).length;
    return `${name} in ${own.length} (told apart in ${firm})`;
  });
  const ratios = regions.flatMap(({ ratio }) => ratio ?? []);
  const range =
    ratios.length === 0
      ? ''
      : ` Total drain ratios from ${significant(Math.min(...ratios), 3)} to ${significant(Math.max(...ratios), 3)}.`;
  return `The device that drains least by pour size and pours a day, ${regions.length} cells: ${parts.join(', ')}. Filled symbol: told apart from every other device; hollow: not.${range}`;
}
