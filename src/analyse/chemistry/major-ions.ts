import { IONS, type Ion, type IonConcentrations } from './ions.ts';

/** What is known of one analyte of a water. */
export interface MeasuredContent<From> {
  readonly low: number;
  /** Infinity where it lies above the range of the lab. */
  readonly high: number;
  readonly unit: string;
  /** Where it stands, as the caller names it. */
  readonly from: From;
}

/** The least and the most of each major ion of a water, mg/L, and where each stands. */
export interface MajorIons<From> {
  readonly low: IonConcentrations;
  readonly high: IonConcentrations;
  readonly from: ReadonlyMap<Ion, From>;
  /**
   * Calcium, magnesium, sodium, alkalinity (or bicarbonate), chloride and sulfate were all measured.
   * Otherwise the sums are lower bounds only.
   */
  readonly isComplete: boolean;
}

/** Without one of these the sums say how much there is at least, and no more. */
const NEEDED: readonly Ion[] = [
  'calcium',
  'magnesium',
  'sodium',
  'total-alkalinity',
  'chloride',
  'sulfate',
];

/** Bicarbonate as HCO3 counted as alkalinity as CaCO3; true below a pH of about 8.3. */
const ALKALINITY_PER_BICARBONATE = 50.0435 / 61.017;

/** Counted in mg/L in the sums and kept in ug/L in the tables. */
const PER_UNIT: Readonly<Record<string, number>> = { 'mg/L': 1, 'ug/L': 0.001 };

/** Particles rather than ions in most tap waters. */
const NOT_COUNTED: readonly Ion[] = ['iron', 'manganese'];

/**
 * The major ions of a water as far as they were measured; those above the lab's range are not.
 *
 * @param find what is known of the analyte of that key; null where it was not measured
 */
export function majorIons<From>(
  find: (key: string) => MeasuredContent<From> | null,
): MajorIons<From> {
  const low: Partial<Record<Ion, number>> = {};
  const high: Partial<Record<Ion, number>> = {};
  const from = new Map<Ion, From>();
  const take = (ion: Ion, key: string, factor: number): void => {
    const found = find(key);
    const unit = PER_UNIT[found?.unit ?? ''];
    if (found === null || unit === undefined || !Number.isFinite(found.high)) return;
    low[ion] = found.low * unit * factor;
    high[ion] = found.high * unit * factor;
    from.set(ion, found.from);
  };
  for (const ion of IONS) if (!NOT_COUNTED.includes(ion)) take(ion, ion, 1);
  if (!from.has('total-alkalinity')) {
    take('total-alkalinity', 'bicarbonate', ALKALINITY_PER_BICARBONATE);
  }
  return { low, high, from, isComplete: NEEDED.every((ion) => from.has(ion)) };
}
