import type { Bench, LabResult, SampleRow } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';

/** What one device would send to the lab at an event that has not been held. */
export interface PlannedSamples {
  /** Name of the event; samples of one name and kind are taken together. */
  readonly event: string;
  readonly device: string;
  readonly variant: string;
  readonly kind: 'natural' | 'spiked';
  /** Product samples. */
  readonly samples: number;
  /** Litres treated; null: not known. */
  readonly throughputL: number | null;
  readonly results: readonly {
    readonly analyte: Analyte;
    readonly feed: LabResult;
    readonly product: LabResult;
  }[];
}

/**
 * The bench as it would be after more events: the very rows that samples.csv and one lab file
 * would add. Every device gets a feed row of its own, so that each may repeat its own figures; on the
 * day one feed serves them all.
 */
export function withPlannedEvent(bench: Bench, planned: readonly PlannedSamples[]): Bench {
  const table = new Appended(bench);
  for (const plan of planned) {
    const name = `${plan.event}\n${plan.device}\n${plan.variant}`;
    const feed = table.addSample(plan, 'feed', `${name}\nfeed`);
    for (const { analyte, feed: result } of plan.results) table.addResult(feed, analyte, result);
    for (let index = 0; index < plan.samples; index += 1) {
      const product = table.addSample(plan, 'product', `${name}\n${index}`);
      for (const { analyte, product: result } of plan.results) {
        table.addResult(product, analyte, result);
      }
    }
  }
  return table.bench();
}

class Appended {
  readonly #bench: Bench;
  readonly #samples: SampleRow[];
  readonly #analytes: Analyte[];
  readonly #distinct: LabResult[];
  readonly #added: { sample: number; analyte: number; result: number }[] = [];

  constructor(bench: Bench) {
    this.#bench = bench;
    this.#samples = [...bench.tables.samples];
    this.#analytes = [...bench.results.analytes];
    this.#distinct = [...bench.results.distinct];
  }

  addSample(plan: PlannedSamples, position: 'feed' | 'product', sample: string): number {
    const { device, variant, kind, throughputL } = plan;
    // A line break keeps planned names apart from those of a file.
    const event = `${plan.event}\n${variant}`;
    const throughput =
      throughputL === null || position === 'feed'
        ? null
        : { value: throughputL, dimension: 'volume', text: '', parts: [], isApproximate: false };
    this.#samples.push({
      line: 0,
      raw: [],
      source: { path: '', header: [], fieldIndex: new Map() },
      values: {
        sample,
        position,
        device,
        variant: position === 'feed' ? null : variant,
        event,
        kind,
        of: null,
        taken_at: null,
        throughput,
        run_first: null,
        idle_before: null,
        status: null,
        reason: null,
        replaces: null,
        note: null,
      },
    });
    return this.#samples.length - 1;
  }

  addResult(sample: number, analyte: Analyte, result: LabResult): void {
    let at = this.#analytes.findIndex(({ key }) => key === analyte.key);
    if (at < 0) at = this.#analytes.push(analyte) - 1;
    this.#added.push({ sample, analyte: at, result: this.#distinct.push(result) - 1 });
  }

  bench(): Bench {
    const { results, tables } = this.#bench;
    const added = this.#added;
    const column = (own: Int32Array, values: readonly number[]): Int32Array => {
      const joined = new Int32Array(results.length + added.length);
      joined.set(own.subarray(0, results.length));
      joined.set(values, results.length);
      return joined;
    };
    const file = results.files.length;
    return {
      ...this.#bench,
      tables: { ...tables, samples: this.#samples },
      results: {
        ...results,
        length: results.length + added.length,
        analytes: this.#analytes,
        distinct: this.#distinct,
        file: column(
          results.file,
          added.map(() => file),
        ),
        line: column(
          results.line,
          added.map(() => 0),
        ),
        field: column(
          results.field,
          added.map(() => 0),
        ),
        sample: column(
          results.sample,
          added.map((one) => one.sample),
        ),
        analyte: column(
          results.analyte,
          added.map((one) => one.analyte),
        ),
        result: column(
          results.result,
          added.map((one) => one.result),
        ),
      },
    };
  }
}

/**
 * The bench with the results of some analytes only, and of their groups those of every sample that is a
 * duplicate or has one: their scatter says how uncertain the others of the group are.
 * @param keys analytes to keep, with the members of sums
 */
export function withAnalytes(bench: Bench, keys: ReadonlySet<string>): Bench {
  const { results, tables } = bench;
  const originals = new Set(tables.samples.flatMap(({ values }) => values.of ?? []));
  const groups = new Set([...keys].map((key) => bench.analytes.byKey(key)?.group));
  const kept: number[] = [];
  for (let index = 0; index < results.length; index += 1) {
    const analyte = results.analytes[results.analyte[index] ?? -1];
    const sample = tables.samples[results.sample[index] ?? -1]?.values;
    const isDuplicate =
      sample !== undefined && (sample.of !== null || originals.has(sample.sample));
    if (keys.has(analyte?.key ?? '') || (isDuplicate && groups.has(analyte?.group))) {
      kept.push(index);
    }
  }
  const pick = (own: Int32Array): Int32Array => Int32Array.from(kept, (index) => own[index] ?? 0);
  return {
    ...bench,
    results: {
      ...results,
      length: kept.length,
      file: pick(results.file),
      line: pick(results.line),
      field: pick(results.field),
      sample: pick(results.sample),
      analyte: pick(results.analyte),
      result: pick(results.result),
    },
  };
}
