import { type Finding, finding } from '../findings/index.ts';
import { type BenchRow, cellPlace, type DeviceRow, type Recording } from '../model/index.ts';
import type { BenchTables } from './cross-references.ts';

/** Rows whose cells read well one by one and do not fit together. */
export function checkDeviceRows(tables: BenchTables, recordings: readonly Recording[]): Finding[] {
  return [
    ...tables.devices.flatMap(interests),
    ...tables.devices.flatMap((row) => withoutTankRow(row, tables)),
    ...tables.flushRules.flatMap((row) => [...incompleteRule(row), ...withoutVolume(row, tables)]),
    ...recordings.flatMap(recordingGaps),
    ...tables.scenarios.flatMap(wholePours),
    ...tables.scenarios.flatMap((row) => sameScenario(row, recordings)),
  ];
}

function interests(row: DeviceRow): Finding[] {
  const missing = (['acquired', 'interests'] as const).filter((name) => row.values[name] === null);
  if (missing.length === 0) return [];
  return [
    finding(
      'interests-blank',
      `${row.values.device}: ${missing.join(' and ')} not stated`,
      'write how the device was acquired and what interests exist, or none',
      cellPlace(row, missing[0] ?? 'device'),
    ),
  ];
}

function withoutTankRow(row: DeviceRow, tables: BenchTables): Finding[] {
  if (row.values.tank !== 'yes' || row.values.drain_line !== 'yes') return [];
  if (tables.tanks.some((tank) => tank.values.device === row.values.device)) return [];
  return [
    finding(
      'tank-missing',
      `${row.values.device} has a tank and no row in tanks.csv`,
      'add it to tanks.csv for curves and other draw sizes',
      cellPlace(row, 'tank'),
    ),
  ];
}

type Rule = BenchRow<'flushRules'>;

/** What `after` has to be for each trigger; null: it has to be blank. */
const AFTER: Readonly<Record<Rule['values']['trigger'], readonly string[] | null>> = {
  idle: ['time'],
  interval: ['time'],
  start: ['time'],
  produced: ['volume'],
  dump: ['time', 'volume'],
  'power-on': null,
};

const ANCHORS: Readonly<Record<Rule['values']['trigger'], readonly string[]>> = {
  idle: ['pour', 'power-on'],
  interval: ['power-on', 'last-flush'],
  start: [],
  produced: [],
  dump: [],
  'power-on': [],
};

function incompleteRule(row: Rule): Finding[] {
  const { trigger, after, anchor, repeat, quiet, quiet_mode } = row.values;
  const findings: Finding[] = [];
  const needs = AFTER[trigger];
  const misfit = (message: string, remedy: string, field: string): void => {
    findings.push(finding('rule-incomplete', message, remedy, cellPlace(row, field)));
  };
  if (needs === null && after !== null) {
    misfit('a power-on rule takes no figure in after', 'leave after blank', 'after');
  }
  if (needs !== null && after === null && trigger !== 'start') {
    misfit(
      `a rule with trigger ${trigger} needs a ${needs.join(' or a ')} in after`,
      'fill it in',
      'after',
    );
  }
  if (needs !== null && after !== null && !needs.includes(after.dimension)) {
    misfit(
      `a rule with trigger ${trigger} takes a ${needs.join(' or a ')} in after, not a ${after.dimension}`,
      'correct the figure or the trigger',
      'after',
    );
  }
  if (anchor !== null && !ANCHORS[trigger].includes(anchor)) {
    misfit(
      `a rule with trigger ${trigger} has no anchor ${anchor}`,
      ANCHORS[trigger].length === 0
        ? 'leave anchor blank'
        : `write ${ANCHORS[trigger].join(' or ')}`,
      'anchor',
    );
  }
  if (repeat === 'yes' && trigger !== 'idle') {
    misfit('only an idle rule repeats', 'leave repeat blank, or use trigger interval', 'repeat');
  }
  const isTimer = trigger === 'idle' || trigger === 'interval';
  if (quiet !== null && !isTimer) {
    misfit(
      `quiet hours do not concern a rule with trigger ${trigger}`,
      'leave quiet blank',
      'quiet',
    );
  }
  if (quiet_mode !== null && quiet === null) {
    misfit('quiet_mode is filled in and quiet is not', 'write the quiet hours', 'quiet');
  }
  return findings;
}

function withoutVolume(row: Rule, tables: BenchTables): Finding[] {
  const isMeasured = tables.flushes.some(
    (flush) => flush.values.device === row.values.device && flush.values.rule === row.values.rule,
  );
  if (row.values.volume !== null || isMeasured) return [];
  return [
    finding(
      'flush-volume-missing',
      `the rule "${row.values.rule}" has no volume and no flush in flushes.csv`,
      'measure a flush, or write its volume',
      cellPlace(row, 'volume'),
    ),
  ];
}

/** A pour of a recording needs its volume; power-on comes first and end last. */
function recordingGaps(recording: Recording): Finding[] {
  const findings: Finding[] = [];
  let earlier = Number.NEGATIVE_INFINITY;
  for (const [index, row] of recording.rows.entries()) {
    const what = row.values.what ?? 'pour';
    if (what === 'pour' && row.values.volume === null) {
      findings.push(
        finding('cell-missing', 'a pour has no volume', 'write it', cellPlace(row, 'volume')),
      );
    }
    if (row.values.at.seconds < earlier) {
      findings.push(
        finding(
          'pours-unordered',
          'the row is earlier than the one before it',
          'put the rows in order of time',
          cellPlace(row, 'at'),
        ),
      );
    }
    earlier = Math.max(earlier, row.values.at.seconds);
    const isMisplaced =
      (what === 'power-on' && index > 0) || (what === 'end' && index < recording.rows.length - 1);
    if (isMisplaced) {
      findings.push(
        finding(
          'pours-unordered',
          what === 'end' ? 'end is not the last row' : 'power-on is not the first row',
          'a recording has one power-on, first, and one end, last',
          cellPlace(row, 'what'),
        ),
      );
    }
  }
  return findings;
}

function wholePours(row: BenchRow<'scenarios'>): Finding[] {
  if (row.values.spread === 'random' || Number.isInteger(row.values.pours_per_day)) return [];
  return [
    finding(
      'number-outside',
      `${row.values.pours_per_day} pours a day cannot be spread ${row.values.spread ?? 'even'}`,
      'write a whole number, or spread random',
      cellPlace(row, 'pours_per_day'),
    ),
  ];
}

function sameScenario(row: BenchRow<'scenarios'>, recordings: readonly Recording[]): Finding[] {
  const twin = recordings.find((recording) => recording.scenario === row.values.scenario);
  if (twin === undefined) return [];
  return [
    finding(
      'key-duplicate',
      `"${row.values.scenario}" is also the recording ${twin.path}`,
      'give one of the two another name',
      cellPlace(row, 'scenario'),
    ),
  ];
}
