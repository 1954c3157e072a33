// How fast a year of an invented family kitchen plays: the engine with one rule and with many,
// beside a loop that can do nothing but the one-rule case. Run with `npx vitest bench src/simulate`.
// The test runner wraps imports, which slows the engine: the built program is two to three times
// faster than shown here. Compare runs with each other, not with other programs.
import { bench, describe } from 'vitest';
import {
  type DrainDevice,
  type FlushRule,
  type PourGroup,
  type PourSeries,
  scenarioPours,
  simulateDrain,
} from './index.ts';

const DAYS = 365;
const HORIZON = { endS: DAYS * 86_400 };
const DAILY = Array<boolean>(7).fill(true);

const KITCHEN: readonly PourGroup[] = [
  { weekdays: DAILY, fromS: 23_400, toS: 30_600, poursPerDay: 5, volumeL: 0.3, spread: 'random' },
  { weekdays: DAILY, fromS: 30_600, toS: 64_800, poursPerDay: 6, volumeL: 0.25, spread: 'random' },
  { weekdays: DAILY, fromS: 64_800, toS: 70_200, poursPerDay: 3, volumeL: 1.5, spread: 'together' },
  { weekdays: DAILY, fromS: 70_200, toS: 82_800, poursPerDay: 5, volumeL: 0.25, spread: 'random' },
];
const FLOW_L_PER_MIN = 1.8;
const POURS = scenarioPours(KITCHEN, { days: DAYS, seed: 1, cleanFlowLPerMin: FLOW_L_PER_MIN });

const IDLE: FlushRule = { rule: 'after use', trigger: 'idle', afterS: 600, volumeL: 1.4 };
const ONE_RULE: DrainDevice = {
  drainRatio: 0.5,
  cleanFlowLPerMin: FLOW_L_PER_MIN,
  flushRules: [IDLE],
};
const ALL_RULES: DrainDevice = {
  ...ONE_RULE,
  perStartL: 0.02,
  flushRules: [
    { rule: 'at power-on', trigger: 'power-on', volumeL: 2 },
    { ...IDLE, minIntervalS: 1200, quiet: { fromS: 79_200, toS: 25_200, mode: 'defer' } },
    { rule: 'standby', trigger: 'idle', afterS: 10_800, repeat: true, volumeL: 0.6 },
    { rule: 'every half day', trigger: 'interval', afterS: 43_200, volumeL: 0.8 },
    { rule: 'rested', trigger: 'interval', afterS: 21_600, anchor: 'last-flush', volumeL: 0.5 },
    { rule: 'first water', trigger: 'start', afterS: 7200, volumeL: 0.2, water: 'clean' },
    { rule: 'by volume', trigger: 'produced', afterL: 10, volumeL: 0.6 },
    { rule: 'reservoir', trigger: 'dump', afterL: 40, volumeL: 3 },
  ],
};

/** One idle rule and nothing else: the least work the question allows. */
function playOneRule({ atS, volumeL }: PourSeries): number {
  let cleanL = 0;
  let flushes = 0;
  let endS = Number.POSITIVE_INFINITY;
  for (let index = 0; index < atS.length; index++) {
    const startS = atS[index] ?? 0;
    const pourL = volumeL[index] ?? 0;
    if (startS - endS >= 600) flushes++;
    cleanL += pourL;
    endS = startS + (pourL * 60) / FLOW_L_PER_MIN;
  }
  if (endS + 600 <= HORIZON.endS) flushes++;
  return 0.5 * cleanL + 1.4 * flushes;
}

const played = simulateDrain(ONE_RULE, POURS, HORIZON).totalDrainL;
if (Math.abs(played / playOneRule(POURS) - 1) > 1e-9) {
  throw new Error('the engine and the plain loop differ');
}

describe(`a year of a family kitchen, ${POURS.atS.length} pours`, () => {
  bench('plain loop, one idle rule', () => {
    playOneRule(POURS);
  });
  bench('engine, one idle rule', () => {
    simulateDrain(ONE_RULE, POURS, HORIZON);
  });
  bench('engine, eight rules of every kind', () => {
    simulateDrain(ALL_RULES, POURS, HORIZON);
  });
});

describe('drawing the pours of a year', () => {
  bench('scenarioPours', () => {
    scenarioPours(KITCHEN, { days: DAYS, seed: 1, cleanFlowLPerMin: FLOW_L_PER_MIN });
  });
});
