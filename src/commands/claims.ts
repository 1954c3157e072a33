import {
  type Claim,
  type EfficiencyAgainstUse,
  efficiencyAgainstUse,
  type FeedAgainstChallenge,
  feedAgainstChallenges,
  type JudgedClaim,
  judgeClaims,
  type UncertifiedInFeed,
  uncertifiedInFeed,
} from '../analyse/claims/index.ts';
import { computeSums } from '../analyse/sums/index.ts';
import { type Finding, finding } from '../findings/index.ts';
import { type Bench, type ClaimRow, cellPlace, type Interval, STANDARD } from '../model/index.ts';
import { efficiencyThresholds } from '../reference/index.ts';
import type { Outcome } from '../report/index.ts';
import {
  challengeReason,
  claimedText,
  claimReason,
  claimsViews,
  eventReason,
} from '../report/views/index.ts';
import { benchReductions, benchWaterUse } from './bench-facts.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { type CheckedFilters, checkFilters, type Filters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { readClaims } from './read-claims.ts';
import { reductionSettings } from './reduction-settings.ts';

/**
 * Claims and certificates against measurements: rows of `claims/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 * @example claims(readBench('samples/fourteen-devices'), { devices: ['tankless-a'] }).rows
 */
export function claims(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const keepsAll = (filters.analytes ?? []).length === 0;
  const { facts, findings } = benchReductions(bench);
  const read = readClaims(bench);
  const sums = computeSums(bench, facts);
  const judged = judgeClaims(bench, read.claims, facts, sums)
    .map((one) => ({
      judged: one,
      challenges: feedAgainstChallenges(one.claim, facts),
      efficiency: efficiencyOf(bench, one.claim),
    }))
    .filter(({ judged: { claim } }) => {
      const keepsAnalyte = claim.analyte === null ? keepsAll : keep.keepsAnalyte(claim.analyte.key);
      return keepsAnalyte && keep.keepsDevice(claim.row.values.device, STANDARD);
    });
  const uncertified = keptUncertified(uncertifiedInFeed(bench, read.claims, facts), keep);
  const told = judged.map((item) => ({ ...item, findings: claimFindings(item) }));
  return benchOutcome(bench, {
    schema: 'claims/1',
    settings: {
      ...reductionSettings(bench),
      claims: 'of a device with its settings as delivered (variant standard)',
      contradiction:
        'two events, or one with a confirmed retest, firm, Benjamini-Hochberg with the rises',
      conditions: 'capacity claimed; challenge and test pressure of the standard within 20 %',
      ...filterSettings(filters),
    },
    rows: told.map((item) => claimRow(item)),
    findings: [
      ...findings,
      ...read.findings,
      ...told.flatMap((item) => item.findings),
      ...uncertified.map((group) => certificateMissing(group)),
    ],
    views: claimsViews(judged, uncertified),
  });
}

/** Thresholds of water use that a claim names; only then are the scenarios played. */
function efficiencyOf(bench: Bench, claim: Claim): EfficiencyAgainstUse[] {
  const named = efficiencyThresholds(claim.row.values.standard ?? '');
  if (named.length === 0) return [];
  return efficiencyAgainstUse(claim, benchWaterUse(bench, bench.settings.seed).facts);
}

/** Contaminants of the feed without a certified claim, of the devices and analytes kept. */
export function keptUncertified(
  groups: readonly UncertifiedInFeed[],
  keep: CheckedFilters,
): UncertifiedInFeed[] {
  return groups.flatMap((group) => {
    const devices = group.devices.filter((device) => keep.keepsDevice(device, STANDARD));
    const analytes = group.analytes.filter(({ analyte }) => keep.keepsAnalyte(analyte.key));
    return devices.length === 0 || analytes.length === 0 ? [] : [{ devices, analytes }];
  });
}

interface ToldClaim {
  readonly judged: JudgedClaim;
  readonly challenges: readonly FeedAgainstChallenge[];
  readonly efficiency: readonly EfficiencyAgainstUse[];
  readonly findings: readonly Finding[];
}

