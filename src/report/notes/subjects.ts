import { type Bench, type DeviceRow, STANDARD } from '../../model/index.ts';
import { count, listed, markup, type Piece, quoted, say } from './piece.ts';

/** A device in one state, as the notes name it. */
export interface Subject {
  readonly device: DeviceRow;
  readonly key: string;
  readonly variant: string;
  readonly name: string;
}

/** Names of devices to print; two devices of one name carry their key behind it. */
export function deviceNames(bench: Bench): ReadonlyMap<string, string> {
  const names = bench.tables.devices.map(({ values }) => values.name ?? values.device);
  return new Map(
    bench.tables.devices.map(({ values }, index) => {
      const name = names[index] ?? values.device;
      const isShared = names.filter((other) => other === name).length > 1;
      return [values.device, isShared ? `${name} [${values.device}]` : name];
    }),
  );
}

export function subjectName(name: string, variant: string): string {
  return variant === STANDARD ? name : `${name} (${variant})`;
}

/** Names a device in one state, as the notes print it. */
export function stateNames(bench: Bench): (device: string, variant: string) => string {
  const names = deviceNames(bench);
  return (device, variant) => subjectName(names.get(device) ?? device, variant);
}

/** What each technology is called in front of `devices`. */
const TECHNOLOGIES: Readonly<Record<DeviceRow['values']['technology'], string>> = {
  'reverse-osmosis': 'reverse-osmosis devices',
  carbon: 'carbon devices',
  ultrafiltration: 'ultrafiltration devices',
  'ion-exchange': 'ion-exchange devices',
  distillation: 'distillers',
  mixed: 'devices of mixed technology',
};

/** What devices of each form are called. */
export const FORMS: Readonly<Record<DeviceRow['values']['form'], string>> = {
  'under-sink': 'under-sink devices',
  countertop: 'countertop devices',
  pitcher: 'pitchers',
  'faucet-mount': 'faucet-mounted devices',
  inline: 'inline devices',
};

interface Kind {
  readonly words: string;
  readonly members: readonly Subject[];
}

/** The kinds of device among some, by technology and by form, smallest first. */
function kindsOf(all: readonly Subject[]): Kind[] {
  const kinds = new Map<string, Subject[]>();
  for (const subject of all) {
    const { technology, form } = subject.device.values;
    for (const words of [TECHNOLOGIES[technology], FORMS[form]]) {
      kinds.set(words, [...(kinds.get(words) ?? []), subject]);
    }
  }
  return [...kinds]
    .map(([words, members]) => ({ words, members }))
    .sort((a, b) => a.members.length - b.members.length);
}

const FEW = 4;

/**
 * Some devices among those tested, as short as the facts allow: by name where they are few, as a
 * kind where they are all of it, else counted among the smallest group that holds them.
 */
export function devicePhrase(
  key: string,
  some: readonly Subject[],
  all: readonly Subject[],
  among = 'tested',
): Piece {
  if (some.length <= FEW && (some.length < all.length || some.length <= 2)) return namesOf(some);
  if (some.length === all.length)
    return say`all ${count(key, all.length)} devices ${markup(among)}`;
  const others = all.filter((subject) => !some.includes(subject));
  const kind = kindsOf(all).find(({ members }) => some.every((each) => members.includes(each)));
  if (kind !== undefined && kind.members.length < all.length) {
    const words = markup(kind.words);
    return kind.members.length === some.length
      ? say`the ${count(key, some.length)} ${words}`
      : say`${count(key, some.length)} of the ${count(`${key}-kind`, kind.members.length)} ${words}`;
  }
  const share = say`${count(key, some.length)} of the ${count(`${key}-all`, all.length)} devices ${markup(among)}`;
  return others.length <= 2 ? say`${share} (all but ${namesOf(others)})` : share;
}

export function namesOf(subjects: readonly Subject[]): Piece {
  return listed(subjects.map(({ name }) => quoted(name)));
}

/** `11 reverse-osmosis devices, 2 pitchers and 1 inline device`: how many of each technology. */
export function technologyCounts(subjects: readonly Subject[]): Piece {
  const technologies = [...new Set(subjects.map(({ device }) => device.values.technology))];
  return listed(
    technologies.map((technology) => {
      const members = subjects.filter(({ device }) => device.values.technology === technology);
      const words = TECHNOLOGIES[technology];
      const one = words.replace('devices', 'device').replace(/ers$/, 'er');
      return say`${count(`devices.${technology}`, members.length)} ${markup(members.length === 1 ? one : words)}`;
    }),
  );
}
