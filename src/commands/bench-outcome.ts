import type { Finding } from '../findings/index.ts';
import { hasErrors } from '../findings/index.ts';
import type { Bench, SchemaName } from '../model/index.ts';
import type { BenchStamp, Outcome, View } from '../report/index.ts';
import type { CommandResult } from './command.ts';
import type { Filters } from './filters.ts';

export function stampOf(bench: Bench): BenchStamp {
  return {
    title: bench.settings.title,
    edition: bench.settings.edition ?? null,
    fingerprint: bench.fingerprint,
  };
}

/** Filters as they stand in the settings of an output: only those in force. */
export function filterSettings(filters: Filters): Record<string, readonly string[]> {
  const { devices, variants, analytes, scenarios } = filters;
  return Object.fromEntries(
    Object.entries({ devices, variants, analytes, scenarios }).flatMap(([name, wanted]) =>
      wanted === undefined || wanted.length === 0 ? [] : [[name, wanted]],
    ),
  );
}

/** The outcome of a command over a bench, with the findings of the bench in front. */
export function benchOutcome(
  bench: Bench,
  parts: {
    readonly schema: SchemaName;
    readonly settings: Readonly<Record<string, unknown>>;
    readonly rows: readonly object[];
    readonly findings: readonly Finding[];
    readonly views: readonly View[];
  },
): Outcome {
  return {
    schema: parts.schema,
    bench: stampOf(bench),
    inputs: bench.inputs,
    settings: parts.settings,
    rows: parts.rows,
    findings: [...bench.findings, ...parts.findings],
    views: parts.views,
  };
}

/** A bench with an error is not computed on: only its findings are given. */
export function refusedResult(bench: Bench): CommandResult | null {
  if (!hasErrors(bench.findings)) return null;
  return { outcome: null, findings: bench.findings, written: [], end: 'done' };
}

export function doneResult(outcome: Outcome): CommandResult {
  return { outcome, findings: outcome.findings, written: [], end: 'done' };
}
