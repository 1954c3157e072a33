import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace, type SampleRow } from '../../model/index.ts';
import { comparePair } from './compared-pair.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { firstNames } from './short-number.ts';

/** From so many disagreements on, and more than a third of what was compared, the sample is doubted. */
const MANY = 4;

/**
 * Feed samples that should be one water: those of one event, which a reduction would average; and,
 * as something to know, natural feeds of one event after another.
 */
export function feedFindings(view: SampleResults): Finding[] {
  const feeds = view.samples.flatMap((row, index) =>
    row.values.position === 'feed' && row.values.of === null && isUsable(row) ? { row, index } : [],
  );
  const findings: Finding[] = [];
  for (const [at, later] of feeds.entries()) {
    const before = feeds.slice(0, at).filter(({ row }) => isSameLine(row, later.row));
    const own = before.find(({ row }) => row.values.event === later.row.values.event);
    const last = before.at(-1);
    if (own !== undefined) findings.push(...withinEvent(view, own.index, later.index));
    else if (last !== undefined) findings.push(...betweenEvents(view, last.index, later.index));
  }
  return findings;
}

/** Feeds of one kind that can serve one device. */
function isSameLine(a: SampleRow, b: SampleRow): boolean {
  const devices = [a.values.device, b.values.device].filter((device) => device !== null);
  return (a.values.kind ?? 'natural') === (b.values.kind ?? 'natural') && new Set(devices).size < 2;
}

function withinEvent(view: SampleResults, first: number, second: number): Finding[] {
  const row = view.samples[second];
  const percent = view.bench.settings.quality.feed_rpd;
  const { compared, disagreements } = comparePair(view, first, second, percent);
  const other = view.sampleName(first);
  if (row !== undefined && disagreements.length >= MANY && 3 * disagreements.length > compared) {
    return [
      finding(
        'feed-disagrees',
        `${disagreements.length} of ${compared} analytes differ from ${other}, a feed of the same ` +
          'event; their mean would stand for both',
        'check which bottle is the feed; two waters need two events',
        cellPlace(row, 'event'),
      ),
    ];
  }
  return disagreements.map(({ index, other: of, words }) =>
    finding(
      'feed-disagrees',
      `${view.analyte(index).name}: "${view.result(index).text}" and "${view.result(of).text}" ` +
        `of ${other}, a feed of the same event, are ${words}`,
      'ask the lab to run both again, or give the two feeds events of their own',
      view.place(index),
    ),
  );
}

function betweenEvents(view: SampleResults, first: number, second: number): Finding[] {
  const row = view.samples[second];
  const percent = view.bench.settings.quality.feed_rpd;
  const { disagreements } = comparePair(view, first, second, percent);
  if (row === undefined || disagreements.length === 0) return [];
  const names = disagreements.map(({ index }) => view.analyte(index).name);
  return [
    finding(
      'feed-changed',
      `the feed differs from ${view.sampleName(first)} by more than ${percent} % in ` +
        `${names.length === 1 ? '' : `${names.length} analytes: `}${firstNames(names)}`,
      'none needed where the water changed; results of one event are compared with its own feed',
      cellPlace(row, 'sample'),
    ),
  ];
}
