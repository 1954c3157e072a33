import { csvText } from '../csv.ts';
import { envelopeText } from '../envelope.ts';
import type { Outcome } from '../outcome.ts';
import { reductionNotes } from './analyte-facts.ts';
import { devicePage } from './device-page.ts';
import { type NotesChart, notesCharts } from './notes-charts.ts';
import type { NotesInput, NotesOutcomes } from './notes-input.ts';
import { blocks, bullets, markup, notesRows, type Piece, say } from './piece.ts';
import { safeNames } from './safe-names.ts';
import { curvesSection } from './sections/curves.ts';
import { dataNotesSection } from './sections/data-notes.ts';
import { feedSection } from './sections/feed-water.ts';
import { flowSection } from './sections/flow.ts';
import { cautionsSection, methodsSection } from './sections/methods.ts';
import { notTestedSection } from './sections/not-tested.ts';
import { openPointsSection } from './sections/open-points.ts';
import { findingsSection, provenanceSection } from './sections/provenance.ts';
import { reductionsSection } from './sections/reductions.ts';
import { summarySection } from './sections/summary.ts';
import { testedSection } from './sections/tested.ts';
import { waterUseSection } from './sections/water-use.ts';
import { waterNotes } from './water-notes.ts';

interface Section {
  readonly id: string;
  readonly body: Piece;
}

/**
 * The notes as a folder of texts: `index.md`, a page for each device, tables, charts and data.
 *
 * Every figure of index.md stands in full in the data beside it: in a row of the commands, or in
 * `data/notes.json`, whose rows name the figures that the prose composed. Same input, same bytes.
 *
 * @returns text by path, paths with `/`
 */
export async function composeNotes(input: NotesInput): Promise<Map<string, string>> {
  const reductions = reductionNotes(input);
  const water = waterNotes(input);
  const pages = safeNames(input.devices);
  const charts = await notesCharts(input, reductions, water);
  const sections: readonly Section[] = [
    { id: 'summary', body: summarySection(input, reductions, water) },
    { id: 'tested', body: testedSection(input, pages) },
    { id: 'feed-water', body: feedSection(input, reductions) },
    { id: 'reductions', body: reductionsSection(input, reductions, charts) },
    { id: 'open-points', body: openPointsSection(input, reductions) },
    { id: 'water-use', body: waterUseSection(input, water, charts) },
    { id: 'curves', body: curvesSection(input, charts) },
    { id: 'flow', body: flowSection(input) },
    { id: 'data-notes', body: dataNotesSection(input) },
    { id: 'not-tested', body: notTestedSection(input, reductions, water) },
    { id: 'methods', body: methodsSection(input) },
    { id: 'cautions', body: cautionsSection() },
    { id: 'files', body: filesSection() },
    { id: 'provenance', body: provenanceSection(input) },
    { id: 'findings', body: findingsSection(input.outcomes) },
  ];
  return new Map([
    ['index.md', pageText(blocks(sections.map(({ body }) => body)))],
    ...devicePages(input, water, pages),
    ...(await tables(input.outcomes)),
    ...dataFiles(input),
    ['data/notes.json', envelopeText(notesOutcome(input, sections), input.version)],
    ...charts.map(({ path, svg }: NotesChart): [string, string] => [path, svg]),
  ]);
}

function pageText(page: Piece): string {
  return `${page.markdown}\n`;
}

function devicePages(
  input: NotesInput,
  water: ReturnType<typeof waterNotes>,
  pages: ReadonlyMap<string, string>,
): [string, string][] {
  return input.bench.tables.devices.flatMap((device): [string, string][] => {
    const page = pages.get(device.values.device);
    return page === undefined
      ? []
      : [[`devices/${page}.md`, pageText(devicePage(input, water, device))]];
  });
}

const TABLES: readonly (readonly [keyof NotesOutcomes, string])[] = [
  ['reductions', 'reductions'],
  ['waterUse', 'water-use'],
  ['waterCurve', 'water-curve'],
  ['breakEven', 'break-even'],
  ['pours', 'pours'],
  ['compare', 'compare'],
];

async function tables(outcomes: NotesOutcomes): Promise<[string, string][]> {
  return Promise.all(
    TABLES.map(async ([key, name]): Promise<[string, string]> => {
      const { schema, rows } = outcomes[key];
      return [`tables/${name}.csv`, await csvText(schema, rows)];
    }),
  );
}

/** The envelopes exactly as the commands print them. */
function dataFiles({ outcomes, version }: NotesInput): [string, string][] {
  const all: readonly (readonly [keyof NotesOutcomes, string])[] = [
    ...TABLES,
    ['check', 'findings'],
  ];
  return all.map(([key, name]) => [`data/${name}.json`, envelopeText(outcomes[key], version)]);
}

function notesOutcome(input: NotesInput, sections: readonly Section[]): Outcome {
  const { bench, inputs } = input.outcomes.compare;
  return {
    schema: 'notes/1',
    bench,
    inputs,
    settings: { ...input.filters },
    rows: notesRows(sections),
    findings: [],
    views: [],
  };
}

function filesSection(): Piece {
  const named = TABLES.map(
    ([, name]) =>
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
