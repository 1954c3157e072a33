import { STANDARD } from '../../../model/index.ts';
import type { ReductionNotes } from '../analyte-facts.ts';
import { analyteNames, testedSubjects } from '../analyte-sentences.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames, namesOf } from '../subjects.ts';
import type { WaterNotes } from '../water-notes.ts';

/** What was not done, before anyone asks. */
export function notTestedSection(
  input: NotesInput,
  notes: ReductionNotes,
  water: WaterNotes,
): Piece {
  return blocks([
    markup('## What was not tested'),
    bullets([unsampled(input, notes), partly(notes), undrained(water), absent(input), life()]),
  ]);
}

function unsampled(input: NotesInput, { summaries }: ReductionNotes): Piece {
  const names = deviceNames(input.bench);
  const sampled = new Set(summaries.map(({ device }) => device));
  const missing = input.devices.filter((device) => !sampled.has(device));
  if (missing.length === 0) return NOTHING;
  return missing.length === input.devices.length
    ? markup('Reductions: no device has a product sample, so nothing is shown of any analyte.')
    : say`Reductions: no product of ${listed(missing.map((device) => quoted(names.get(device) ?? device)))} was sampled.`;
}

/** Analytes tested on some of the devices only, those with the same devices in one sentence. */
function partly({ analytes, subjects }: ReductionNotes): Piece {
  const groups = new Map<string, (typeof analytes)[number][]>();
  for (const facts of analytes) {
    const tested = testedSubjects(facts);
    if (tested.length === 0 || tested.length === subjects.length) continue;
    const key = JSON.stringify(tested.map((subject) => subject.key));
    groups.set(key, [...(groups.get(key) ?? []), facts]);
  }
  const told = [...groups.values()].flatMap((items) => {
    const [first] = items;
    if (first === undefined) return [];
    const tested = testedSubjects(first);
    return say`${analyteNames(items)} on ${count('tested', tested.length)} of ${count('devices', subjects.length)} (${namesOf(tested)})`;
  });
  return told.length === 0 ? NOTHING : say`Tested on some devices only: ${listed(told)}.`;
}

function undrained(water: WaterNotes): Piece {
  const names = water.states
    .filter(({ drain }) => drain.model === null && drain.variant === STANDARD)
    .map(({ name }) => quoted(name));
  return names.length === 0
    ? NOTHING
    : say`Water to drain: ${listed(names)}; without a production run that counts the drain is not known, which is not zero, and an advertised ratio does not stand in for it.`;
}

const SUBJECTS: readonly (readonly [keyof NotesInput['bench']['tables'], string])[] = [
  ['pours', 'flow'],
  ['drainRuns', 'drain while producing'],
  ['scenarios', 'daily use by scenarios of the bench'],
  ['idleTds', 'dissolved solids after a pause'],
  ['energy', 'power'],
  ['parts', 'replacement parts'],
  ['claims', 'claims and certificates'],
  ['panel', 'taste'],
];

function absent(input: NotesInput): Piece {
  const { tables } = input.bench;
  const hasTank = tables.devices.some(({ values }) => values.tank === 'yes');
  const subjects = hasTank
    ? [...SUBJECTS, ['tanks', 'filling of storage tanks'] as const]
    : SUBJECTS;
  const missing = subjects.filter(([file]) => tables[file].length === 0);
  return missing.length === 0
    ? NOTHING
    : say`Nothing is logged on these, so they are not tested: ${listed(
        missing.map(([, words]) => markup(words)),
        'and',
      )}.`;
}

function life(): Piece {
  return markup(
    'How any device does over its whole life, on another water, or in another specimen of the same model.',
  );
}
