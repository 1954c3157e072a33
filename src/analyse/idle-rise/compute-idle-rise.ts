import { type Finding, finding } from '../../findings/index.ts';
import { type Bench, cellPlace, type IdleRiseRow } from '../../model/index.ts';
import type { WaterUse, WaterUseFact } from '../water-use.ts';
import { type IdleGroup, type IdleProfile, idleGroups } from './idle-profile.ts';
import { recoveryOf } from './recovery-volume.ts';
import { scenarioTds, type TdsThreshold } from './scenario-tds.ts';

/** What the readings after pauses say, pause by pause and scenario by scenario. */
export interface IdleRise {
  readonly rows: readonly IdleRiseRow[];
  readonly findings: readonly Finding[];
}

/**
 * The first water after each tested pause, and the TDS of every scenario's water.
 *
 * @param threshold a reading above which water is counted; null: none is chosen. It counts for
 *   readings of its own unit only
 */
export function computeIdleRise(
  bench: Bench,
  use: WaterUse,
  threshold: TdsThreshold | null,
): IdleRise {
  const groups = idleGroups(bench);
  if (groups.length === 0) return { rows: [], findings: [nothingRead()] };
  const findings: Finding[] = [];
  const rows = groups.flatMap((group) => {
    if (group.scale === null) findings.push(scaleMissing(group));
    const pauses = group.profiles.map((profile) => pauseRow(group, profile, findings));
    const scenarios = use.facts
      .filter(({ row }) => row.device === group.device && row.variant === group.variant)
      .map((fact) => scenarioRow(group, fact, threshold));
    return [...pauses, ...scenarios];
  });
  return { rows, findings };
}

const NOTHING = { low: null, estimate: null, high: null } as const;

function baseRow(group: IdleGroup): IdleRiseRow {
  const { device, variant, meter, scale, unit } = group;
  return {
    device,
    variant,
    meter,
    scale,
    unit,
    what: 'pause',
    idle_s: null,
    scenario: null,
    first_draw_tds: null,
    first_draw_L: null,
    first_draw_of_feed: null,
    running_tds: null,
    running_from: null,
    recover_L: null,
    drawn_L: null,
    trials: null,
    feed_tds: null,
    covered_share: null,
    mean_tds: NOTHING,
    above_tds: null,
    share_above: NOTHING,
    drain_L_per_year: null,
    findings: group.scale === null ? ['tds-scale-missing'] : [],
  };
}

function pauseRow(group: IdleGroup, profile: IdleProfile, findings: Finding[]): IdleRiseRow {
  const base = baseRow(group);
  const recovery = recoveryOf(group, profile);
  const first = profile.tds[0] ?? null;
  const isOpen = recovery !== null && recovery.litres === null;
  if (isOpen) findings.push(unsettled(group, profile));
  return {
    ...base,
    idle_s: profile.idleS,
    first_draw_tds: first,
    first_draw_L: profile.toL[0] ?? null,
    first_draw_of_feed:
      first === null || profile.feedTds === null || profile.feedTds === 0
        ? null
        : first / profile.feedTds,
    running_tds: recovery?.runningTds ?? null,
    running_from: recovery?.runningFrom ?? null,
    recover_L: recovery?.litres ?? null,
    drawn_L: profile.toL.at(-1) ?? null,
    trials: profile.trials,
    feed_tds: profile.feedTds,
    findings: isOpen ? [...base.findings, 'idle-rise-unsettled'] : base.findings,
  };
}

function scenarioRow(
  group: IdleGroup,
  fact: WaterUseFact,
  threshold: TdsThreshold | null,
): IdleRiseRow {
  const above = threshold?.dimension === group.dimension ? threshold.value : null;
  const flow = fact.drain.flow?.flowLPerMin ?? null;
  const found = scenarioTds(
    group.profiles,
    fact.scenario.pours(flow),
    flow === null ? 0 : 60 / flow,
    above,
  );
  return {
    ...baseRow(group),
    what: 'scenario',
    scenario: fact.row.scenario,
    covered_share: found.coveredShare,
    mean_tds: found.meanTds,
    above_tds: above,
    share_above: found.shareAbove,
    drain_L_per_year: fact.row.drain_L_per_year.estimate,
  };
}

function nothingRead(): Finding {
  return finding(
    'idle-tds-missing',
    'the bench has no readings after a pause: the rise while idle is not tested',
    'read the first portions after pauses of 10, 30 and 60 min and overnight for idle-tds.csv',
  );
}

function scaleMissing(group: IdleGroup): Finding {
  return finding(
    'tds-scale-missing',
    `a meter of ${group.device} does not say on which scale it reads; its readings stand alone`,
    'write the scale: nacl, 442, or the factor from conductivity',
    cellPlace(group.rows[0] ?? { line: 0, raw: [], source: EMPTY }, 'scale'),
  );
}

const EMPTY = { path: 'idle-tds.csv', header: [], fieldIndex: new Map<string, number>() };

function unsettled(group: IdleGroup, profile: IdleProfile): Finding {
  const row = group.rows.findLast(({ values }) => values.idle.value === profile.idleS);
  return finding(
    'idle-rise-unsettled',
    profile.tds.length < 2
      ? `one portion after a pause does not show how ${group.device} (${group.variant}) recovers`
      : `the last reading of ${group.device} (${group.variant}) still falls, so the volume to recover is not known`,
    'read more portions, or add readings without a pause (idle 0 s)',
    ...(row === undefined ? [] : [cellPlace(row, 'tds')]),
  );
}
