import type { Bench } from '../../model/index.ts';
import { challengesOf, toBase, unitNamed, waterEfficiencyFigures } from '../../reference/index.ts';
import type { Claim } from './claim.ts';
import type { Evidence } from './claim-evidence.ts';

/**
 * How far feed and pressure may lie from what a standard tests with: its tolerances are not in the
 * tables. Common practice, no source.
 */
const TOLERANCE = 0.2;

export type ConditionState = 'inside' | 'outside' | 'not-known' | 'not-stated';

/** One condition of a claim over the events that tested it, in core or canonical units. */
export interface Condition {
  readonly stated: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly state: ConditionState;
}

/** The conditions a claim and its standard state. */
export interface ClaimConditions {
  readonly throughputL: Condition;
  readonly feed: Condition;
  readonly pressureKpa: Condition;
}

/** What a claim's own words and its standard state. */
interface Stated {
  readonly capacityL: number | null;
  readonly challenge: number | null;
  readonly pressureKpa: number | null;
}

/**
 * The conditions of a claim, and the events that lie inside all of them.
 *
 * Throughput: up to the capacity claimed. Feed: up to the challenge of the standard named. Pressure:
 * about that of the standard's test. A condition that is stated and was not logged is not known, and
 * such an event decides nothing.
 */
export function claimConditions(
  bench: Bench,
  claim: Claim,
  evidence: readonly Evidence[],
): { readonly conditions: ClaimConditions; readonly isInside: (item: Evidence) => boolean } {
  const stated = statedConditions(claim);
  const pressures = loggedPressures(bench, claim.row.values.device);
  const pressure = pressureState(stated.pressureKpa, pressures);
  const throughput = (item: Evidence): ConditionState =>
    upTo(stated.capacityL, item.throughputL, 0);
  const feed = (item: Evidence): ConditionState =>
    upTo(stated.challenge, item.feed?.interval.low ?? null, TOLERANCE);
  return {
    conditions: {
      throughputL: {
        stated: stated.capacityL,
        ...rangeOf(evidence.flatMap(({ throughputL }) => throughputL ?? [])),
        state: overall(evidence.map(throughput), stated.capacityL),
      },
      feed: {
        stated: stated.challenge,
        ...rangeOf(
          evidence.flatMap((item) => {
            return item.feed === null ? [] : [item.feed.interval.low, item.feed.interval.high];
          }),
        ),
        state: overall(evidence.map(feed), stated.challenge),
      },
      pressureKpa: { stated: stated.pressureKpa, ...rangeOf(pressures), state: pressure },
    },
    isInside: (item) =>
      [throughput(item), feed(item), pressure].every(
        (state) => state === 'inside' || state === 'not-stated',
      ),
  };
}

function statedConditions({ row, analyte, standard }: Claim): Stated {
  const capacityL = row.values.capacity?.value ?? null;
  if (standard === null) return { capacityL, challenge: null, pressureKpa: null };
  const challenges =
    analyte === null
      ? []
      : challengesOf(standard, analyte.key).flatMap((one) =>
          one.isSuperseded ? [] : (one.challengeHigh ?? []),
        );
  return {
    capacityL,
    challenge: challenges.length === 0 ? null : Math.max(...challenges),
    pressureKpa: testPressureKpa(standard),
  };
}

function testPressureKpa(standard: string): number | null {
  const figure = waterEfficiencyFigures('test condition', standard).find(
    ({ metric }) => metric === 'inlet pressure',
  );
  const unit = figure === undefined ? undefined : unitNamed(figure.unit);
  return figure?.value === null || figure === undefined || unit === undefined
    ? null
    : toBase(figure.value, unit);
}

/** Pressures logged with pours and production runs of a device, kPa. */
function loggedPressures(bench: Bench, device: string): number[] {
  return [...bench.tables.pours, ...bench.tables.drainRuns].flatMap(({ values }) =>
    values.device === device ? (values.pressure?.value ?? []) : [],
  );
}

function upTo(stated: number | null, value: number | null, tolerance: number): ConditionState {
  if (stated === null) return 'not-stated';
  if (value === null) return 'not-known';
  return value <= stated * (1 + tolerance) ? 'inside' : 'outside';
}

function pressureState(stated: number | null, logged: readonly number[]): ConditionState {
  if (stated === null) return 'not-stated';
  if (logged.length === 0) return 'not-known';
  const isNear = logged.every((pressure) => Math.abs(pressure / stated - 1) <= TOLERANCE + 1e-9);
  return isNear ? 'inside' : 'outside';
}

/** Inside where any event is: an event outside decides nothing and excludes no other. */
function overall(states: readonly ConditionState[], stated: number | null): ConditionState {
  if (stated === null) return 'not-stated';
  if (states.includes('inside')) return 'inside';
  return states.includes('outside') ? 'outside' : 'not-known';
}

function rangeOf(values: readonly number[]): { low: number | null; high: number | null } {
  const finite = values.filter(Number.isFinite);
  return finite.length === 0
    ? { low: null, high: null }
    : { low: Math.min(...finite), high: Math.max(...finite) };
}
