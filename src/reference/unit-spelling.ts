/** A spelling brought to one form, and whether damaged characters were repaired on the way. */
export interface TidySpelling {
  readonly text: string;
  readonly repaired: boolean;
}

const MOJIBAKE: readonly (readonly [RegExp, string])[] = [
  [/Â(?=[µ°º²³·])/g, ''],
  [/Î¼/g, 'µ'],
  [/&(?:micro|mu);/g, 'µ'],
  [/\\u00b5/gi, 'µ'],
];

/**
 * One form for spellings that differ only in how they were typed: micro sign, Greek mu and u;
 * degree signs; raised digits; curly quotes; blanks; marks of retired units.
 *
 * A micro sign broken by a wrong encoding is repaired where the damage proves it (`Âµ`, `Î¼`), and
 * `repaired` says so. A question mark or the replacement character proves nothing and stays.
 */
export function tidySpelling(spelling: string): TidySpelling {
  // Plain ASCII without an escape needs none of the repairs.
  if (/^[ !#-%'-[\]-~]*$/.test(spelling)) return { text: tidyBlanks(spelling), repaired: false };
  let text = spelling;
  for (const [damage, sign] of MOJIBAKE) text = text.replace(damage, sign);
  const repaired = text !== spelling;
  text = text
    .replace(/º/g, '°')
    .replace(/[’‘′]/g, "'")
    .replace(/[“”″]/g, '"')
    .normalize('NFKC')
    .replace(/μ/g, 'u')
    .replace(/[−⁻]/g, '-');
  return { text: tidyBlanks(text), repaired };
}

function tidyBlanks(text: string): string {
  return text
    .replace(/[*^]+$/, '')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/ ?([/@%()°]) ?/g, '$1')
    .replace(/(\d) (?=[A-Za-z])/g, '$1');
}

/** True where a character was lost for good, so that the unit cannot be known. */
export function isDamaged(spelling: string): boolean {
  return spelling.includes('\uFFFD') || /^\?(?=[gS])|[?](?=mol|mho)/.test(spelling);
}

/**
 * Lower case except for m and M, the one letter whose case turns milli into mega.
 */
export function foldCase(text: string): string {
  return text.replace(/[^mM]+/g, (run) => run.toLowerCase());
}

/** Lower case for spellings made of whole words; null for symbols. */
export function foldWords(text: string): string | null {
  return /[A-Za-z]{5,}/.test(text) ? text.toLowerCase() : null;
}
