import { closestWord, type Finding, finding } from '../findings/index.ts';
import { type BenchRow, cellPlace } from '../model/index.ts';
import { type AnalyteIndex, conversionTo } from '../reference/index.ts';
import type { BenchTables } from './cross-references.ts';
import { CONVERSION_CODES } from './lab-files/figure-reader.ts';
import { namedAnalyte } from './named-analyte.ts';
import { isVoid } from './sample-checks.ts';

/** What a row of spikes.csv needs beyond its own cells: a spiked feed, a known analyte, its unit. */
export function checkSpikes(tables: BenchTables, analytes: AnalyteIndex): Finding[] {
  const spiked = tables.samples.flatMap((row) => {
    const { position, kind, event } = row.values;
    return position === 'feed' && kind === 'spiked' && event !== null && !isVoid(row) ? event : [];
  });
  return tables.spikes.flatMap((row) => [
    ...withoutFeed(row, spiked),
    ...unusableDose(row, analytes),
  ]);
}

function withoutFeed(row: BenchRow<'spikes'>, spiked: readonly string[]): Finding[] {
  const { event } = row.values;
  if (spiked.includes(event)) return [];
  const near = closestWord(event, spiked);
  return [
    finding(
      'spike-event-unknown',
      `no valid feed sample of kind spiked belongs to the event "${event}"`,
      near === null
        ? 'add its feed to samples.csv with kind spiked, or remove the row'
        : `did you mean "${near}"?`,
      cellPlace(row, 'event'),
    ),
  ];
}

function unusableDose(row: BenchRow<'spikes'>, analytes: AnalyteIndex): Finding[] {
  const { analyte: name, dose } = row.values;
  const named = namedAnalyte(row, name, analytes);
  if ('code' in named) return [named];
  const [part, ...others] = dose.parts;
  if (part === undefined || others.length > 0 || part.times !== 1) {
    return [
      finding(
        'quantity-unreadable',
        `"${dose.text}" is not one figure`,
        'write the whole dose as one figure, such as 150 ug/L',
        cellPlace(row, 'dose'),
      ),
    ];
  }
  const conversion = conversionTo(named.analyte, part.unit, named.basis);
  if (conversion.kind === 'conversion') return [];
  return [
    finding(
      CONVERSION_CODES[conversion.problem],
      conversion.message,
      conversion.remedy,
      cellPlace(row, 'dose'),
    ),
  ];
}
