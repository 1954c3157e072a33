import { type Finding, finding } from '../findings/index.ts';
import { type Bench, type BenchRow, cellPlace, STANDARD } from '../model/index.ts';
import { flushVolume, massAssumed } from './flush-volumes.ts';
import { type MeasuredVolume, measuredVolume } from './quantity-volume.ts';

/** A production run and whether it counts. */
export interface DrainRun {
  readonly row: BenchRow<'drainRuns'>;
  readonly clean: MeasuredVolume;
  readonly drain: MeasuredVolume;
  /** Litres of a flush taken out of the drain of an after-flush run. */
  readonly flushTakenOutL: number;
  /** Drain of production alone, litres. */
  readonly producingL: number;
  /** Why the run does not count; null when it does. */
  readonly refused: string | null;
}

/** Drain while producing: `drain = ratio x clean + perStart x starts`. */
export interface DrainFit {
  readonly ratio: number;
  /** Litres per start of production; 0 where it cannot be told from the ratio. */
  readonly perStartL: number;
  /** All drain over all clean water of the runs that count. */
  readonly pooledRatio: number;
  readonly method: 'pooled' | 'ratio and per-start';
  readonly runs: readonly DrainRun[];
}

/**
 * The drain ratio of a device from its measured runs.
 *
 * Runs that end when the tap closes or the device shuts off count. A run collected until after a
 * flush counts with that flush taken out, where one rule alone can have fired; otherwise it is
 * refused. Volumes are pooled, ratios never averaged. Drain per start is fitted only where every
 * run states its starts and the clean volume per start takes two or more distinct values;
 * otherwise ratio and per-start cannot be told apart.
 * @returns no fit without a run that counts and holds clean water
 */
export function fitDrain(
  bench: Bench,
  device: string,
  variant: string,
): { readonly fit: DrainFit | null; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const runs = runsOf(bench, device, variant).map((row) => readRun(bench, row, findings));
  const used = runs.filter((run) => run.refused === null);
  const clean = used.reduce((sum, run) => sum + run.clean.volumeL, 0);
  const first = used[0];
  if (first === undefined) return { fit: null, findings };
  if (clean === 0) {
    findings.push(
      finding(
        'run-clean-zero',
        `the runs of ${device} hold no clean water, so there is no drain per clean volume`,
        'measure a run with the tap open',
        cellPlace(first.row, 'clean'),
      ),
    );
    return { fit: null, findings };
  }
  const pooledRatio = used.reduce((sum, run) => sum + run.producingL, 0) / clean;
  const fitted = fitPerStart(used);
  const fit: DrainFit = {
    ratio: fitted?.ratio ?? pooledRatio,
    perStartL: fitted?.perStartL ?? 0,
    pooledRatio,
    method: fitted === null ? 'pooled' : 'ratio and per-start',
    runs,
  };
  return { fit, findings };
}

/** Runs of the variant; where it has none, those of the standard state. */
function runsOf(bench: Bench, device: string, variant: string): BenchRow<'drainRuns'>[] {
  const ofDevice = bench.tables.drainRuns.filter((row) => row.values.device === device);
  const of = (name: string) => ofDevice.filter((row) => (row.values.variant ?? STANDARD) === name);
  const own = of(variant);
  return own.length > 0 ? own : of(STANDARD);
}

function readRun(bench: Bench, row: BenchRow<'drainRuns'>, findings: Finding[]): DrainRun {
  const { clean, drain, temperature, collected_until } = row.values;
  const cleanVolume = measuredVolume(clean, temperature);
  const drainVolume = measuredVolume(drain, temperature);
  for (const [volume, field] of [
    [cleanVolume, 'clean'],
    [drainVolume, 'drain'],
  ] as const) {
    if (volume.weighedAt?.isAssumed === true) findings.push(massAssumed(row, field));
  }
  const flush = collected_until === 'after-flush' ? flushInRun(bench, row) : 0;
  const takenOut = typeof flush === 'number' ? flush : 0;
  const producingL = drainVolume.volumeL - takenOut;
  const refused =
    typeof flush === 'string'
      ? flush
      : producingL < 0
        ? 'the flush is larger than all the drain collected'
        : null;
  if (collected_until === 'after-flush') findings.push(tookFlush(row, takenOut, refused));
  return {
    row,
    clean: cleanVolume,
    drain: drainVolume,
    flushTakenOutL: takenOut,
    producingL,
    refused,
  };
}

/** Drained litres of the one flush that can have run into the bucket, or why it is not known. */
function flushInRun(bench: Bench, row: BenchRow<'drainRuns'>): number | string {
  const rules = bench.tables.flushRules.filter(
    ({ values }) =>
      values.device === row.values.device &&
      (values.trigger === 'idle' || values.trigger === 'start' || values.trigger === 'produced'),
  );
  const rule = rules[0];
  if (rule === undefined) return 'no flush rule says which flush ran into the bucket';
  if (rules.length > 1) return 'more than one flush rule can have run into the bucket';
  const volume = flushVolume(bench, rule);
  if (volume === null) return 'the volume of the flush is not known';
  return volume.volumeL * (rule.values.drain_fraction ?? 1);
}

function tookFlush(row: BenchRow<'drainRuns'>, takenOutL: number, refused: string | null): Finding {
  return finding(
    'run-took-flush',
    refused === null
      ? `the run was collected until after a flush; ${Number(takenOutL.toPrecision(4))} L were taken out`
      : `the run was collected until after a flush and is not used: ${refused}`,
    'take the bucket away when the tap closes, and measure flushes on their own',
    cellPlace(row, 'collected_until'),
  );
}

/**
 * Least squares of `drain = ratio x clean + perStart x starts` through the origin.
 * @returns null where the two cannot be told apart, or the fit gives a negative figure
 */
function fitPerStart(
  runs: readonly DrainRun[],
): { readonly ratio: number; readonly perStartL: number } | null {
  let cleanClean = 0;
  let cleanStarts = 0;
  let startsStarts = 0;
  let cleanDrain = 0;
  let startsDrain = 0;
  const perStart = new Set<number>();
  for (const run of runs) {
    const starts = run.row.values.starts;
    if (starts === null) return null;
    const clean = run.clean.volumeL;
    perStart.add(clean / starts);
    cleanClean += clean * clean;
    cleanStarts += clean * starts;
    startsStarts += starts * starts;
    cleanDrain += clean * run.producingL;
    startsDrain += starts * run.producingL;
  }
  if (perStart.size < 2) return null;
  const determinant = cleanClean * startsStarts - cleanStarts * cleanStarts;
  const ratio = (cleanDrain * startsStarts - startsDrain * cleanStarts) / determinant;
  const perStartL = (startsDrain * cleanClean - cleanDrain * cleanStarts) / determinant;
  return Number.isFinite(ratio) && ratio >= 0 && perStartL >= 0 ? { ratio, perStartL } : null;
}
