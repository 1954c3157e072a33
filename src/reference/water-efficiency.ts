import { WATER_EFFICIENCY_ROWS, type WaterEfficiencyRow } from './tables/water-efficiency.ts';

/** A published figure on the water devices spend, or the conditions under which they are tested. */
export interface WaterEfficiencyFigure {
  readonly topic: WaterEfficiencyRow[0];
  readonly metric: string;
  readonly comparator: '=' | '>=' | '<=';
  readonly value: number | null;
  readonly unit: string;
  readonly conditions: string;
  /** Jurisdiction or standard. */
  readonly standard: string;
  readonly source: string;
  readonly verified: string;
  readonly note: string | null;
}

/**
 * Published figures of one topic.
 *
 * @param standard only those of this jurisdiction or standard; all when left out
 * @example waterEfficiencyFigures('test condition', 'NSF/ANSI 58')[0].value // 50, in psi
 */
export function waterEfficiencyFigures(
  topic: WaterEfficiencyRow[0],
  standard?: string,
): WaterEfficiencyFigure[] {
  return WATER_EFFICIENCY_ROWS.filter(
    (row) => row[0] === topic && (standard === undefined || row[6] === standard),
  ).map(([, metric, comparator, value, unit, conditions, of, source, verified, note]) => ({
    topic,
    metric,
    comparator,
    value: value === '' ? null : Number(value),
    unit,
    conditions,
    standard: of,
    source,
    verified,
    note: note === '' ? null : note,
  }));
}
