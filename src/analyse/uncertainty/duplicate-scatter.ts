import { type Bench, resultAt } from '../../model/index.ts';
import { pooledRelativeSd } from '../../statistics/index.ts';
import { isCounted } from './assumed-uncertainty.ts';

/** Relative scatter of single results, from duplicates. */
export interface DuplicateScatter {
  readonly relative: number;
  readonly degreesOfFreedom: number;
}

/** Pairs from which a scatter is taken; below, its own uncertainty would rule. */
const LEAST_PAIRS = 6;

/** A pair counts where both results lie at or above this many reporting limits. */
const CLEAR_OF_LIMIT = 5;

/**
 * Relative scatter of results by analyte, pooled from the duplicates of the bench.
 *
 * An analyte with six pairs or more has its own; any other shares that of its group of analytes, if
 * the group has six. Only pairs of one lab file count that were quantified clear of the limit, where
 * the scatter grows with the size. Pairs that all agree to the last digit show no scatter: rounding
 * hides it, and they are not used.
 * @returns a function of the analyte's index; null where the duplicates do not suffice
 */
export function poolDuplicates(bench: Bench): (analyte: number) => DuplicateScatter | null {
  const byAnalyte = new Map<number, number[][]>();
  const byGroup = new Map<string, number[][]>();
  for (const { analyte, pair } of duplicatePairs(bench)) {
    push(byAnalyte, analyte, pair);
    push(byGroup, bench.results.analytes[analyte]?.group ?? '', pair);
  }
  const ofAnalyte = pooled(byAnalyte);
  const ofGroup = pooled(byGroup);
  return (analyte) => {
    const about = bench.results.analytes[analyte];
    if (about === undefined || isCounted(about)) return null;
    return ofAnalyte.get(analyte) ?? ofGroup.get(about.group) ?? null;
  };
}

function push<K>(groups: Map<K, number[][]>, key: K, pair: number[]): void {
  const pairs = groups.get(key) ?? [];
  groups.set(key, pairs);
  pairs.push(pair);
}

function pooled<K>(groups: ReadonlyMap<K, readonly (readonly number[])[]>) {
  const scatters = new Map<K, DuplicateScatter>();
  for (const [key, pairs] of groups) {
    if (pairs.length < LEAST_PAIRS) continue;
    const { sd, degreesOfFreedom } = pooledRelativeSd(pairs);
    if (sd > 0) scatters.set(key, { relative: sd, degreesOfFreedom });
  }
  return scatters;
}

/** Quantified results of a sample and of its duplicate: same analyte, same lab file. */
function duplicatePairs(bench: Bench): { readonly analyte: number; readonly pair: number[] }[] {
  const { samples } = bench.tables;
  const index = new Map(samples.map((row, at) => [row.values.sample, at]));
  const originalOf = new Map<number, number>();
  for (const [at, { values }] of samples.entries()) {
    const original = values.of === null ? undefined : index.get(values.of);
    if (original === undefined || values.status === 'void') continue;
    if (samples[original]?.values.status !== 'void') originalOf.set(at, original);
  }
  const values = clearValues(bench, new Set([...originalOf.keys(), ...originalOf.values()]));
  return [...values].flatMap(([key, { sample, file, analyte, value }]) => {
    const original = originalOf.get(sample);
    if (original === undefined) return [];
    const partner = values.get(keyOf(original, file, analyte));
    return partner === undefined || key === keyOf(original, file, analyte)
      ? []
      : { analyte, pair: [partner.value, value] };
  });
}

interface ClearValue {
  readonly sample: number;
  readonly file: number;
  readonly analyte: number;
  readonly value: number;
}

function keyOf(sample: number, file: number, analyte: number): string {
  return `${sample}\t${file}\t${analyte}`;
}

function clearValues(bench: Bench, wanted: ReadonlySet<number>): Map<string, ClearValue> {
  const { results } = bench;
  const values = new Map<string, ClearValue>();
  for (let at = 0; at < results.length; at += 1) {
    const sample = results.sample[at] ?? -1;
    if (!wanted.has(sample)) continue;
    const result = resultAt(results, at);
    if (result.kind !== 'quantified' || !(result.value > 0)) continue;
    if (result.value < CLEAR_OF_LIMIT * (result.rl ?? result.mdl ?? 0)) continue;
    const file = results.file[at] ?? -1;
    const analyte = results.analyte[at] ?? -1;
    values.set(keyOf(sample, file, analyte), { sample, file, analyte, value: result.value });
  }
  return values;
}
