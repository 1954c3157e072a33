/** The one outcome of a pair of feed and product, in the order in which they are tried. */
export const OUTCOMES = [
  'untested',
  'rise',
  'untestable',
  'not-shown',
  'at-least',
  'between',
  'measured',
] as const;
