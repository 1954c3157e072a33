import { type Bench, type Interval, STANDARD } from '../../model/index.ts';
import { type Analyte, type CertificationChallenge, challengesOf } from '../../reference/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import type { Claim } from './claim.ts';

/**
 * How far a feed may lie below a challenge and still count as challenged: the tolerances of the
 * standards are not in the tables. Common practice, no source.
 */
const TOLERANCE = 0.2;

/** What the feed of this bench could show of a challenge. */
export interface FeedAgainstChallenge {
  readonly challenge: CertificationChallenge;
  /** The highest feed the device was given, canonical unit; null when none was tested. */
  readonly feed: Interval | null;
  /**
   * `challenged`: the feed held about the challenge or more. `below-challenge`: less, but enough to
   * show a failure. `could-not-test`: so little that a device that changes nothing would pass, or that
   * the required reduction could not have been seen. `cannot-say`: the table does not allow it.
   */
  readonly bench: 'challenged' | 'below-challenge' | 'could-not-test' | 'cannot-say' | 'not-tested';
  readonly because:
    | 'at-challenge'
    | 'below-challenge'
    | 'feed-within-limit'
    | 'limit-too-high'
    | 'doubtful-table'
    | 'no-figure'
    | 'no-feed';
}

/**
 * The challenges that the standard of a claim sets for its analyte, against the feeds the device was
 * given. Superseded editions are left out.
 */
export function feedAgainstChallenges(
  claim: Claim,
  facts: readonly ReductionFact[],
): FeedAgainstChallenge[] {
  const { analyte, standard } = claim;
  if (analyte === null || standard === null) return [];
  const own = facts.filter(
    ({ row }) =>
      row.device === claim.row.values.device &&
      row.variant === STANDARD &&
      row.analyte === analyte.key,
  );
  const feed = highestFeed(own);
  const productLimit = lowestProductLimit(own);
  return challengesOf(standard, analyte.key)
    .filter((challenge) => !challenge.isSuperseded)
    .map((challenge) => ({ challenge, feed, ...against(challenge, feed, productLimit) }));
}

function highestFeed(facts: readonly ReductionFact[]): Interval | null {
  const feeds = facts.flatMap(({ feed }) => feed?.interval ?? []);
  return feeds.length === 0
    ? null
    : {
        low: Math.max(...feeds.map(({ low }) => low)),
        high: Math.max(...feeds.map(({ high }) => high)),
      };
}

/** The lowest limit at which the product was not detected; null when it always was. */
function lowestProductLimit(facts: readonly ReductionFact[]): number | null {
  const limits = facts.flatMap(({ product }) =>
    product?.state === 'notDetected' ? product.interval.high : [],
  );
  return limits.length === 0 ? null : Math.min(...limits);
}

function against(
  challenge: CertificationChallenge,
  feed: Interval | null,
  productLimit: number | null,
): Pick<FeedAgainstChallenge, 'bench' | 'because'> {
  if (feed === null) return { bench: 'not-tested', because: 'no-feed' };
  if (challenge.confidence === 'low') return { bench: 'cannot-say', because: 'doubtful-table' };
  const { challengeLow, maxProduct, minReduction } = challenge;
  if (maxProduct !== null && feed.high <= maxProduct) {
    return { bench: 'could-not-test', because: 'feed-within-limit' };
  }
  if (minReduction !== null && productLimit !== null) {
    if (feed.low * (1 - minReduction) < productLimit) {
      return { bench: 'could-not-test', because: 'limit-too-high' };
    }
  }
  if (challengeLow === null) return { bench: 'cannot-say', because: 'no-figure' };
  return feed.low >= challengeLow * (1 - TOLERANCE)
    ? { bench: 'challenged', because: 'at-challenge' }
    : { bench: 'below-challenge', because: 'below-challenge' };
}

/** Contaminants found in the feed of devices without a certified claim on them. */
export interface UncertifiedInFeed {
  readonly devices: readonly string[];
  readonly analytes: readonly {
    readonly analyte: Analyte;
    /** Standards of the tables that challenge it; none where they hold no such standard. */
    readonly standards: readonly string[];
  }[];
}

/**
 * Contaminants detected in the natural feed of a device with no certified claim behind them, devices
 * with the same list together, in the order of devices.csv.
 *
 * A certified claim on a sum stands for its members.
 */
export function uncertifiedInFeed(
  bench: Bench,
  claims: readonly Claim[],
  facts: readonly ReductionFact[],
): UncertifiedInFeed[] {
  const groups = new Map<string, { devices: string[]; analytes: Analyte[] }>();
  for (const { values } of bench.tables.devices) {
    const certified = new Set(
      claims.flatMap(({ row, analyte }) =>
        row.values.device === values.device && row.values.evidence === 'certified'
          ? [analyte?.key ?? '', ...(analyte?.members ?? [])]
          : [],
      ),
    );
    const found = new Map(
      facts
        .filter(({ row }) => row.device === values.device && row.kind === 'natural')
        .filter(({ analyte, feed }) => {
          return analyte.kind === 'contaminant' && feed !== null && feed.state !== 'notDetected';
        })
        .filter(({ analyte }) => !certified.has(analyte.key))
        .map(({ analyte }) => [analyte.key, analyte]),
    );
    if (found.size === 0) continue;
    const key = [...found.keys()].sort().join(' ');
    const group = groups.get(key) ?? { devices: [], analytes: [...found.values()] };
    groups.set(key, group);
    group.devices.push(values.device);
  }
  return [...groups.values()].map(({ devices, analytes }) => ({
    devices,
    analytes: analytes.map((analyte) => ({
      analyte,
      standards: [...new Set(challengesOf(null, analyte.key).map(({ standard }) => standard))],
    })),
  }));
}
