/** A figure for a message: three significant digits, never in powers of ten for everyday sizes. */
export function shortNumber(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** `a; b; c and 4 more`: the first names of a list. Names of analytes hold commas themselves. */
export function firstNames(names: readonly string[], most = 5): string {
  const rest = names.length - most;
  return rest > 0 ? `${names.slice(0, most).join('; ')} and ${rest} more` : names.join('; ');
}
