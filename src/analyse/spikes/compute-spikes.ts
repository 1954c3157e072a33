import {
  type Bench,
  type BenchRow,
  type Interval,
  resultAt,
  type SpikeRow,
} from '../../model/index.ts';
import { type Analyte, applyLinear, conversionTo } from '../../reference/index.ts';
import { studentTQuantile } from '../../statistics/index.ts';
import { joinResults, type Side } from '../reduction-side.ts';
import { widenedSide } from '../reduction-statement.ts';
import { kindOf } from '../sample-groups.ts';
import { resultUncertainties, type Uncertainty } from '../uncertainty/index.ts';

/** A dose of spikes.csv beside what was measured. */
export interface SpikeFact {
  readonly row: SpikeRow;
  readonly source: BenchRow<'spikes'>;
  readonly analyte: Analyte;
  /** The spiked feed; null where it has no result. */
  readonly measured: Side | null;
}

/**
 * The nominal dose of every row of spikes.csv beside the spiked feed as measured.
 *
 * The feed samples of one event are one batch, and their results are pooled. The natural feed is
 * that of the same event, else the last one taken before the batch; its sample is named. Recovery is
 * what was found above it over the dose. Ends hold the uncertainty of both feeds; where the natural
 * feed was not measured, only the upper end is known. The dose itself is taken as exact.
 * @param bench a bench without errors
 */
export function computeSpikes(bench: Bench): SpikeFact[] {
  const uncertaintyOf = resultUncertainties(bench);
  return bench.tables.spikes.flatMap((source): SpikeFact[] => {
    const dose = doseOf(bench, source);
    if (dose === null) return [];
    const feeds = new SpikeFeeds(bench, dose.analyte, uncertaintyOf);
    const measured = feeds.spiked(source.values.event);
    const natural = feeds.naturalBefore(source.values.event);
    return [
      {
        row: spikeRow(bench, source, dose, { measured, natural }),
        source,
        analyte: dose.analyte,
        measured,
      },
    ];
  });
}

interface Dose {
  readonly analyte: Analyte;
  /** Canonical unit. */
  readonly value: number;
}

/** Null where the row has an error, which was told when the bench was read. */
function doseOf(bench: Bench, { values: { analyte, dose } }: BenchRow<'spikes'>): Dose | null {
  const known = bench.analytes.byKey(analyte);
  const reading = known === undefined ? bench.analytes.resolve(analyte, null) : null;
  const found = reading?.kind === 'found' ? reading : null;
  const meant = known ?? found?.analyte;
  const [part] = dose.parts;
  if (meant === undefined || part === undefined) return null;
  const conversion = conversionTo(meant, part.unit, found?.basis ?? null);
  if (conversion.kind === 'problem') return null;
  const { ratio, offset } = conversion;
  return { analyte: meant, value: applyLinear(part.number, ratio, offset) };
}

class SpikeFeeds {
  readonly #bench: Bench;
  readonly #uncertaintyOf: (index: number) => Uncertainty;
  /** Usable results of the analyte in feed samples, by sample. */
  readonly #bySample = new Map<number, number[]>();

  constructor(bench: Bench, analyte: Analyte, uncertaintyOf: (index: number) => Uncertainty) {
    this.#bench = bench;
    this.#uncertaintyOf = uncertaintyOf;
    const { results, tables } = bench;
    const wanted = results.analytes.findIndex(({ key }) => key === analyte.key);
    for (let index = 0; index < results.length; index += 1) {
      if (results.analyte[index] !== wanted) continue;
      if (resultAt(results, index).kind === 'missing') continue;
      const sample = results.sample[index] ?? -1;
      const values = tables.samples[sample]?.values;
      if (values?.position !== 'feed' || values.status === 'void' || values.of !== null) continue;
      const own = this.#bySample.get(sample) ?? [];
      this.#bySample.set(sample, own);
      own.push(index);
    }
  }

  spiked(event: string): Side | null {
    return this.#joined(this.#samples(event, 'spiked'));
  }

