import { type Finding, finding } from '../findings/index.ts';
import { cellPlace, type ResultTable, type SampleRow } from '../model/index.ts';

/** What a row of samples.csv needs beyond its own cells, and samples no lab file speaks of. */
export function checkSamples(samples: readonly SampleRow[], results: ResultTable): Finding[] {
  const withResult = new Set<number>();
  for (let index = 0; index < results.length; index += 1)
    withResult.add(results.sample[index] ?? -1);
  const feeds = feedsByEvent(samples);
  return samples.flatMap((row, index) => [
    ...incomplete(row),
    ...kindMismatch(row, feeds),
    ...(isVoid(row)
      ? [voidSample(row)]
      : results.files.length > 0 && !withResult.has(index)
        ? [withoutResult(row)]
        : []),
  ]);
}

export function isVoid(row: SampleRow): boolean {
  return row.values.status === 'void';
}

function incomplete(row: SampleRow): Finding[] {
  const { position, device, event, status, reason } = row.values;
  const findings: Finding[] = [];
  const needsDevice = position === 'product' || position === 'stage' || position === 'drain';
  if (needsDevice && device === null) {
    findings.push(
      finding(
        'cell-missing',
        `a ${position} sample names no device`,
        'write the device it was taken from',
        cellPlace(row, 'device'),
      ),
    );
  }
  if ((needsDevice || position === 'feed') && event === null) {
    findings.push(
      finding(
        'cell-missing',
        `a ${position} sample names no event`,
        'write the event that its feed and product share',
        cellPlace(row, 'event'),
      ),
    );
  }
  if (status === 'void' && reason === null) {
    findings.push(
      finding(
        'cell-missing',
        'a void sample gives no reason',
        'write why it is void; void samples stay visible with their reason',
        cellPlace(row, 'reason'),
      ),
    );
  }
  return findings;
}

/** The feeds that count, by event. */
function feedsByEvent(
  samples: readonly SampleRow[],
): ReadonlyMap<string | null, readonly SampleRow[]> {
  const feeds = new Map<string | null, SampleRow[]>();
  for (const row of samples) {
    if (row.values.position !== 'feed' || isVoid(row)) continue;
    const ofEvent = feeds.get(row.values.event);
    if (ofEvent === undefined) feeds.set(row.values.event, [row]);
    else ofEvent.push(row);
  }
  return feeds;
}

/** A product is natural or spiked as its feed is; nothing else may be compared. */
function kindMismatch(
  row: SampleRow,
  feedsOf: ReadonlyMap<string | null, readonly SampleRow[]>,
): Finding[] {
  if (row.values.position !== 'product' || isVoid(row)) return [];
  const feeds = (feedsOf.get(row.values.event) ?? []).filter(
    (other) => other.values.device === null || other.values.device === row.values.device,
  );
  const kind = row.values.kind ?? 'natural';
  if (feeds.length === 0 || feeds.some((feed) => (feed.values.kind ?? 'natural') === kind))
    return [];
  return [
    finding(
      'kind-mismatch',
      `the product is ${kind} and every feed of its event is not`,
      'give product and feed of one event the same kind',
      cellPlace(row, 'kind'),
    ),
  ];
}

function voidSample(row: SampleRow): Finding {
  return finding(
    'sample-void',
    `the sample is void: ${row.values.reason ?? 'no reason given'}`,
    'none needed; its results are shown and not used',
    cellPlace(row, 'status'),
  );
}

function withoutResult(row: SampleRow): Finding {
  return finding(
    'sample-without-result',
    `the sample "${row.values.sample}" has no result in any lab file`,
    'add the lab file, mark the sample void with a reason, or correct its number',
    cellPlace(row, 'sample'),
  );
}
