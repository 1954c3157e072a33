import type { ShownWater } from './mineral-shown-waters.ts';

type NamedWater = Pick<ShownWater, 'name' | 'event'>;

/**
 * Names some of the waters judged, in the shorter of two ways: these, or all but those.
 *
 * A water named without an event is meant at every event it was judged at.
 *
 * @param some waters of `all`, the same objects
 * @example waterList(all, all) // 'all 12'
 */
export function waterList<W extends NamedWater>(some: readonly W[], all: readonly W[]): string {
  if (some.length === 0) return '';
  const meant = new Set(some);
  const others = all.filter((water) => !meant.has(water));
  if (others.length === 0) return all.length === 1 ? names(some, all) : `all ${all.length}`;
  const these = names(some, all);
  const allBut = `all but ${names(others, all)}`;
  return allBut.length < these.length ? allBut : these;
}

function names(some: readonly NamedWater[], all: readonly NamedWater[]): string {
  const eventsOf = (waters: readonly NamedWater[], name: string) =>
    waters.filter((water) => water.name === name).map(({ event }) => event);
  return [...new Set(some.map(({ name }) => name))]
    .map((name) => {
      const events = eventsOf(some, name);
      const isAlways = events.length === eventsOf(all, name).length;
      return isAlways ? name : `${name} [${events.join(', ')}]`;
    })
    .join(', ');
}
