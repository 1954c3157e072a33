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

/** Words of a claim or a certificate that name a standard with a threshold of water use. */
const NAMES: readonly (readonly [RegExp, string])[] = [
  [/\bASSE[\s/-]*1086\b/i, 'ASSE 1086'],
  [/\bwater\s*sense\b/i, 'US EPA WaterSense final'],
];

/** Thresholds of what drains per volume, or of what is left of the inlet; savings are no thresholds. */
const COMPARABLE: readonly string[] = ['maximum reject ratio', 'minimum efficiency'];

/**
 * The thresholds of water use of the standards that a text names, drafts left out.
 *
 * @returns an empty list where the text names none
 * @example efficiencyThresholds('ASSE 1086-2020')[0].value // 40, in %
 */
export function efficiencyThresholds(text: string): WaterEfficiencyFigure[] {
  return NAMES.flatMap(([name, standard]) =>
    name.test(text)
      ? waterEfficiencyFigures('threshold', standard).filter(({ metric }) =>
          COMPARABLE.includes(metric),
        )
      : [],
  );
}
