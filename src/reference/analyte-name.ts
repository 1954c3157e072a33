const GREEK: Readonly<Record<string, string>> = { α: 'alpha', β: 'beta', γ: 'gamma' };

/**
 * The form in which names are compared: lower case, accents dropped, raised and lowered digits as
 * digits, and nothing but letters, digits and `+`.
 *
 * A charge vanishes in this form (`ClO2-` and `ClO2` become one), so names that turn on one are
 * looked at before.
 * @example nameKey('Nitrogène, Ammonia (as N)') // 'nitrogeneammoniaasn'
 */
export function nameKey(name: string): string {
  // Most names are plain ASCII, for which the short way gives the same form.
  if (/^[ -~]*$/.test(name)) return name.toLowerCase().replace(/[^a-z0-9+]+/g, '');
  return name
    .replace(/[αβγ]/g, (letter) => GREEK[letter] ?? letter)
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}+]/gu, '');
}
