import { type Finding, sortFindings } from '../findings/index.ts';
import type { Outcome } from './outcome.ts';

/**
 * The rows and findings of an outcome as they are published. Of `findings/1` the findings are the
 * rows; every other schema carries them beside its rows. Findings are in reading order.
 */
export function publishedRows(outcome: Outcome): {
  readonly rows: readonly object[];
  readonly findings: readonly Finding[];
} {
  const findings = sortFindings(outcome.findings);
  return outcome.schema === 'findings/1'
    ? { rows: findings, findings: [] }
    : { rows: outcome.rows, findings };
}
