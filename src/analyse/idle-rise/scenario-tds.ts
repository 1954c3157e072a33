import type { Spread } from '../../model/index.ts';
import type { PourSeries } from '../../simulate/index.ts';
import { type IdleProfile, tdsAt } from './idle-profile.ts';

/** A reading above which water is counted, in the unit of a group of readings. */
export interface TdsThreshold {
  readonly value: number;
  readonly dimension: string;
  readonly text: string;
}

/** Gaps shorter than this are none: the pour goes on with the water of the one before, seconds. */
const NO_GAP_S = 1e-6;

/** The TDS of a scenario's water, as far as the tested pauses reach. */
export interface ScenarioTds {
  /** Share of the water poured after pauses within the tested range. */
  readonly coveredShare: number | null;
  /** Mean TDS of that water; low and high take the reading of the nearer shorter or longer pause. */
  readonly meanTds: Spread;
  /** Share of all water above the threshold; what is not covered widens it. */
  readonly shareAbove: Spread;
}

const NOTHING: Spread = { low: null, estimate: null, high: null };

/**
 * Mean TDS and share above a threshold of the water of a scenario.
 *
 * Each pour draws the profile of its pause from the start; a pour that follows another without a gap
 * goes on in it. Between two tested pauses TDS is a straight line in the length of the pause, and
 * bounded by the two; beyond the last portion of a profile its last reading goes on. Pours after
 * pauses shorter or longer than any tested, and the first pour after power-on, are not covered.
 * @param profiles of one group, by pause; at least one
 * @param secondsPerL duration of a litre
 */
export function scenarioTds(
  profiles: readonly IdleProfile[],
  pours: PourSeries,
  secondsPerL: number,
  threshold: number | null,
): ScenarioTds {
  const sums = { total: 0, covered: 0, mass: [0, 0, 0], above: [0, 0, 0] };
  let endS: number | null = null;
  let drawnL = 0;
  let pair: ProfilePair | null = null;
  for (let index = 0; index < pours.atS.length; index++) {
    const atS = pours.atS[index] ?? 0;
    const litres = pours.volumeL[index] ?? 0;
    const gapS = endS === null ? null : atS - endS;
    if (gapS === null || gapS > NO_GAP_S) {
      pair = gapS === null ? null : pairFor(profiles, gapS);
      drawnL = 0;
    }
    sums.total += litres;
    if (pair !== null) {
      sums.covered += litres;
      addPour(sums, pair, drawnL, drawnL + litres, threshold);
    }
    drawnL += litres;
    endS = atS + litres * secondsPerL;
  }
  const { total, covered, mass, above } = sums;
  if (total === 0 || covered === 0) {
    const coveredShare = total === 0 ? null : 0;
    return { coveredShare, meanTds: NOTHING, shareAbove: NOTHING };
  }
  const uncovered = total - covered;
  const isWhole = uncovered <= 1e-9 * total;
  const per = (sum: number | undefined, whole: number): number => (sum ?? 0) / whole;
  return {
    coveredShare: isWhole ? 1 : covered / total,
    meanTds: {
      low: per(mass[0], covered),
      estimate: per(mass[1], covered),
      high: per(mass[2], covered),
    },
    shareAbove:
      threshold === null
        ? NOTHING
        : {
            low: per(above[0], total),
            estimate: isWhole ? per(above[1], total) : null,
            high: per((above[2] ?? 0) + (isWhole ? 0 : uncovered), total),
          },
  };
}

/** The tested pauses on both sides of a pause, and how far it lies towards the longer one. */
interface ProfilePair {
  readonly shorter: IdleProfile;
  readonly longer: IdleProfile;
  readonly weight: number;
}

function pairFor(profiles: readonly IdleProfile[], idleS: number): ProfilePair | null {
  const longer = profiles.find((profile) => profile.idleS >= idleS - NO_GAP_S);
  const shorter = profiles.findLast((profile) => profile.idleS <= idleS + NO_GAP_S);
  if (longer === undefined || shorter === undefined) return null;
  const span = longer.idleS - shorter.idleS;
  return { shorter, longer, weight: span > 0 ? (idleS - shorter.idleS) / span : 0 };
}

function addPour(
  sums: { mass: number[]; above: number[] },
  { shorter, longer, weight }: ProfilePair,
  fromL: number,
  toL: number,
  threshold: number | null,
): void {
  const inside = [...shorter.toL, ...longer.toL].filter((edge) => edge > fromL && edge < toL);
  const edges = [fromL, ...[...new Set(inside)].sort((a, b) => a - b), toL];
  for (let i = 1; i < edges.length; i++) {
    const [a = 0, b = 0] = [edges[i - 1], edges[i]];
    const middle = (a + b) / 2;
    const [s, l] = [tdsAt(shorter, middle), tdsAt(longer, middle)];
    const readings = [Math.min(s, l), s + (l - s) * weight, Math.max(s, l)];
    for (const [k, tds] of readings.entries()) {
      sums.mass[k] = (sums.mass[k] ?? 0) + tds * (b - a);
      if (threshold !== null && tds > threshold) sums.above[k] = (sums.above[k] ?? 0) + (b - a);
    }
  }
}
