/**
 * Looks that tell series apart without colour: each of the first 30 has its own pair of dash and
 * shape. Colours repeat what the pair says.
 *
 * Source of the colours: Okabe and Ito, "Color Universal Design", 2008, without its yellow, which
 * is too pale for a line on white.
 */
export interface SeriesLook {
  readonly colour: string;
  readonly dash: readonly number[];
  readonly shape: string;
}

export const BLUE = '#0072B2';
export const VERMILLION = '#D55E00';
export const ORANGE = '#E69F00';
export const INK = '#222222';
export const GREY = '#6b6b6b';
export const PALE = '#d9d9d9';
export const BAND = '#f2f5f7';

const COLOURS = [BLUE, VERMILLION, '#009E73', '#CC79A7', INK, ORANGE, '#56B4E9'];
const DASHES: readonly (readonly number[])[] = [[], [7, 3], [2, 2], [9, 3, 2, 3], [4, 2, 1, 2]];
const SHAPES = ['circle', 'square', 'triangle-up', 'diamond', 'triangle-down', 'cross'];

/** The look of the series at an index, 0 first. */
export function seriesLook(index: number): SeriesLook {
  const dash = index % DASHES.length;
  const round = Math.floor(index / DASHES.length);
  return {
    colour: COLOURS[index % COLOURS.length] ?? INK,
    dash: DASHES[dash] ?? [],
    shape: SHAPES[(dash + round) % SHAPES.length] ?? 'circle',
  };
}
