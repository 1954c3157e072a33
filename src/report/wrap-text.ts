import { displayWidth } from './display-width.ts';

/**
 * Breaks a line at spaces so that no part is wider than `width`; a longer word is broken inside.
 *
 * @param measure width of a text in the units of `width`; terminal columns by default
 * @returns one entry at least; an empty text is one empty line
 * @example wrapText('feed too low to show', 10) // ['feed too', 'low to', 'show']
 */
export function wrapText(
  text: string,
  width: number,
  measure: (text: string) => number = displayWidth,
): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (measure(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const parts = breakWord(word, width, measure);
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1) ?? '';
  }
  return [...lines, line];
}

function breakWord(word: string, width: number, measure: (text: string) => number): string[] {
  if (measure(word) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const character of word) {
    if (part !== '' && measure(part + character) > width) {
      parts.push(part);
      part = '';
    }
    part += character;
  }
  return [...parts, part];
}
