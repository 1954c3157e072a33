import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace, type SampleRow } from '../../model/index.ts';
import { comparePair } from './compared-pair.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { firstNames } from './short-number.ts';

/** From so many disagreements on, and more than a third of what was compared, the bottles are doubted. */
const MANY = 4;

/** Duplicates against the samples they repeat. */
export function duplicateFindings(view: SampleResults): Finding[] {
  const percent = view.bench.settings.quality.duplicate_rpd;
  return view.samples.flatMap((row, duplicate) => {
    if (row.values.of === null || !isUsable(row)) return [];
    const original = view.sampleNamed(row.values.of);
    const other = view.samples[original];
    if (other === undefined || !isUsable(other)) return [];
    const unlike = unlikeCells(row, other);
    const { compared, disagreements } = comparePair(view, original, duplicate, percent);
    if (disagreements.length >= MANY && 3 * disagreements.length > compared) {
      const names = disagreements.map(({ index }) => view.analyte(index).name);
      return [
        ...unlike,
        finding(
          'duplicate-unlike',
          `${disagreements.length} of ${compared} analytes differ from ${row.values.of} ` +
            `(${firstNames(names)}): bottles may have been exchanged`,
          'compare the bottle numbers with the chain of custody; void the sample if in doubt',
          cellPlace(row, 'of'),
        ),
      ];
    }
    return [
      ...unlike,
      ...disagreements.map(({ index, other: of, words }) =>
        finding(
          'duplicate-differs',
          `${view.analyte(index).name}: "${view.result(index).text}" and ` +
            `"${view.result(of).text}" of ${row.values.of} are ${words}`,
          'ask the lab to run both again; until then the spread is larger than assumed',
          view.place(index),
        ),
      ),
    ];
  });
}

/** A duplicate is a second bottle of the same water: place, device, state, event and kind are one. */
function unlikeCells(row: SampleRow, original: SampleRow): Finding[] {
  const fields = ['position', 'device', 'variant', 'event', 'kind'] as const;
  const blank = { position: '', device: '', variant: 'standard', event: '', kind: 'natural' };
  return fields.flatMap((field) => {
    const own = row.values[field] ?? blank[field];
    const other = original.values[field] ?? blank[field];
    if (own === other) return [];
    return finding(
      'duplicate-mismatch',
      `the duplicate says ${field} "${own}" and its original "${other}"`,
      'a duplicate is a second bottle of the same water: correct the row, or clear of',
      cellPlace(row, field),
    );
  });
}
