/**
 * Room a text takes in a chart, estimated without a font: widths in parts of the font size, by
 * groups of letters, rounded up. They are those of DejaVu Sans 2.37 (read from the font file), one
 * of the widest fonts that stand for `sans-serif`, so that narrower ones fit as well.
 */
const GROUPS: readonly (readonly [letters: string, width: number])[] = [
  ["'ijlIJ", 0.3],
  [' ,./:;\\|f-', 0.36],
  ['()[]tr!', 0.41],
  ['"*_`°–?szcLFk', 0.58],
  ['mWM@%', 1],
  ['w#+<=>^~≥≤−×&OQDGHNUC', 0.84],
  ['ABEKPRSTVXYZ', 0.69],
];
const OTHERS = 0.64;
const WIDE = 1.1;
const BOLD = 1.12;
const WIDEST_LATIN = 0x24f;

const WIDTHS = new Map(
  GROUPS.flatMap(([letters, width]) => [...letters].map((letter) => [letter, width] as const)),
);

/**
 * Estimated width of a line of text in pixels.
 *
 * @param size font size in pixels
 * @example textWidth('100', 10) // 19.2
 */
export function textWidth(
  text: string,
  size: number,
  weight: 'normal' | 'bold' = 'normal',
): number {
  let width = 0;
  for (const letter of text) {
    const known = WIDTHS.get(letter);
    const isLatin = (letter.codePointAt(0) ?? 0) <= WIDEST_LATIN;
    width += known ?? (isLatin ? OTHERS : WIDE);
  }
  return width * size * (weight === 'bold' ? BOLD : 1);
}

/** The widest of several texts; 0 for none. */
export function widestText(texts: readonly string[], size: number): number {
  return texts.reduce((widest, text) => Math.max(widest, textWidth(text, size)), 0);
}

/** A text no wider than `width`: cut before its end and closed by an ellipsis where it is. */
export function shortened(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, size) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}
