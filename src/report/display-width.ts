/**
 * Columns a text takes in a terminal: 2 for East Asian wide characters and pictographs, 0 for
 * combining marks and joiners, 1 otherwise.
 *
 * Source: Unicode Standard Annex 11, East Asian Width, classes W and F; ranges from memory and
 * coarse, so a rare script may be a column off.
 */
export function displayWidth(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let width = 0;
  for (const character of text) {
    width += ZERO.test(character) ? 0 : WIDE.test(character) ? 2 : 1;
  }
  return width;
}

const PLAIN = /^[\x20-\x7e]*$/;
const ZERO = /^[\p{Mn}\p{Me}\p{Cf}]$/u;
const WIDE =
  /^[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]$/u;
