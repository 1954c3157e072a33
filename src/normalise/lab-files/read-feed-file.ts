import { type Finding, finding, place, sortFindings } from '../../findings/index.ts';
import type { ResultTable } from '../../model/index.ts';
import type { AnalyteIndex } from '../../reference/index.ts';
import { ResultTableBuilder } from '../result-table-builder.ts';
import { STARTS } from './lab-remedies.ts';
import type { LabSource } from './lab-source.ts';
import { readLabFiles } from './read-lab-files.ts';
import { qualityControlName } from './row-filter.ts';

/** A feed file as it was read. */
export interface FeedFileReading {
  /** All samples of the file; `ResultTable.sample` indexes `samples`. */
  readonly results: ResultTable;
  readonly samples: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * Reads a file with the analysis of a water that is no sample of the bench, in any layout of a lab
 * export.
 *
 * A sample is known by its name, else by the number of the lab; a file without a column for samples
 * holds one. Samples whose names say that they are of quality control are left out.
 * @param wanted name or number of the sample asked for, so that either is recognised
 */
export function readFeedFile(
  source: LabSource,
  analytes: AnalyteIndex,
  wanted: string | null,
): FeedFileReading {
  const samples: string[] = [];
  const sampleOf = (labSample: string, clientSample: string): number => {
    if (qualityControlName([labSample, clientSample]) !== null) return -1;
    const isWanted = wanted !== null && [labSample, clientSample].includes(wanted);
    const name = isWanted ? wanted : clientSample || labSample;
    const known = samples.indexOf(name);
    return known === -1 ? samples.push(name) - 1 : known;
  };
  const builder = new ResultTableBuilder();
  const findings = readLabFiles([source], { analytes, samplesOf: () => sampleOf }, builder);
  return {
    results: builder.build(),
    samples,
    findings: sortFindings(findings.map((item) => forFeed(item, source))),
  };
}

const SIDECAR = 'NAME.layout.json';

/** Remedies of lab files of a bench that do not fit a file outside of it. */
const REMEDIES: Readonly<Partial<Record<Finding['code'], string>>> = {
  'file-empty': 'give the export as the lab or the utility sent it',
  'layout-unclear': `name its columns, such as Analyte, Result, Units; or write ${SIDECAR} beside it; docs/lab-layouts.md says how`,
  'layout-role-ambiguous': `write ${SIDECAR} beside it; docs/lab-layouts.md says how`,
  'layout-role-missing': `name the column, or write ${SIDECAR} beside it; docs/lab-layouts.md says how`,
  'date-order-unclear': `set date_order in ${SIDECAR} beside it; docs/lab-layouts.md says how`,
  'result-repeated':
    'where the file holds several waters, name each in a column Sample and choose with --feed-sample',
};

/** No command starts the sidecar of a file outside the bench; where one rules, it is the remedy. */
function forFeed(item: Finding, source: LabSource): Finding {
  const remedy = REMEDIES[item.code];
  if (item.remedy.includes(STARTS)) {
    return { ...item, remedy: item.remedy.replace(STARTS, 'docs/lab-layouts.md says how') };
  }
  const isRuled = source.sidecarPath !== null && item.code !== 'result-repeated';
  if (remedy === undefined || isRuled) return item;
  const sidecar = source.path.replace(/^.*\//, '').replace(/\.[^.]*$/, '.layout.json');
  return { ...item, remedy: remedy.replace(SIDECAR, sidecar) };
}

/**
 * The sample a call means.
 * @returns its index, or the finding that asks
 */
export function feedSample(
  { samples, results }: FeedFileReading,
  path: string,
  wanted: string | null,
): number | Finding {
  const withResults = samples.flatMap((name, index) =>
    results.sample.includes(index) ? [{ name, index }] : [],
  );
  const listed = withResults.map(({ name }) => `"${name}"`).join(', ');
  const at = place({ file: path });
  if (withResults.length === 0) {
    return finding(
      'feed-not-common',
      'the file holds no result of a water sample',
      'give the analysis of one water, such as a lab export or analyte, result and unit by row',
      at,
    );
  }
  if (wanted !== null) {
    return (
      withResults.find(({ name }) => name === wanted)?.index ??
      finding(
        'feed-sample-unclear',
        `the file holds no sample "${wanted}"`,
        `name one of ${listed} with --feed-sample`,
        at,
      )
    );
  }
  const [only] = withResults;
  if (only !== undefined && withResults.length === 1) return only.index;
  return finding(
    'feed-sample-unclear',
    `the file holds ${withResults.length} samples: ${listed}`,
    'name the one that is the other feed with --feed-sample',
    at,
  );
}
