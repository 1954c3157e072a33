import { BenchError } from '../findings/index.ts';
import type { LookupRow } from '../model/index.ts';
import { type AnalyteFacts, analyteIndex, lookUp } from '../reference/index.ts';
import type { Outcome } from '../report/index.ts';
import { lookupViews } from '../report/views/index.ts';
import { argument, type Call, type CommandResult } from './command.ts';

/**
 * All the tables hold about an analyte: rows of `lookup/1`, several where the text is ambiguous.
 *
 * @param text a key, name, alias or CAS number
 * @throws {BenchError} analyte-unknown, with the nearest names
 */
export function lookup(text: string): Outcome {
  const found = lookUp(text, analyteIndex([]));
  if (found.found.length === 0) {
    throw new BenchError(
      'analyte-unknown',
      `"${text}" is not a known analyte`,
      found.suggestions.length === 0
        ? 'try another name, a CAS number, or a part of the name of three letters or more'
        : `did you mean: ${found.suggestions.join(', ')}?`,
    );
  }
  const rows = found.found.map(lookupRow);
  return {
    schema: 'lookup/1',
    bench: null,
    inputs: [],
    settings: { text },
    rows,
    findings: [],
    views: lookupViews(rows, found.otherMeaning),
  };
}

function lookupRow(facts: AnalyteFacts): LookupRow {
  const { analyte } = facts;
  return {
    analyte: analyte.key,
    name: analyte.name,
    cas: analyte.cas,
    group: analyte.group,
    unit: analyte.unit,
    basis: analyte.basis,
    bases: facts.bases.map(({ basis, gPerMol }) => ({ basis, g_per_mol: gPerMol })),
    aliases: [...analyte.aliases],
    members: [...analyte.members],
    note: analyte.note,
    levels: facts.levels.map((level) => ({
      jurisdiction: level.jurisdiction,
      kind: level.kind,
      low: level.low,
      value: level.value,
      unit: level.unit,
      basis: level.basis,
      edition: level.edition,
      note: level.note,
      source: level.source,
      verified: level.verified,
    })),
  };
}

export async function run(call: Call): Promise<CommandResult> {
  const outcome = lookup(argument(call, 0));
  return { outcome, findings: outcome.findings, written: [], end: 'done' };
}
