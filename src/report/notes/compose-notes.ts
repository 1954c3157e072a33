import { envelopeText } from '../envelope.ts';
import type { Outcome } from '../outcome.ts';
import { reductionNotes } from './analyte-facts.ts';
import { devicePage } from './device-page.ts';
import type { NotesChart } from './notes-chart.ts';
import { notesCharts } from './notes-charts.ts';
import { dataFiles, filesSection, heldOutcomes, tables } from './notes-files.ts';
import type { NotesInput } from './notes-input.ts';
import { blocks, notesRows, type Piece } from './piece.ts';
import { safeNames } from './safe-names.ts';
import { claimsSection } from './sections/claims.ts';
import { costsSection } from './sections/costs.ts';
import { curvesSection } from './sections/curves.ts';
import { dataNotesSection } from './sections/data-notes.ts';
import { feedSection } from './sections/feed-water.ts';
import { flowSection } from './sections/flow.ts';
import { idleRiseSection } from './sections/idle-rise.ts';
import { cautionsSection, methodsSection } from './sections/methods.ts';
import { mineralsSection } from './sections/minerals.ts';
import { notTestedSection } from './sections/not-tested.ts';
import { openPointsSection } from './sections/open-points.ts';
import { panelSection } from './sections/panel.ts';
import { findingsSection, provenanceSection } from './sections/provenance.ts';
import { reductionsSection } from './sections/reductions.ts';
import { summarySection } from './sections/summary.ts';
import { sumsSection } from './sections/sums.ts';
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
    { id: 'claims', body: claimsSection(input) },
    { id: 'feed-water', body: feedSection(input, reductions) },
    { id: 'reductions', body: reductionsSection(input, reductions, charts) },
    { id: 'sums', body: sumsSection(input) },
    { id: 'open-points', body: openPointsSection(input, reductions) },
    { id: 'minerals', body: mineralsSection(input, charts) },
    { id: 'idle-rise', body: idleRiseSection(input, charts) },
    { id: 'panel', body: panelSection(input) },
    { id: 'water-use', body: waterUseSection(water, charts) },
    { id: 'curves', body: curvesSection(input, charts) },
    { id: 'flow', body: flowSection(input) },
    { id: 'costs', body: costsSection(input, charts) },
    { id: 'data-notes', body: dataNotesSection(input) },
    { id: 'not-tested', body: notTestedSection(input, reductions, water) },
    { id: 'methods', body: methodsSection(input) },
    { id: 'cautions', body: cautionsSection() },
    { id: 'files', body: filesSection(input.outcomes) },
    { id: 'provenance', body: provenanceSection(input) },
    { id: 'findings', body: findingsSection(heldOutcomes(input.outcomes)) },
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
