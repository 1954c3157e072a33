import type { UncertifiedInFeed } from '../../../analyse/claims/index.ts';
import { analyteWords } from '../analyte-words.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  counted,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames } from '../subjects.ts';

type Found = UncertifiedInFeed['analytes'][number];

/** Contaminants of the natural feed that no certified claim stands behind, what all share first. */
export function uncertifiedPart(input: NotesInput): Piece {
  const groups = input.uncertified;
  const [first] = groups;
  if (first === undefined) return NOTHING;
  const isShared = ({ analyte }: Found): boolean =>
    groups.every(({ analytes }) => analytes.some((own) => own.analyte.key === analyte.key));
  const shared = first.analytes.filter(isShared);
  const names = deviceNames(input.bench);
  const devices = groups.reduce((sum, group) => sum + group.devices.length, 0);
  const rest = groups.flatMap((group) => {
    const own = group.analytes.filter((found) => !isShared(found));
    const who = listed(group.devices.map((key) => quoted(names.get(key) ?? key)));
    return own.length === 0 ? [] : say`Beyond these, of ${who}: ${analyteList(own)}.`;
  });
  return blocks([
    markup('### In the feed, with no certified claim behind it'),
    bullets([
      ...(shared.length === 0
        ? []
        : [
            say`Of ${counted('uncertified.devices', devices, 'device')}, and challenged by a standard of the tables: ${analyteList(shared.filter(({ standards }) => standards.length > 0))}.`,
            say`Of the same, and challenged by none: ${analyteList(shared.filter(({ standards }) => standards.length === 0))}.`,
          ]),
      ...rest,
    ]),
    markup(
      'This rests on claims.csv alone: what is not listed there may still be certified. Found in the feed does not mean above a reference level.',
    ),
  ]);
}

function analyteList(found: readonly Found[]): Piece {
  return found.length === 0
    ? markup('none')
    : listed(found.map(({ analyte }) => quoted(analyteWords(analyte))));
}
