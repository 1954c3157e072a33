/**
 * Text from a bench made fit for a terminal or a page: control characters (terminal sequences,
 * NUL, line breaks) and marks that turn the direction of reading are written out as `\u001b`, so
 * that a cell can neither move the cursor nor hide what stands beside it.
 */
const UNFIT =
  /[\p{Cc}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|\p{Cs}/gu;

/**
 * One line of text without control characters; breaks and tabs become spaces.
 *
 * @example printable('a\u001b[31m') // 'a\\u001b[31m'
 */
export function printable(text: string): string {
  return text.replace(/\s+/g, ' ').replace(UNFIT, written);
}

/** The same, keeping line breaks. */
export function printableLines(text: string): string[] {
  return text.split(/\r\n|[\r\n]/).map(printable);
}

function written(character: string): string {
  return `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`;
}
