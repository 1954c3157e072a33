/**
 * File names for keys that may hold anything: lower case, letters, digits and dashes only, no two
 * alike. The order of the keys decides who keeps the plain name.
 *
 * @returns name by key, without an ending
 * @example safeNames(['tank-a', 'Tank A']).get('Tank A') // 'tank-a-2'
 */
export function safeNames(keys: readonly string[]): Map<string, string> {
  const names = new Map<string, string>();
  const used = new Set<string>();
  for (const key of keys) {
    if (names.has(key)) continue;
    const plain = safeName(key);
    let name = plain;
    for (let nth = 2; used.has(name); nth += 1) name = `${plain}-${nth}`;
    used.add(name);
    names.set(key, name);
  }
  return names;
}

const LONGEST = 60;

function safeName(key: string): string {
  const plain = key
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
  // Names that some systems keep for devices of their own.
  return plain === '' || /^(con|prn|aux|nul|com\d|lpt\d|index)$/.test(plain)
    ? `device-${plain}`.replace(/-$/, '')
    : plain;
}
