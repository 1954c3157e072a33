import { type Bench, type FilterLifeRow, STANDARD } from '../../model/index.ts';
import { type Analyte, levelsOf } from '../../reference/index.ts';
import { type Evidence, evidenceOfFact } from '../claims/claim-evidence.ts';
import type { Claim, ClaimTarget } from '../claims/index.ts';
import { judgeEvent } from '../claims/judge-event.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import { statementOptions } from '../reductions.ts';
import { lifeOfTarget } from './life-of-target.ts';
import { firstRelease } from './release.ts';

/**
 * Reductions along the volume a device has treated.
 *
 * One row for each device, variant, kind of feed, analyte and target; without a target where two
 * volumes or more were tested. Targets are the claims on the device and the reference levels of the
 * bench that its feed exceeded. Natural and spiked feeds are never put in one row. Events whose samples
 * log no throughput are named and left out.
 * @param claims of the bench
 */
export function computeFilterLife(
  bench: Bench,
  facts: readonly ReductionFact[],
  claims: readonly Claim[],
): FilterLifeRow[] {
  const groups = new Map<string, ReductionFact[]>();
  for (const fact of facts) {
    if (fact.product === null) continue;
    const { device, variant, kind, analyte } = fact.row;
    const key = [device, variant, kind, analyte].join('\t');
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(fact);
  }
  return [...groups.values()].flatMap((group) => rowsOf(bench, group, claims));
}

interface Target {
  readonly target: ClaimTarget;
  readonly from: string;
}

/** An event with its volume. */
interface Point {
  readonly fact: ReductionFact;
  readonly evidence: Evidence;
  readonly throughputL: number;
}

function rowsOf(
  bench: Bench,
  group: readonly ReductionFact[],
  claims: readonly Claim[],
): FilterLifeRow[] {
  const first = group[0];
  if (first === undefined) return [];
  const points: Point[] = group
    .map((fact) => ({ fact, evidence: evidenceOfFact(bench, fact) }))
    .flatMap((item) => {
      const { throughputL } = item.evidence;
      return throughputL === null ? [] : { ...item, throughputL };
    })
    .sort((a, b) => a.throughputL - b.throughputL);
  if (points.length === 0) return [];
  const own = claims.filter(
    ({ row, analyte }) =>
      row.values.device === first.row.device &&
      first.row.variant === STANDARD &&
      analyte?.key === first.analyte.key,
  );
  const targets = [...claimTargets(own), ...levelTargets(bench, first.analyte, points)];
  if (targets.length === 0 && points.length < 2) return [];
  const without = group.length === points.length ? [] : eventsWithout(group, points);
  return (targets.length === 0 ? [null] : targets).map((target) =>
    lifeRow(bench, points, target, own, without),
  );
}

function eventsWithout(group: readonly ReductionFact[], points: readonly Point[]): string[] {
  return group
    .filter((fact) => points.every((point) => point.fact !== fact))
    .map(({ row }) => row.event);
}

function claimTargets(claims: readonly Claim[]): Target[] {
  return claims.flatMap(({ row, target }) =>
    target === null || row.values.comparator === 'up-to'
      ? []
      : { target, from: `claim: ${row.values.claim}` },
  );
}

/** Levels that the feed was above, so that meeting them says something of the device. */
function levelTargets(bench: Bench, analyte: Analyte, points: readonly Point[]): Target[] {
  return levelsOf(analyte, bench.settings.reference_levels ?? []).flatMap((level) => {
    const value = level.canonicalValue;
    if (!level.plain || value === null || !(value > 0)) return [];
    const isExceeded = points.some(({ evidence }) => (evidence.feed?.interval.low ?? 0) > value);
    return isExceeded
      ? { target: { kind: 'level', value }, from: `${level.jurisdiction} ${level.kind}` }
      : [];
  });
}

function lifeRow(
  bench: Bench,
  points: readonly Point[],
  target: Target | null,
  claims: readonly Claim[],
  without: readonly string[],
): FilterLifeRow {
  const options = statementOptions(bench);
  const decided = points.map((point) => ({
    ...point,
    decision:
      target === null
        ? null
        : judgeEvent(bench, point.evidence, target.target, options, true).decision,
  }));
  const life = lifeOfTarget(
    decided.flatMap(({ throughputL, decision }) =>
      decision === null ? [] : { throughputL, decision },
    ),
  );
  const release = firstRelease(
    points.map(({ fact, throughputL }) => ({ throughputL, ...fact.row })),
  );
  const [first] = points;
  if (first === undefined) throw new RangeError('a life without a volume');
  const { device, variant, kind, analyte, unit } = first.fact.row;
  return {
    device,
    variant,
    kind,
    analyte,
    unit,
    points: decided.map((point) => publishedPoint(point)),
    without_throughput: [...without],
    target: target === null ? null : publishedTarget(target),
    ...life,
    release_L: release?.throughputL ?? null,
    release_firm: release?.firm ?? null,
    rated: ratedCapacities(bench, device, claims).map(({ from, capacityL }) => ({
      from,
      capacity_L: capacityL,
      tested_share: Math.max(...points.map(({ throughputL }) => throughputL)) / capacityL,
      missed_before: life.first_missed_L !== null && life.first_missed_L <= capacityL,
    })),
  };
}

const WORDS = { meets: 'met', misses: 'missed', 'cannot-say': 'cannot-say' } as const;

function publishedPoint({
  fact: { row, product },
  evidence,
  throughputL,
  decision,
}: Point & { readonly decision: keyof typeof WORDS | null }): FilterLifeRow['points'][number] {
  const { low, high } = evidence.reduction;
  const isTested = row.outcome !== 'untested';
  return {
    event: row.event,
    throughput_L: throughputL,
    outcome: row.outcome,
    firm: row.firm,
    reduction_low: isTested && Number.isFinite(low) ? low : null,
    reduction_high: isTested && high < 1 ? high : null,
    product_low: product?.interval.low ?? null,
    product_high: row.product.high,
    target: decision === null ? null : WORDS[decision],
    sample: row.product.sample,
  };
}

function publishedTarget({ target, from }: Target): FilterLifeRow['target'] {
  return target.kind === 'reduction'
    ? { comparator: 'at-least', value: target.fraction, from }
    : { comparator: 'at-most-level', value: target.value, from };
}

/** Capacities of the parts of a device, and those its claims on the analyte state. */
function ratedCapacities(
  bench: Bench,
  device: string,
  claims: readonly Claim[],
): { readonly from: string; readonly capacityL: number }[] {
  const parts = bench.tables.parts.flatMap(({ values }) =>
    values.device === device && values.capacity !== null
      ? { from: `part: ${values.part}`, capacityL: values.capacity.value }
      : [],
  );
  const claimed = claims.flatMap(({ row: { values } }) =>
    values.capacity === null
      ? []
      : { from: `claim: ${values.claim}`, capacityL: values.capacity.value },
  );
  return [...parts, ...claimed];
}
