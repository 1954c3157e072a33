// Devices, pours and horizons drawn at random for the comparison of the two simulators: whole
// seconds, whole millilitres, and many ties on purpose.
import type {
  DrainDevice,
  FlushRule,
  FlushTrigger,
  Horizon,
  Pours,
} from '../../../src/simulate/index.ts';

export interface RandomCase {
  readonly device: DrainDevice;
  readonly pours: Pours;
  readonly horizon: Horizon;
}

/** A small linear congruential generator (Numerical Recipes constants), unlike the engine's own. */
class Dice {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
    for (let k = 0; k < 8; k++) this.fraction();
  }

  fraction(): number {
    this.state = (Math.imul(this.state, 1_664_525) + 1_013_904_223) >>> 0;
    return this.state / 2 ** 32;
  }

  /** A whole number from `low` to `high`, both possible. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.fraction() * (high - low + 1));
  }

  chance(probability: number): boolean {
    return this.fraction() < probability;
  }

  pick<Item>(items: readonly Item[]): Item {
    return items[this.whole(0, items.length - 1)] as Item;
  }
}

const TRIGGERS: readonly FlushTrigger[] = [
  'idle',
  'idle',
  'interval',
  'interval',
  'start',
  'produced',
  'power-on',
  'dump',
];

export function randomCase(seed: number): RandomCase {
  const dice = new Dice(Math.imul(seed, 2_654_435_761));
  // Coarse steps make timers, ends of pours and starts meet at one instant.
  const step = dice.pick([1, 10, 60]);
  const endS = dice.chance(0.05) ? dice.whole(90_000, 180_000) : dice.whole(0, 120) * 60;
  const clockAtStartS = dice.whole(0, 1439) * 60;
  const flushRules = Array.from({ length: dice.whole(0, 6) }, (_, row) =>
    randomRule(dice, row, step, clockAtStartS, endS),
  );
  // 20, 50 or 100 mL a second: volumes are multiples, so that pours last whole seconds.
  const flowMlPerS = dice.pick([undefined, 20, 50, 100]);
  const device: DrainDevice = {
    drainRatio: dice.pick([0, 0.5, 1, 2.3]),
    flushRules,
    ...(dice.chance(0.5) ? { perStartL: dice.whole(0, 4) / 10 } : {}),
    ...(flowMlPerS === undefined ? {} : { cleanFlowLPerMin: (flowMlPerS * 60) / 1000 }),
  };
  return {
    device,
    pours: randomPourTimes(dice, step, flowMlPerS, endS),
    horizon: {
      endS,
      recordFlushes: true,
      ...(dice.chance(0.9) ? { clockAtStartS } : {}),
    },
  };
}

function randomPourTimes(
  dice: Dice,
  step: number,
  flowMlPerS: number | undefined,
  endS: number,
): Pours {
  const atS: number[] = [];
  const volumeL: number[] = [];
  const busiest = dice.pick([0, 3, 30]);
  // Long pours reach past the horizon, and over the end and the next start of quiet hours.
  const largest = dice.pick([30, 900]);
  let freeS = 0;
  const count = dice.whole(0, busiest);
  for (let pour = 0; pour < count; pour++) {
    const gap = dice.pick([0, 1, dice.whole(0, 10), dice.whole(0, 100)]);
    const startS = freeS + gap * step;
    const millilitres = dice.whole(dice.chance(0.1) ? 0 : 1, largest) * (flowMlPerS ?? 50);
    atS.push(startS);
    volumeL.push(millilitres / 1000);
    freeS = startS + (flowMlPerS === undefined ? 0 : millilitres / flowMlPerS);
    if (startS > endS && dice.chance(0.5)) break;
  }
  return { atS, volumeL };
}

function randomRule(
  dice: Dice,
  row: number,
  step: number,
  clockAtStartS: number,
  endS: number,
): FlushRule {
  const trigger = dice.pick(TRIGGERS);
  const lasting = dice.whole(1, dice.pick([5, 30, 200])) * step;
  const repeat = dice.chance(0.4);
  const rule: FlushRule = {
    rule: `${trigger} in row ${row}`,
    trigger,
    volumeL: dice.whole(0, 15) / 10,
    ...(dice.chance(0.3) ? { water: dice.pick(['feed', 'clean'] as const) } : {}),
    ...(dice.chance(0.3) ? { drainFraction: dice.pick([0, 0.25, 1]) } : {}),
    ...(dice.chance(0.3) ? { minIntervalS: dice.whole(0, 60) * step } : {}),
    ...(dice.chance(0.5) ? { quiet: randomQuiet(dice, clockAtStartS, endS) } : {}),
  };
  switch (trigger) {
    case 'idle':
      return {
        ...rule,
        repeat,
        // Now and then at once; a repeating rule needs a pause.
        afterS: dice.chance(0.1) && !repeat ? 0 : lasting,
        ...(dice.chance(0.4) ? { anchor: dice.pick(['pour', 'power-on'] as const) } : {}),
      };
    case 'interval':
      return {
        ...rule,
        afterS: lasting,
        ...(dice.chance(0.6) ? { anchor: dice.pick(['power-on', 'last-flush'] as const) } : {}),
      };
    case 'start':
      return { ...rule, ...(dice.chance(0.7) ? { afterS: dice.whole(0, 60) * step } : {}) };
    case 'produced':
      return { ...rule, afterL: dice.whole(1, 60) / 20 };
    case 'dump':
      return dice.chance(0.5)
        ? { ...rule, afterL: dice.whole(1, 60) / 20 }
        : { ...rule, afterS: lasting };
    case 'power-on':
      return rule;
  }
}

/** Hours that begin or end near the watched time, so that most of them matter. */
function randomQuiet(
  dice: Dice,
  clockAtStartS: number,
  endS: number,
): NonNullable<FlushRule['quiet']> {
  const mode = dice.pick(['skip', 'defer'] as const);
  if (dice.chance(0.05)) return { fromS: 0, toS: 86_400, mode };
  if (dice.chance(0.05)) return { fromS: 43_200, toS: 43_200, mode };
  const near = () =>
    (Math.floor(clockAtStartS / 60) * 60 + 86_400 + dice.whole(-60, Math.ceil(endS / 60)) * 60) %
    86_400;
  // Quiet but for a few minutes: a flush held for a pour can meet the next quiet hours.
  if (dice.chance(0.3)) {
    const toS = (clockAtStartS + dice.whole(1, 1 + Math.ceil(endS / 120)) * 60) % 86_400;
    return { fromS: (toS + dice.whole(1, 3) * 60) % 86_400, toS, mode };
  }
  return { fromS: near(), toS: near(), mode };
}