function claimFindings({
  judged,
  challenges,
}: Pick<ToldClaim, 'judged' | 'challenges'>): Finding[] {
  const { claim, verdict } = judged;
  const { values } = claim.row;
  const place = cellPlace(claim.row, 'claim');
  const found: Finding[] = [];
  if (verdict === 'contradicted') {
    found.push(
      finding(
        'claim-contradicted',
        `the claim asks for ${claimedText(judged)}: ${claimReason(judged)}`,
        'check bottles, blank and installation, and let the maker answer before publishing',
        place,
      ),
    );
  }
  if (values.evidence !== 'certified' || claim.analyte === null) return found;
  if (claim.standard !== null && challenges.length === 0) {
    found.push(
      finding(
        'certificate-unlisted',
        `the tables hold no challenge of ${claim.analyte.name} under ${claim.standard}`,
        'read the claim again in the listing of the certifier; the tables are not complete',
        cellPlace(claim.row, 'standard'),
      ),
    );
  }
  const couldNot = challenges.filter(({ bench }) => {
    return bench === 'could-not-test' || bench === 'not-tested';
  });
  if (challenges.length > 0 && couldNot.length === challenges.length) {
    found.push(
      finding(
        'certificate-untested',
        `this bench could not have tested the certified claim on ${claim.analyte.name}: ${couldNot.map(challengeReason).join('; ')}`,
        'say so beside the claim, or test with a spiked feed',
        place,
      ),
    );
  }
  return found;
}

function certificateMissing({ devices, analytes }: UncertifiedInFeed): Finding {
  const names = analytes.map(({ analyte }) => analyte.name);
  return finding(
    'certificate-missing',
    `found in the feed and not among the certified claims of ${devices.join(', ')}: ${names.join(', ')}`,
    'list certified claims in claims.csv as the certifier lists them, or say that there are none',
  );
}

function claimRow({ judged, challenges, efficiency, findings }: ToldClaim): ClaimRow {
  const { claim, conditions } = judged;
  const { device, claim: words, comparator, evidence, standard } = claim.row.values;
  const { target, analyte } = claim;
  return {
    device,
    claim: words,
    analyte: analyte?.key ?? null,
    comparator,
    value: target === null ? null : target.kind === 'level' ? target.value : target.fraction,
    unit: target?.kind === 'level' ? (analyte?.unit ?? null) : null,
    evidence,
    standard,
    verdict: judged.verdict,
    firm: judged.firm,
    apparent: judged.apparent,
    reason: claimReason(judged),
    interval: published(judged.interval),
    p_value: judged.pValue,
    conditions: {
      throughput_L: conditions.throughputL,
      feed: conditions.feed,
      pressure_kPa: conditions.pressureKpa,
    },
    events: judged.events.map((event) => {
      const { evidence: seen } = event;
      return {
        event: seen.event,
        kind: seen.kind,
        outcome: seen.outcome,
        decision: event.decision,
        why: eventReason(event),
        firm: event.firm,
        inside: event.isInside,
        retested: event.isRetested,
        throughput_L: seen.throughputL,
        feed: published(seen.feed?.interval ?? null),
        product: published(seen.product?.interval ?? null),
        reduction: published(seen.reduction),
        p_value: event.pValue,
        samples: [...seen.feedSamples, ...seen.productSamples].join('+'),
        results: [...seen.places],
      };
    }),
    certification: challenges.map((item) => ({
      standard: item.challenge.standard,
      contaminant: item.challenge.contaminant,
      challenge: item.challenge.challengeText,
      max_product: item.challenge.productText,
      min_reduction: item.challenge.minReduction,
      feed: published(item.feed),
      bench: item.bench,
      why: challengeReason(item),
      confidence: item.challenge.confidence,
      source: item.challenge.source,
      verified: item.challenge.verified,
    })),
    efficiency: efficiency.map(({ threshold, scenario, measured, bench }) => ({
      standard: threshold.standard,
      metric: threshold.metric,
      comparator: threshold.comparator,
      threshold: threshold.value,
      unit: threshold.unit,
      scenario,
      measured,
      bench,
      source: threshold.source,
      verified: threshold.verified,
    })),
    findings: findings.map(({ code }) => code),
    place: cellPlace(claim.row, 'claim'),
  };
}

/** Ends as numbers; null where there is none. An upper end of 1 of a reduction bounds nothing. */
function published(interval: Interval | null): ClaimRow['interval'] {
  const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
  return interval === null
    ? { low: null, high: null }
    : { low: finite(interval.low), high: finite(interval.high) };
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const { devices, variants, analytes } = call.options;
  return refusedResult(bench) ?? doneResult(claims(bench, { devices, variants, analytes }));
}
