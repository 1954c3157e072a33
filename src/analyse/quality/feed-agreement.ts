import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace, type SampleRow } from '../../model/index.ts';
import { comparePair } from './compared-pair.ts';
import { groupedBy } from './grouped-by.ts';
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
  const events = groupedBy(feeds, ({ row }) => row.values.event ?? '');
  return feeds.flatMap((later, at) => {
    const first = events
      .get(later.row.values.event ?? '')
      ?.find(({ index, row }) => index < later.index && isSameLine(row, later.row));
    if (first !== undefined) return withinEvent(view, first.index, later.index);
    for (let earlier = at - 1; earlier >= 0; earlier -= 1) {
      const feed = feeds[earlier];
      if (feed !== undefined && isSameLine(feed.row, later.row)) {
        return betweenEvents(view, feed.index, later.index);
      }
    }
    return [];
  });
}

/** Feeds of one kind that can serve one device. */
function isSameLine(a: SampleRow, b: SampleRow): boolean {
  const isOneDevice =
    a.values.device === null || b.values.device === null || a.values.device === b.values.device;
  return isOneDevice && (a.values.kind ?? 'natural') === (b.values.kind ?? 'natural');
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
