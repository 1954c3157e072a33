import { placeText } from '../../findings/index.ts';
import { type Bench, cellPlace, STANDARD } from '../../model/index.ts';
import type { Claim } from '../claims/claim.ts';
import { decideAtLeast } from '../claims/decide-claim.ts';
import { type JudgedClaim, judgeClaims } from '../claims/judge-claims.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import { computeReductions } from '../reductions.ts';
import { computeSums } from '../sums/index.ts';

/** A verdict of the bench that its results do not settle. */
export interface OpenVerdict {
  /** Equal for the same question before and after more results. */
  readonly id: string;
  readonly kind: 'claim' | 'rise' | 'wanted' | 'untestable' | 'level';
  readonly device: string;
  readonly variant: string;
  /** Key of the analyte; null for a claim without a known one. */
  readonly analyte: string | null;
  readonly about: string;
  readonly now: string;
  readonly because: string;
}

/** All verdicts of a bench, settled and open, by id. */
export interface Verdicts {
  readonly open: ReadonlyMap<string, OpenVerdict>;
  /** Words of the settled ones. */
  readonly settled: ReadonlyMap<string, string>;
  readonly facts: readonly ReductionFact[];
  readonly claims: readonly JudgedClaim[];
}

/**
 * Which verdicts are open:
 *
 * - a claim that is open or untested, or supported on assumed uncertainty alone;
 * - the confirmation of a claim that is contradicted, where no event holds two samples that each miss
 *   it: two events suffice for the verdict, and it accuses somebody;
 * - a rise that is apparent: no event shows it firmly;
 * - a wanted reduction that no event reaches or misses, wherever the analyte was tested;
 * - a reduction that no event could show (`untestable`), of an analyte asked about otherwise and without
 *   an open claim on the same device;
 * - a reference level above zero that no natural event decides (`cannot-say`).
 *
 * "Up to" and claims without a figure are left out: no result settles them.
 * @param asked keys of the analytes asked about, with the reductions wanted of them
 */
export function verdictsOf(
  bench: Bench,
  windowS: number,
  claims: readonly Claim[],
  asked: ReadonlyMap<string, readonly number[]>,
): Verdicts {
  const { facts } = computeReductions(bench, windowS);
  const judged = judgeClaims(bench, claims, facts, computeSums(bench, facts));
  const collected = new Collected();
  for (const one of judged) addClaim(collected, one);
  for (const group of grouped(facts)) {
    addRise(collected, group);
    const wanted = asked.get(group[0].analyte.key);
    for (const fraction of wanted ?? []) addWanted(collected, group, fraction);
    if (wanted?.length === 0) addUntestable(collected, group);
    addLevels(collected, group);
  }
  return { open: collected.open, settled: collected.settled, facts, claims: judged };
}

class Collected {
  readonly open = new Map<string, OpenVerdict>();
  readonly settled = new Map<string, string>();

  add(verdict: OpenVerdict, isOpen: boolean): void {
    if (isOpen) this.open.set(verdict.id, verdict);
    else this.settled.set(verdict.id, verdict.now);
  }
}

function addClaim(collected: Collected, judged: JudgedClaim): void {
  const { claim, verdict, because, firm, apparent } = judged;
  if (verdict === 'untestable' || because === 'analyte-unknown') return;
  const isWeak = verdict === 'supported' && !firm;
  const { device, claim: words } = claim.row.values;
  const place = placeText(cellPlace(claim.row, 'claim'));
  const common = {
    kind: 'claim',
    device,
    variant: STANDARD,
    analyte: claim.analyte?.key ?? null,
    about: words,
  } as const;
  if (verdict === 'contradicted') {
    const isConfirmed = judged.events.some((event) => event.isInside && event.isRetested);
    collected.add(
      {
        ...common,
        id: `confirmation ${place}`,
        now: isConfirmed ? 'contradicted, confirmed' : 'contradicted',
        because: 'not-confirmed',
      },
      !isConfirmed,
    );
  }
  const now = isWeak
    ? 'supported, on assumed uncertainty'
    : apparent
      ? 'open, apparently missed'
      : verdict;
  collected.add(
    {
      ...common,
      id: `claim ${place}`,
      now,
      because: isWeak ? 'assumed-uncertainty' : because,
    },
    isWeak || verdict === 'open' || verdict === 'untested',
  );
}

