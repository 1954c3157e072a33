// Takes: a bench as it was read. Gives: what its lab results and bench logs say about their own
// quality, as findings with the place of the cell and the remedy.
// Never changes a result, never reads a file, never decides that a bench may not be used.
import type { Finding } from '../../findings/index.ts';
import { type Bench, FILES } from '../../model/index.ts';
import { blankFindings } from './blanks.ts';
import { drainBalanceFindings } from './drain-balance.ts';
import { drainFindings } from './drain-logs.ts';
import { duplicateFindings } from './duplicates.ts';
import { exchangedFindings } from './exchanged-bottles.ts';
import { feedFindings } from './feed-agreement.ts';
import { limitFindings } from './limits-above-levels.ts';
import { listFindings } from './lists.ts';
import { conditionFindings } from './log-conditions.ts';
import { pourFindings } from './pour-logs.ts';
import { preservativeFindings } from './preservative-findings.ts';
import { receiptFindings } from './receipt.ts';
import { repeatedValueFindings } from './repeated-values.ts';
import { type QualityCheck, SampleResults } from './sample-results.ts';
import { samplingDateFindings } from './sampling-dates.ts';
import { spikeFindings } from './spiked-doses.ts';
import { totalFindings } from './totals.ts';
import { unitSlipFindings } from './unit-slips.ts';
import { waterChemistryFindings } from './water-chemistry.ts';

export { type DuplicateVerdict, duplicateVerdict } from './duplicate-verdict.ts';
export { type HoldingTime, holdingTime, type RuleReading } from './holding-time-table.ts';

/** Checks that look at lab results, and so need every sample and every result. */
const OF_RESULTS: readonly QualityCheck[] = [
  blankFindings,
  duplicateFindings,
  feedFindings,
  spikeFindings,
  receiptFindings,
  preservativeFindings,
  samplingDateFindings,
  waterChemistryFindings,
  totalFindings,
  repeatedValueFindings,
  limitFindings,
  exchangedFindings,
  drainBalanceFindings,
  unitSlipFindings,
];

/** Checks of the bench logs, row by row or among the rows of one device. */
const OF_LOGS: readonly QualityCheck[] = [
  conditionFindings,
  pourFindings,
  drainFindings,
  listFindings,
];

/** Files without which a comparison of results would mislead. */
const LAB_TABLES: readonly string[] = [
  FILES.samples.path,
  FILES.spikes.path,
  FILES.bottles.path,
  FILES.analytes.path,
  FILES.devices.path,
];

/**
 * Quality control of a bench: blanks, duplicates, holding times, plausibility of the chemistry,
 * exchanged bottles, unit slips, and the bench logs. `docs/quality-control.md` gives each rule with
 * its source.
 *
 * Where a lab file, samples.csv, bottles.csv, analytes.csv or devices.csv holds an error, the results
 * are not compared: what could not be read would look like what was not there.
 * @returns findings in no particular order; what was fine is not told
 * Edge cases: a bench without lab results gives the findings of its logs only.
 */
export function qualityFindings(bench: Bench): Finding[] {
  const view = new SampleResults(bench);
  const isComplete = !bench.findings.some(
    ({ level, place: { file } }) =>
      level === 'error' && file !== null && (file.startsWith('lab/') || LAB_TABLES.includes(file)),
  );
  const checks = isComplete ? [...OF_RESULTS, ...OF_LOGS] : OF_LOGS;
  return checks.flatMap((check) => check(view));
}
