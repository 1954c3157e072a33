import type { Outcome } from './outcome.ts';
import { publishedRows } from './published-rows.ts';

const TOOL = 'pourbench';

/**
 * The JSON envelope of an outcome: same input, same bytes.
 *
 * Numbers are shortest round-trip doubles; -0 is 0; NaN, the infinities and undefined are null.
 * Findings are in reading order; of `findings/1` they are the rows. Two spaces of indent, `\n` at
 * the end.
 *
 * @param version of the tool
 */
export function envelopeText(outcome: Outcome, version: string): string {
  const { rows, findings } = publishedRows(outcome);
  const { bench } = outcome;
  const envelope = {
    tool: { name: TOOL, version },
    schema: outcome.schema,
    bench: bench && {
      title: bench.title,
      edition: bench.edition,
      fingerprint: bench.fingerprint,
    },
    inputs: outcome.inputs.map((file) => ({
      path: file.path,
      sha256: file.sha256,
      rows: file.rows,
    })),
    settings: outcome.settings,
    rows,
    findings,
  };
  return `${JSON.stringify(envelope, publishable, 2)}\n`;
}

/** JSON writes -0, NaN and the infinities right by itself, but leaves undefined keys out. */
function publishable(_key: string, value: unknown): unknown {
  return value === undefined ? null : value;
}