type Group = readonly [ReductionFact, ...ReductionFact[]];

/** Facts of one device, variant and analyte, all events. */
function grouped(facts: readonly ReductionFact[]): Group[] {
  const groups = new Map<string, [ReductionFact, ...ReductionFact[]]>();
  for (const fact of facts) {
    const { device, variant, analyte } = fact.row;
    const key = JSON.stringify([device, variant, analyte]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [fact]);
    else group.push(fact);
  }
  return [...groups.values()];
}

function common([{ row, analyte }]: Group): Pick<OpenVerdict, 'device' | 'variant' | 'analyte'> {
  return { device: row.device, variant: row.variant, analyte: analyte.key };
}

function addRise(collected: Collected, group: Group): void {
  const rises = group.filter(({ row }) => row.outcome === 'rise');
  if (rises.length === 0) return;
  const isFirm = rises.some(({ row }) => row.firm);
  const where = common(group);
  collected.add(
    {
      ...where,
      id: `rise ${where.device} ${where.variant} ${where.analyte}`,
      kind: 'rise',
      about: `${group[0].analyte.name} above the feed`,
      now: isFirm ? 'rise' : 'apparent rise',
      because: 'assumed-uncertainty',
    },
    !isFirm,
  );
}

function addWanted(collected: Collected, group: Group, fraction: number): void {
  const decisions = group
    .filter(({ row }) => row.outcome !== 'untested')
    .map(({ row: { reduction } }) => {
      const { interval_low, interval_high } = reduction;
      const interval = { low: interval_low ?? Number.NEGATIVE_INFINITY, high: interval_high ?? 1 };
      return decideAtLeast(interval, fraction);
    });
  if (decisions.length === 0) return;
  const decided = decisions.find((decision) => decision !== 'cannot-say');
  const where = common(group);
  collected.add(
    {
      ...where,
      id: `wanted ${where.device} ${where.variant} ${where.analyte} ${fraction}`,
      kind: 'wanted',
      about: String(fraction),
      now: decided === undefined ? 'open' : decided === 'meets' ? 'reached' : 'missed',
      because: group.every(({ row }) => row.outcome === 'untestable')
        ? 'feed-too-low'
        : 'wanted-not-decided',
    },
    decided === undefined,
  );
}

function addUntestable(collected: Collected, group: Group): void {
  const tested = group.filter(({ row }) => row.outcome !== 'untested');
  const where = common(group);
  if (tested.length === 0) return;
  const hasClaim = [...collected.open.values()].some(
    (one) => one.kind === 'claim' && one.device === where.device && one.analyte === where.analyte,
  );
  if (hasClaim) return;
  const shown = tested.find(({ row }) => row.outcome !== 'untestable');
  collected.add(
    {
      ...where,
      id: `untestable ${where.device} ${where.variant} ${where.analyte}`,
      kind: 'untestable',
      about: `reduction of ${group[0].analyte.name}`,
      now: shown?.row.outcome ?? 'untestable',
      because: 'feed-too-low',
    },
    shown === undefined,
  );
}

function addLevels(collected: Collected, group: Group): void {
  const where = common(group);
  const verdicts = group
    .filter(({ row }) => row.kind === 'natural')
    .flatMap(({ row }) => row.reference_levels)
    .filter(({ value }) => value !== null && value > 0);
  const ids = new Map<string, { about: string; decided: string | null }>();
  for (const { jurisdiction, kind, value, unit, verdict } of verdicts) {
    const about = `${jurisdiction} ${kind} ${value} ${unit}`;
    const known = ids.get(about) ?? { about, decided: null };
    ids.set(about, known);
    if (verdict !== 'cannot-say') known.decided = verdict;
  }
  for (const { about, decided } of ids.values()) {
    collected.add(
      {
        ...where,
        id: `level ${where.device} ${where.variant} ${where.analyte} ${about}`,
        kind: 'level',
        about,
        now: decided ?? 'cannot-say',
        because: 'limit-above-level',
      },
      decided === null,
    );
  }
}
