import type { Measure } from '../../compare/index.ts';
import type { MeasureRow } from '../../model/index.ts';
import { boundDigits, significant } from '../format-number.ts';
import type { View } from '../view.ts';
import { summaryText } from './reduction-words.ts';

/** A measure as it is printed. */
export function measureText(measure: Measure): string {
  if (measure.row.measure.startsWith('reduction.')) return summaryText(measure.reduction);
  const { measure: id, estimate, unit, low, high } = measure.row;
  if (estimate === null) return 'not tested';
  if (id === 'pours.flow' && low !== null && high !== null) {
    const range = `${boundDigits(low, 3, 'down')} to ${boundDigits(high, 3, 'up')}`;
    return `${significant(estimate, 3)} (${range})`;
  }
  return unit === 'fraction' ? `${significant(estimate * 100, 3)} %` : significant(estimate, 3);
}

export function measureRows(measures: readonly Measure[]): MeasureRow[] {
  return measures.map((measure) => ({ ...measure.row, shown: measureText(measure) }));
}

/** All measures side by side: one row a measure, one column a device and variant. */
export function compareViews(rows: readonly MeasureRow[]): View[] {
  const columns = [...new Set(rows.map(columnOf))];
  const measures = [...new Map(rows.map((row) => [row.measure, row])).values()];
  const sections: readonly (readonly [string, string])[] = [
    ['reduction.', 'Reductions, by analyte; no device is ranked by a bound'],
    ['water-use.', 'Water use; drain goes to the sewer'],
    ['pours.', 'Flow of clean water'],
  ];
  return sections.flatMap(([prefix, caption]) => {
    const own = measures.filter((row) => row.measure.startsWith(prefix));
    if (own.length === 0) return [];
    const present = columns.filter((column) =>
      rows.some((row) => row.measure.startsWith(prefix) && columnOf(row) === column),
    );
    return {
      caption,
      columns: [
        { head: 'Measure', align: 'left' } as const,
        { head: 'Unit', align: 'left' } as const,
        ...present.map((column) => ({ head: column, align: 'right' }) as const),
      ],
      rows: own.map((measure) => [
        measure.title,
        measure.unit === 'fraction' ? '%' : measure.unit,
        ...present.map(
          (column) =>
            rows.find((row) => row.measure === measure.measure && columnOf(row) === column)
              ?.shown ?? '',
        ),
      ]),
      legend: [
        'Results hold for this feed, these samples and these specimens. Whether two figures differ is not judged here.',
      ],
    };
  });
}

function columnOf(row: MeasureRow): string {
  return row.variant === 'standard' ? row.device : `${row.device} (${row.variant})`;
}
