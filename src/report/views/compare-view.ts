import type { Measure } from '../../compare/index.ts';
import type { MeasureRow } from '../../model/index.ts';
import { significant } from '../format-number.ts';
import type { View } from '../view.ts';
import { moneyText, perLitreText, rangedText } from './costs-view.ts';
import { isNoRejection, STAGE_LEGEND, summaryText } from './reduction-words.ts';
import { rangeText } from './water-use-view.ts';

const NOT_REJECTION = ', not rejection';

/** A measure as it is printed: its estimate, and in brackets its range. */
export function measureText(measure: Measure): string {
  const { measure: id, low, estimate, high, unit, outcome } = measure.row;
  if (id.startsWith('reduction.')) {
    const text = summaryText(measure.reduction);
    const isMarked = measure.reduction?.facts.some(({ row }) => isNoRejection(row)) === true;
    return isMarked ? `${text}${NOT_REJECTION}` : text;
  }
  if (id.startsWith('costs.')) {
    return rangedText(measure.row, id.startsWith('costs.per-litre.') ? perLitreText : moneyText);
  }
  if (estimate === null) return 'not tested';
  const scale = unit === 'fraction' ? 100 : 1;
  const range =
    low === null || high === null || low === high
      ? ''
      : ` (${rangeText(low * scale, high * scale)})`;
  const part = outcome === 'partly-tested' ? ' [p]' : '';
  return `${significant(estimate * scale, 3)}${unit === 'fraction' ? ' %' : ''}${range}${part}`;
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
    ['costs.', 'Cost of ownership; what is not counted makes a sum a lower bound'],
    ['idle-rise.', 'TDS of the first water after a pause, and of the water of a scenario'],
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
        ...(prefix === 'reduction.' && rows.some(({ shown }) => shown.endsWith(NOT_REJECTION))
          ? [STAGE_LEGEND]
          : []),
        ...(prefix === 'reduction.'
          ? []
          : ['In brackets: the range the measurements leave open, and of random pours the years.']),
        ...(rows.some((row) => row.measure.startsWith(prefix) && row.outcome === 'partly-tested')
          ? ['[p] of a part of the water only: the rest came after pauses that were not tested.']
          : []),
      ],
    };
  });
}

function columnOf(row: MeasureRow): string {
  return row.variant === 'standard' ? row.device : `${row.device} (${row.variant})`;
}
