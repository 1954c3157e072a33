import type { SampleResults } from './sample-results.ts';

/** Two bottles of one water differ by less. */
const ALIKE = 0.05;

/**
 * Figures of samples whose chemistry is sound. A figure that agrees with one of them is not what is
 * wrong with its own sample.
 */
export class SoundFigures {
  readonly #samples: readonly number[];
  readonly #sorted = new Map<number, Float64Array>();

  constructor(samples: readonly number[]) {
    this.#samples = samples;
  }

  /** True where a sound sample holds the same analyte within 5 %. */
  hold(view: SampleResults, index: number): boolean {
    const value = view.value(index);
    if (value === null) return false;
    const figures = this.#of(view, view.table.analyte[index] ?? -1);
    let low = 0;
    let high = figures.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((figures[middle] ?? 0) < value * (1 - ALIKE)) low = middle + 1;
      else high = middle;
    }
    return (figures[low] ?? Infinity) <= value * (1 + ALIKE);
  }

  #of(view: SampleResults, analyte: number): Float64Array {
    const known = this.#sorted.get(analyte);
    if (known !== undefined) return known;
    const values = this.#samples.flatMap((sample) => {
      const index = view.find(sample, analyte);
      return index === -1 ? [] : (view.value(index) ?? []);
    });
    const sorted = Float64Array.from(values).sort();
    this.#sorted.set(analyte, sorted);
    return sorted;
  }
}
