import { type Finding, finding } from '../findings/index.ts';
import { type Bench, type ReductionRow, resultPlace } from '../model/index.ts';
import { benjaminiHochberg } from '../statistics/index.ts';
import { hasMineralStage, SOLIDS_MEASURES, solidsNotes } from './minerals/solids-behind-stage.ts';
import type { ReductionFact } from './reduction-fact.ts';
import { feedRange, movedFeeds } from './reduction-feed-moved.ts';
import { type ReductionPair, reductionPairs } from './reduction-pairs.ts';
import { reductionRow } from './reduction-row.ts';
import {
  riseLevel,
  riseProbability,
  type StatementOptions,
  stateReduction,
} from './reduction-statement.ts';

export type { ReductionFact } from './reduction-fact.ts';

export interface Reductions {
  readonly facts: readonly ReductionFact[];
  readonly findings: readonly Finding[];
}

/** What the settings of a bench say about every statement on it. */
export function statementOptions(bench: Bench): StatementOptions {
  const { confidence, uncertainty } = bench.settings;
  return { confidence, correlation: uncertainty.feed_product_correlation };
}

/**
 * The reduction of every analyte by every device, variant and event.
 *
 * Every pair gets exactly one outcome. An analyte that only one side holds is `untested`. Whether a
 * product rose above its feed is judged over all pairs of the bench at once: among many pairs some
 * differ by chance, and the false-discovery rate keeps their share among the rises called small.
 * Claims are held to the same rate, so that rises and contradictions of a bench are one family.
 * @param otherTests p-values of the other tests of the bench; none when left out
 * @param windowS how far a feed before or after may lie from a product without a feed of its event
 */
export function computeReductions(
  bench: Bench,
  windowS: number,
  otherTests: (facts: readonly ReductionFact[]) => readonly number[] = () => [],
): Reductions {
  const pairs = reductionPairs(bench, windowS);
  const options = statementOptions(bench);
  const tests = pairs.map(({ feed, product }) => riseProbability(feed, product, options));
  // What else is tested looks at intervals and estimates, which the judgement on rises leaves alone.
  const alone = factsOf(bench, pairs, tests, []);
  const others = otherTests(alone);
  const facts = others.length === 0 ? alone : factsOf(bench, pairs, tests, others);
  return {
    facts,
    findings: [
      ...facts.flatMap((fact) => findingsOf(bench, fact)),
      ...movedFeeds(bench, facts),
      ...solidsNotes(bench, devicesBehindStage(facts)),
    ],
  };
}

function factsOf(
  bench: Bench,
  pairs: readonly ReductionPair[],
  tests: readonly (number | null)[],
  others: readonly number[],
): ReductionFact[] {
  const options = statementOptions(bench);
  const adjusted = adjustedTogether(tests, others);
  return pairs.map((pair, at): ReductionFact => {
    const { analyte, feed, product, group } = pair;
    const riseP = adjusted[at] ?? null;
    const isRise = riseP !== null && riseP <= riseLevel(options.confidence);
    const statement = stateReduction(feed, product, options, isRise);
    return {
      row: withStageCode(bench, reductionRow(bench, pair, statement, riseP)),
      analyte,
      feed,
      product,
      feedJoin: pair.feedJoin,
      feedRange: feedRange(bench, feed),
      riseTest: tests[at] ?? null,
      voidSamples: group.voidProducts.flatMap(
        (index) => bench.tables.samples[index]?.values.sample ?? [],
      ),
    };
  });
}

const STAGE_CODE = 'solids-not-rejection';

/** Marks the fall in dissolved solids of a device whose mineral stage adds to them. */
function withStageCode(bench: Bench, row: ReductionRow): ReductionRow {
  const isMarked =
    SOLIDS_MEASURES.includes(row.analyte) &&
    row.outcome !== 'untested' &&
    hasMineralStage(bench, row.device);
  return isMarked ? { ...row, findings: [...row.findings, STAGE_CODE] } : row;
}

function devicesBehindStage(facts: readonly ReductionFact[]): ReadonlySet<string> {
  return new Set(
    facts.flatMap(({ row }) => (row.findings.includes(STAGE_CODE) ? [row.device] : [])),
  );
}

/**
 * P-values adjusted over all that have one and over those of other tests of the bench (Benjamini and
 * Hochberg).
 */
export function adjustedTogether(
  tests: readonly (number | null)[],
  others: readonly number[],
): (number | null)[] {
  const adjusted = benjaminiHochberg([...tests.filter((p) => p !== null), ...others]);
  let next = 0;
  return tests.map((p) => {
    if (p === null) return null;
    const value = adjusted[next] ?? p;
    next += 1;
    return value;
  });
}

function findingsOf(bench: Bench, { row, analyte, feed, product }: ReductionFact): Finding[] {
  if (product === null) return [];
  const place = resultPlace(bench.results, product.results[0] ?? 0);
  const what = `${analyte.name} of ${row.device} at ${row.event}`;
  if (feed === null) {
    return [
      finding(
        'feed-missing',
        `${what} has no feed result to compare with`,
        'add the feed of the event from the same lab file, or set cross_lab in bench.json',
        place,
      ),
    ];
  }
  if (row.outcome !== 'rise') return [];
  const strength = row.firm ? '' : ', apparently: the uncertainty is assumed';
  return [
    finding(
      'rise-shown',
      `${what} lies above its feed${strength}`,
      'retest before publishing; compare the blank, and check that bottles were not exchanged',
      place,
    ),
  ];
}
