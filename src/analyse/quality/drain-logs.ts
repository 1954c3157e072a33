import { type Finding, finding } from '../../findings/index.ts';
import { type Bench, type BenchRow, cellPlace, STANDARD } from '../../model/index.ts';
import { type DrainFit, type DrainRun, fitDrain } from '../drain-fit.ts';
import { flushVolume } from '../flush-volumes.ts';
import { measuredVolume } from '../quantity-volume.ts';
import { groupedBy } from './grouped-by.ts';
import { median } from './median.ts';
import type { SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** Drain per clean water of runs of one device and state; beyond this one was not like the others. */
const FACTOR = 1.5;

/** How much above its expectation, and how near to one flush, the excess of a run has to be. */
const EXCESS = 0.2;
const NEAR = 0.3;

/** With fewer fellows nobody can say which one is odd. */
const FELLOWS = 2;

/**
 * Bench logs of drain: a run far from its fellows, a bucket that took in a flush, a flush counted
 * twice.
 */
export function drainFindings(view: SampleResults): Finding[] {
  const { bench } = view;
  const groups = groupedBy(
    bench.tables.drainRuns,
    ({ values }) => `${values.device}\t${values.variant ?? STANDARD}`,
  );
  const runs = [...groups.keys()].flatMap((key) => {
    const [device = '', variant = STANDARD] = key.split('\t');
    const { fit } = fitDrain(bench, device, variant);
    if (fit === null) return [];
    const used = countedRuns(fit);
    return [
      ...used.flatMap((run) => unlikeRun(bench, run, fit)),
      ...startCountedTwice(bench, device, fit.perStartL),
    ];
  });
  return [...runs, ...repeatedFlushes(bench), ...unlikeFlushes(bench)];
}

function countedRuns(fit: DrainFit): DrainRun[] {
  return fit.runs.filter(({ refused, clean }) => refused === null && clean.volumeL > 0);
}

function unlikeRun(bench: Bench, run: DrainRun, fit: DrainFit): Finding[] {
  const others = countedRuns(fit).filter((other) => other !== run);
  const ratios = others.map(({ producingL, clean }) => producingL / clean.volumeL);
  const middle = median(ratios);
  if (others.length < FELLOWS || middle === null || middle <= 0) return [];
  const isSteady = ratios.every((ratio) => ratio <= middle * FACTOR && ratio * FACTOR >= middle);
  const own = run.producingL / run.clean.volumeL;
  const expected = middle * run.clean.volumeL;
  const excess = run.producingL - expected;
  // What every start drains is no flush: the run has to lie above the fitted line as well.
  const fitted = fit.ratio * run.clean.volumeL + fit.perStartL * (run.row.values.starts ?? 0);
  const isHigh = excess > EXCESS * expected && run.producingL - fitted > NEAR * excess;
  const flush = isSteady && isHigh ? flushOfSize(bench, run, excess) : null;
  const words =
    `${shortNumber(run.producingL)} L went to drain with ${shortNumber(run.clean.volumeL)} L of ` +
    `clean water; the other runs make ${shortNumber(expected)} L likely`;
  if (flush !== null) {
    return [
      finding(
        'run-holds-flush',
        `${words}: the excess of ${shortNumber(excess)} L is about one ${flush.values.rule} ` +
          `(${shortNumber(flushVolume(bench, flush)?.volumeL ?? 0)} L)`,
        'if the flush ran into the bucket, write after-flush in collected_until; else measure again',
        cellPlace(run.row, 'drain'),
      ),
    ];
  }
  if (!isSteady || (own <= middle * FACTOR && own * FACTOR >= middle)) return [];
  return [
    finding(
      'drain-run-unlike',
      words,
      'check both volumes and their units; measure the run again',
      cellPlace(run.row, 'drain'),
    ),
  ];
}

function flushOfSize(bench: Bench, run: DrainRun, excess: number): BenchRow<'flushRules'> | null {
  const { device } = run.row.values;
  const rules = bench.tables.flushRules.filter(({ values }) => values.device === device);
  const near = rules.find((rule) => {
    const volume = flushVolume(bench, rule)?.volumeL ?? 0;
    const drained = volume * (rule.values.drain_fraction ?? 1);
    return drained > 0 && Math.abs(excess - drained) <= NEAR * drained;
  });
  return near ?? null;
}

/** What every start drains is in the measured runs already when the runs began with that flush. */
function startCountedTwice(bench: Bench, device: string, perStartL: number): Finding[] {
  return bench.tables.flushRules.flatMap((rule) => {
    const { trigger } = rule.values;
    if (rule.values.device !== device || trigger !== 'start') return [];
    const volume = flushVolume(bench, rule)?.volumeL ?? 0;
    const drained = volume * (rule.values.drain_fraction ?? 1);
    if (drained <= 0 || Math.abs(perStartL - drained) > NEAR * drained) return [];
    return finding(
      'flush-counted-twice',
      `the runs of ${device} drain ${shortNumber(perStartL)} L per start, as much as its flush ` +
        `"${rule.values.rule}" of ${shortNumber(drained)} L: it would count in both`,
      'measure runs that begin without the flush, or take the rule out of flush-rules.csv',
      cellPlace(rule, 'rule'),
    );
  });
}

/** One flush noted twice counts twice in a mean, and in what is concluded from its times. */
function repeatedFlushes(bench: Bench): Finding[] {
  const lines = new Map<string, number>();
  return bench.tables.flushes.flatMap((row) => {
    const { device, variant, rule, at } = row.values;
    if (at === null || !at.hasTime) return [];
    const key = [device, variant ?? STANDARD, rule, at.seconds].join('\t');
    const earlier = lines.get(key);
    if (earlier === undefined) lines.set(key, row.line);
    if (earlier === undefined) return [];
    return finding(
      'flush-repeated',
      `a flush of ${rule} at ${at.text} already stands in line ${earlier}`,
      'keep one of the two rows, or correct the time',
      cellPlace(row, 'at'),
    );
  });
}

/** A flush far from the others of its rule. */
function unlikeFlushes(bench: Bench): Finding[] {
  const measured = bench.tables.flushes.flatMap((row) => {
    const quantity = row.values.volume ?? row.values.mass;
    if (quantity === null || quantity.value <= 0) return [];
    return { row, volumeL: measuredVolume(quantity, null).volumeL };
  });
  const rules = groupedBy(measured, ({ row }) =>
    [row.values.device, row.values.variant ?? STANDARD, row.values.rule].join('\t'),
  );
  return [...rules.values()].flatMap((all) =>
    all.flatMap((flush) => {
      const others = all.filter((other) => other !== flush).map(({ volumeL }) => volumeL);
      const middle = median(others);
      if (others.length < FELLOWS || middle === null) return [];
      const isSteady = others.every(
        (other) => other <= FACTOR * middle && other * FACTOR >= middle,
      );
      const times = flush.volumeL / middle;
      if (!isSteady || (times <= FACTOR && times >= 1 / FACTOR)) return [];
      const field = flush.row.values.volume === null ? 'mass' : 'volume';
      return finding(
        'flush-unlike',
        `the flush holds ${shortNumber(flush.volumeL)} L and the others of its rule about ` +
          `${shortNumber(middle)} L; twice as much may be two flushes in one bucket`,
        'check the volume and its unit; note each flush on its own',
        cellPlace(flush.row, field),
      );
    }),
  );
}