  /** Of the same event, else the last taken before the first spiked feed of the event. */
  naturalBefore(event: string): Side | null {
    const own = this.#samples(event, 'natural');
    if (own.length > 0) return this.#joined(own);
    const spiked = this.#samples(event, 'spiked');
    if (spiked.length === 0) return null;
    const start = Math.min(...spiked.map((sample) => this.#takenAt(sample)));
    const earlier = [...this.#bySample.keys()].filter(
      (sample) => this.#isOf(sample, 'natural') && this.#takenAt(sample) <= start,
    );
    const last = earlier.sort((a, b) => this.#takenAt(b) - this.#takenAt(a))[0];
    return last === undefined ? null : this.#joined([last]);
  }

  #samples(event: string, kind: 'natural' | 'spiked'): number[] {
    return [...this.#bySample.keys()].filter(
      (sample) =>
        this.#isOf(sample, kind) && this.#bench.tables.samples[sample]?.values.event === event,
    );
  }

  #isOf(sample: number, kind: 'natural' | 'spiked'): boolean {
    const row = this.#bench.tables.samples[sample];
    return row !== undefined && kindOf(row) === kind;
  }

  /** Seconds; NaN where no time was written, which is before nothing. */
  #takenAt(sample: number): number {
    return this.#bench.tables.samples[sample]?.values.taken_at?.seconds ?? Number.NaN;
  }

  #joined(samples: readonly number[]): Side | null {
    const indices = samples.flatMap((sample) => this.#bySample.get(sample) ?? []);
    return joinResults(this.#bench, indices, 'mean', this.#uncertaintyOf);
  }
}

function spikeRow(
  bench: Bench,
  { values: { event, note } }: BenchRow<'spikes'>,
  dose: Dose,
  { measured, natural }: { readonly measured: Side | null; readonly natural: Side | null },
): SpikeRow {
  const { confidence, quality } = bench.settings;
  const share = quality.spike_recovery / 100;
  const accepted = { low: 1 - share, high: 1 + share };
  const recovery = recoveryOf(dose.value, measured, natural, confidence);
  return {
    event,
    analyte: dose.analyte.key,
    unit: dose.analyte.unit,
    nominal: dose.value,
    measured: published(measured),
    measured_n: measured?.results.length ?? 0,
    measured_sample: measured === null ? null : measured.samples.join('+'),
    natural: published(natural),
    natural_sample: natural === null ? null : natural.samples.join('+'),
    recovery,
    confidence,
    accepted_low: accepted.low,
    accepted_high: accepted.high,
    agreement: measured === null ? 'untested' : agreementOf(recovery, accepted),
    note,
  };
}

function recoveryOf(
  dose: number,
  measured: Side | null,
  natural: Side | null,
  confidence: number,
): SpikeRow['recovery'] {
  if (measured === null) return { low: null, estimate: null, high: null };
  const limits = (side: Side): Interval =>
    widenedSide(side, studentTQuantile((1 + confidence) / 2, side.uncertainty.degreesOfFreedom));
  const spiked = limits(measured);
  const before = natural === null ? { low: 0, high: null } : limits(natural);
  const fraction = (amount: number | null): number | null =>
    amount === null || !Number.isFinite(amount) ? null : amount / dose;
  const found = measured.estimate;
  const there = natural?.estimate ?? null;
  return {
    low: fraction(before.high === null ? null : spiked.low - before.high),
    estimate: fraction(found === null || there === null ? null : found - there),
    high: fraction(spiked.high - before.low),
  };
}

function agreementOf(
  { low, high }: SpikeRow['recovery'],
  accepted: Interval,
): SpikeRow['agreement'] {
  if (high !== null && high < accepted.low) return 'differs';
  if (low === null) return 'cannot-say';
  if (low > accepted.high) return 'differs';
  return low >= accepted.low && high !== null && high <= accepted.high ? 'agrees' : 'cannot-say';
}

function published(side: Side | null): SpikeRow['measured'] {
  if (side === null) return { low: null, estimate: null, high: null };
  const { low, high } = side.interval;
  return { low, estimate: side.estimate, high: Number.isFinite(high) ? high : null };
}
