import { csvText } from '../csv.ts';
import { envelopeText } from '../envelope.ts';
import type { Outcome } from '../outcome.ts';
import type { NotesInput, NotesOutcomes } from './notes-input.ts';
import { blocks, bullets, markup, type Piece, say } from './piece.ts';

interface NotesFile {
  readonly key: Exclude<keyof NotesOutcomes, 'regionsByForm'>;
  readonly name: string;
  /** Written only where it holds a row: the bench may not have that file. */
  readonly isOptional?: boolean;
}

const TABLES: readonly NotesFile[] = [
  { key: 'reductions', name: 'reductions' },
  { key: 'sums', name: 'sums', isOptional: true },
  { key: 'logReductions', name: 'log-reductions', isOptional: true },
  { key: 'filterLife', name: 'filter-life', isOptional: true },
  { key: 'spikes', name: 'spikes', isOptional: true },
  { key: 'waterUse', name: 'water-use' },
  { key: 'waterCurve', name: 'water-curve' },
  { key: 'dailyCurve', name: 'drain-by-pours-a-day', isOptional: true },
  { key: 'breakEven', name: 'break-even' },
  { key: 'regions', name: 'drain-regions', isOptional: true },
  { key: 'pours', name: 'pours' },
  { key: 'compare', name: 'compare' },
  { key: 'toldApartGroups', name: 'told-apart-groups', isOptional: true },
  { key: 'claims', name: 'claims', isOptional: true },
  { key: 'minerals', name: 'minerals', isOptional: true },
  { key: 'idleRise', name: 'idle-rise', isOptional: true },
  { key: 'panel', name: 'panel', isOptional: true },
  { key: 'costs', name: 'costs', isOptional: true },
  { key: 'costOverTime', name: 'cost-over-time', isOptional: true },
];

/** What is written, in order: the outcome and the name of its files. */
function written(outcomes: NotesOutcomes): { readonly name: string; readonly outcome: Outcome }[] {
  return TABLES.flatMap(({ key, name, isOptional }) => {
    const outcome = outcomes[key];
    if (isOptional && outcome.rows.length === 0) return [];
    const forms = key === 'regions' ? outcomes.regionsByForm : [];
    return [
      { name, outcome },
      ...forms.map((each) => ({ name: `${name}-${each.form}`, outcome: each.outcome })),
    ];
  });
}

/** What the notes hold: outcomes without a row are of files that the bench does not have. */
export function heldOutcomes(outcomes: NotesOutcomes): Outcome[] {
  return [...written(outcomes).map(({ outcome }) => outcome), outcomes.check];
}

/** The rows of the commands as CSV, by path. */
export async function tables(outcomes: NotesOutcomes): Promise<[string, string][]> {
  return Promise.all(
    written(outcomes).map(async ({ name, outcome }): Promise<[string, string]> => {
      const { schema, rows } = outcome;
      return [`tables/${name}.csv`, await csvText(schema, rows)];
    }),
  );
}

/** The envelopes exactly as the commands print them. */
export function dataFiles({ outcomes, version }: NotesInput): [string, string][] {
  const all = [...written(outcomes), { name: 'findings', outcome: outcomes.check }];
  return all.map(({ name, outcome }) => [`data/${name}.json`, envelopeText(outcome, version)]);
}

export function filesSection(outcomes: NotesOutcomes): Piece {
  const named = written(outcomes).map(
    ({ name }) =>
      say`${markup(name)}: [CSV](${markup(`tables/${name}.csv`)}), [JSON](${markup(`data/${name}.json`)})`,
  );
  return blocks([
    markup('## Tables and data'),
    bullets([
      ...named,
      markup('findings: [JSON](data/findings.json)'),
      markup('figures of these notes, each with its name, value and text: [JSON](data/notes.json)'),
    ]),
  ]);
}
