import { BenchError, type Finding, finding, place } from '../../findings/index.ts';
import type { AnalyteIndex } from '../../reference/index.ts';
import type { ResultTableBuilder } from '../result-table-builder.ts';
import { type SampleLookup, sampleLookupWith } from '../sample-lookup.ts';
import { LabFileReader } from './lab-file-reader.ts';
import type { LabSource } from './lab-source.ts';
import { type LayoutReading, proposeLayout } from './propose-layout.ts';
import { sameJobTwice } from './same-job-twice.ts';
import { layoutOfSidecar } from './sidecar-plan.ts';

export interface LabFilesContext {
  readonly analytes: AnalyteIndex;
  /** The samples a lab file, named by its stem, may speak of. */
  readonly samplesOf: (stem: string) => SampleLookup;
}

interface Opened {
  readonly source: LabSource;
  readonly layout: LayoutReading;
}

/**
 * Reads all lab files of a bench into the table of results: first the layout of each, so that lists
 * of samples are known, then the figures, then what two files say of one job.
 * @returns the findings of all files
 */
export function readLabFiles(
  sources: readonly LabSource[],
  context: LabFilesContext,
  builder: ResultTableBuilder,
): Finding[] {
  const findings: Finding[] = [];
  const opened: Opened[] = [];
  for (const source of sources) {
    try {
      const layout =
        source.sidecar === null
          ? proposeLayout(source, context.analytes)
          : layoutOfSidecar(source, source.sidecar);
      findings.push(...layout.text.findings);
      opened.push({ source, layout });
    } catch (error) {
      if (!(error instanceof BenchError)) throw error;
      findings.push(error.finding);
    }
  }
  const joined = new Set(opened.flatMap(({ layout }) => layout.plan.sampleList?.file ?? []));
  const shared = sharedNames(opened);
  const read: LabFileReader[] = [];
  for (const { source, layout } of opened) {
    const isList = joined.has(fileName(source.path));
    const names =
      layout.plan.sampleList === null ? shared : listedNames(layout, opened, findings, source);
    const reader = new LabFileReader(
      {
        path: source.path,
        stem: source.stem,
        analytes: context.analytes,
        sampleOf: sampleLookupWith(context.samplesOf(source.stem), layout.plan.aliases, names),
        hasSidecar: source.sidecarPath !== null,
      },
      isList ? asList(layout) : layout,
      builder,
    );
    try {
      reader.read();
    } catch (error) {
      if (!(error instanceof BenchError)) throw error;
      findings.push(error.finding);
      continue;
    }
    findings.push(...reader.log.findings);
    read.push(reader);
  }
  findings.push(
    ...sameJobTwice(
      builder.build(),
      read.map(({ labSamples }) => labSamples),
    ),
  );
  return findings;
}

function fileName(path: string): string {
  return path.replace(/^lab\//, '');
}

/** A file another one is joined with is a list, whatever it looks like by itself. */
function asList(layout: LayoutReading): LayoutReading {
  return {
    ...layout,
    isCertain: true,
    findings: [],
    plan: { ...layout.plan, shape: 'sample-list' },
  };
}

/** Names by number of the files that are lists of samples; a number with two names has none. */
function sharedNames(opened: readonly Opened[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const disputed = new Set<string>();
  for (const { layout } of opened) {
    const { plan } = layout;
    const [number, name] = [plan.columns.labSample, plan.columns.clientSample];
    if (plan.shape !== 'sample-list' || number === undefined || name === undefined) continue;
    for (const [key, value] of pairs(layout, number, name)) {
      if ((names.get(key) ?? value) !== value) disputed.add(key);
      names.set(key, value);
    }
  }
  for (const key of disputed) names.delete(key);
  return names;
}

function listedNames(
  layout: LayoutReading,
  opened: readonly Opened[],
  findings: Finding[],
  source: LabSource,
): ReadonlyMap<string, string> {
  const join = layout.plan.sampleList;
  const list = opened.find((other) => fileName(other.source.path) === join?.file)?.layout;
  const at = place({ file: source.sidecarPath });
  if (join === null || list === undefined) {
    findings.push(
      finding(
        'file-missing',
        `the sidecar joins the list "${join?.file ?? ''}", which is not in lab/`,
        'put the file into lab/, or correct its name in sample_list',
        at,
      ),
    );
    return new Map();
  }
  const indexOf = (column: string | number): number =>
    typeof column === 'number' ? column - 1 : list.plan.header.indexOf(column.trim());
  const [number, name] = [indexOf(join.number), indexOf(join.name)];
  if (number !== -1 && name !== -1) return new Map(pairs(list, number, name));
  findings.push(
    finding(
      'layout-role-missing',
      `the list "${join.file}" has no column "${number === -1 ? join.number : join.name}"`,
      'correct the column in sample_list of the sidecar',
      at,
    ),
  );
  return new Map();
}

function pairs(layout: LayoutReading, number: number, name: number): [string, string][] {
  const found: [string, string][] = [];
  let index = 0;
  layout.text.records((cells) => {
    index += 1;
    if (index <= layout.plan.headerRow) return;
    const [key, value] = [(cells[number] ?? '').trim(), (cells[name] ?? '').trim()];
    if (key !== '' && value !== '') found.push([key, value]);
  });
  return found;
}
