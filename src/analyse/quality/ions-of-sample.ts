import type { Interval } from '../../model/index.ts';
import { IONS, type Ion, type IonConcentrations } from '../chemistry/index.ts';
import type { SampleResults } from './sample-results.ts';

/** The major ions of a sample: where they stand, and the least and most that each can be, in mg/L. */
export interface SampleIons {
  readonly indices: ReadonlyMap<Ion, number>;
  readonly low: IonConcentrations;
  readonly high: IonConcentrations;
  /** Bounds of silica, mg/L as SiO2; from 0 where it was not measured. */
  readonly silica: Interval;
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

/** The major ions of a sample as far as they were measured; those above the lab's range are not. */
export function ionsOfSample(view: SampleResults, sample: number): SampleIons {
  const indices = new Map<Ion, number>();
  const low: Partial<Record<Ion, number>> = {};
  const high: Partial<Record<Ion, number>> = {};
  const take = (ion: Ion, key: string, factor: number): void => {
    const index = view.find(sample, view.analyteNamed(key));
    if (index === -1) return;
    const interval = view.interval(index);
    const unit = PER_UNIT[view.analyte(index).unit];
    if (interval === null || unit === undefined || !Number.isFinite(interval.high)) return;
    indices.set(ion, index);
    low[ion] = interval.low * unit * factor;
    high[ion] = interval.high * unit * factor;
  };
  for (const ion of IONS) {
    if (!NOT_COUNTED.includes(ion)) take(ion, ion, 1);
  }
  if (!indices.has('total-alkalinity')) {
    take('total-alkalinity', 'bicarbonate', ALKALINITY_PER_BICARBONATE);
  }
  const isComplete = NEEDED.every((ion) => indices.has(ion));
  const silica = view.find(sample, view.analyteNamed('silica'));
  const bounds = silica === -1 ? null : view.interval(silica);
  return { indices, low, high, silica: bounds ?? { low: 0, high: 0 }, isComplete };
}
