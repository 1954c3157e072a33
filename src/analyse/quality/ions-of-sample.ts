import type { Interval } from '../../model/index.ts';
import { type MajorIons, majorIons } from '../chemistry/index.ts';
import type { SampleResults } from './sample-results.ts';

/** The major ions of a sample, from the results that hold them. */
export interface SampleIons extends MajorIons<number> {
  /** Bounds of silica, mg/L as SiO2; from 0 where it was not measured. */
  readonly silica: Interval;
}

/** The major ions of a sample as far as they were measured. */
export function ionsOfSample(view: SampleResults, sample: number): SampleIons {
  const ions = majorIons((key) => {
    const index = view.find(sample, view.analyteNamed(key));
    const interval = index === -1 ? null : view.interval(index);
    return interval === null ? null : { ...interval, unit: view.analyte(index).unit, from: index };
  });
  const silica = view.find(sample, view.analyteNamed('silica'));
  const bounds = silica === -1 ? null : view.interval(silica);
  return { ...ions, silica: bounds ?? { low: 0, high: 0 } };
}
