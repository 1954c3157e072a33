import { ABOVE_ZERO, checkNumber, refuseInput, ZERO_OR_MORE } from './check-number.ts';

/** Pressure of the air outside at sea level, kPa; exact by convention. */
const SEA_LEVEL_KPA = 101.325;

/**
 * A storage tank with an air cushion and the membrane that fills it. Pressures in kPa are gauge
 * pressures.
 */
export interface StorageTank {
  /** Volume of the empty shell, litres. */
  readonly shellL: number;
  /** Air pressure in the empty tank. */
  readonly prechargeKPa: number;
  /** Tank pressure at which filling stops. */
  readonly stopKPa: number;
  /** Tank pressure at which filling starts again; not below the pre-charge, below `stopKPa`. */
  readonly restartKPa: number;
  readonly feedKPa: number;
  /** Osmotic difference across the membrane; left out: 0. */
  readonly osmoticKPa?: number;
  /** Clean flow into an open tank, L/min. */
  readonly openFlowLPerMin: number;
  /** Drain flow while filling, set by a restrictor and taken as constant, L/min. */
  readonly rejectFlowLPerMin: number;
  /** Pressure of the air outside, absolute; left out: 101.325. */
  readonly outsideKPa?: number;
}

/** What it takes to fill a tank from one level to another. */
export interface TankRefill {
  readonly seconds: number;
  readonly cleanL: number;
  readonly drainL: number;
  /** Drain per litre made; null when nothing was made. */
  readonly ratio: number | null;
}

/** The numbers of a tank that its closed forms need. */
export interface TankFigures {
  readonly shellL: number;
  /** Absolute pressure times volume of the air, kPa L. */
  readonly air: number;
  /** Absolute pressure at which no more water would come, kPa. */
  readonly drivingKPa: number;
  readonly outsideKPa: number;
  /** Litres per second and kPa of driving pressure. */
  readonly permeability: number;
  readonly rejectLPerS: number;
  /** Litres in the tank when filling stops and when it starts again. */
  readonly stopL: number;
  readonly restartL: number;
}

/**
 * A tank checked and made ready for its closed forms.
 * @throws {BenchError} simulation-input, naming the figure
 */
export function tankFigures(tank: StorageTank): TankFigures {
  const shellL = checkNumber('shellL', tank.shellL, ABOVE_ZERO);
  const prechargeKPa = checkNumber('prechargeKPa', tank.prechargeKPa, ZERO_OR_MORE);
  const stopKPa = checkNumber('stopKPa', tank.stopKPa, ABOVE_ZERO);
  const restartKPa = checkNumber('restartKPa', tank.restartKPa, ZERO_OR_MORE);
  const feedKPa = checkNumber('feedKPa', tank.feedKPa, ABOVE_ZERO);
  const osmoticKPa = checkNumber('osmoticKPa', tank.osmoticKPa ?? 0, ZERO_OR_MORE);
  const outsideKPa = checkNumber('outsideKPa', tank.outsideKPa ?? SEA_LEVEL_KPA, ABOVE_ZERO);
  const openFlow = checkNumber('openFlowLPerMin', tank.openFlowLPerMin, ABOVE_ZERO);
  const rejectFlow = checkNumber('rejectFlowLPerMin', tank.rejectFlowLPerMin, ZERO_OR_MORE);
  const openKPa = feedKPa - osmoticKPa;
  if (stopKPa >= openKPa) {
    refuseInput(
      `the tank would stop at ${stopKPa} kPa and the membrane reaches ${openKPa} kPa at most`,
      'give a stopKPa below the feed pressure less the osmotic pressure',
    );
  }
  if (restartKPa < prechargeKPa || restartKPa >= stopKPa) {
    refuseInput(
      `the tank restarts at ${restartKPa} kPa, with ${prechargeKPa} kPa when empty and ${stopKPa} kPa when full`,
      'give a restartKPa from the pre-charge to below the stop pressure',
    );
  }
  const air = (prechargeKPa + outsideKPa) * shellL;
  const waterAt = (kPa: number): number => shellL - air / (kPa + outsideKPa);
  return {
    shellL,
    air,
    drivingKPa: openKPa + outsideKPa,
    outsideKPa,
    permeability: openFlow / 60 / openKPa,
    rejectLPerS: rejectFlow / 60,
    stopL: waterAt(stopKPa),
    restartL: Math.max(0, waterAt(restartKPa)),
  };
}

/**
 * Gauge pressure in a tank that holds so much water, kPa.
 *
 * The air keeps its temperature (Boyle's law), which is near enough for refills of an hour; air
 * warms when a tank fills fast and cools when it is drawn fast.
 * @param waterL litres, from 0 to below the shell
 * @throws {BenchError} simulation-input
 */
export function tankPressureKPa(tank: StorageTank, waterL: number): number {
  const { air, shellL, outsideKPa } = tankFigures(tank);
  return air / (shellL - levelIn(waterL, shellL, 'waterL')) - outsideKPa;
}

/**
 * Litres of a full tank, and litres left when it starts to fill again.
 * @throws {BenchError} simulation-input
 */
export function tankLevels(tank: StorageTank): {
  readonly stopL: number;
  readonly restartL: number;
} {
  const { stopL, restartL } = tankFigures(tank);
  return { stopL, restartL };
}

/**
 * Fills a tank from one level to another.
 *
 * Clean flow falls with the driving pressure as the air is compressed; the drain flow stays as it
 * is. So the last litre costs more drain than the first.
 * @param fromL litres at the start, from 0
 * @param toL litres at the end, at least `fromL`, below what the membrane can reach
 * @throws {BenchError} simulation-input
 * Source: derived from an isothermal air cushion and a clean flow proportional to the driving
 *   pressure; closed form of the integral.
 * Checked by: tests/outside-checks/physics/, src/simulate/tank-refill.test.ts (by small steps)
 * @example
 * refillTank({ shellL: 14, prechargeKPa: 48, stopKPa: 276, restartKPa: 248, feedKPa: 414,
 *   osmoticKPa: 34, openFlowLPerMin: 0.197, rejectFlowLPerMin: 0.591 }, 0, 3).ratio // 3.65
 */
export function refillTank(tank: StorageTank, fromL: number, toL: number): TankRefill {
  const figures = tankFigures(tank);
  const from = levelIn(fromL, figures.shellL, 'fromL');
  const to = levelIn(toL, figures.shellL, 'toL');
  if (to < from) refuseInput(`toL is ${to} and fromL ${from}`, 'give a toL of at least fromL');
  const seconds = refillSeconds(figures, from, to);
  if (!Number.isFinite(seconds)) {
    refuseInput(`toL is ${to}, more than the membrane can press in`, 'give a lower toL');
  }
  const drainL = figures.rejectLPerS * seconds;
  const cleanL = to - from;
  return { seconds, cleanL, drainL, ratio: cleanL > 0 ? drainL / cleanL : null };
}

/** Drain per litre when the product meets a constant pressure: an open tank, or a permeate pump. */
export function constantPressureRatio(tank: StorageTank, backPressureKPa = 0): number | null {
  const { drivingKPa, outsideKPa, permeability, rejectLPerS } = tankFigures(tank);
  const against = checkNumber('backPressureKPa', backPressureKPa, ZERO_OR_MORE);
  const flow = permeability * (drivingKPa - outsideKPa - against);
  return flow > 0 ? rejectLPerS / flow : null;
}

/**
 * Seconds to fill from one level to another, with u the air volume, c the air's p V and N the
 * driving pressure: [(u1 - u2)/N + c/N² ln((N u1 - c)/(N u2 - c))] / A.
 */
export function refillSeconds(figures: TankFigures, fromL: number, toL: number): number {
  const { shellL, air, drivingKPa, permeability } = figures;
  const left = drivingKPa * (shellL - toL) - air;
  if (left <= 0) return Number.POSITIVE_INFINITY;
  const filled = toL - fromL;
  const logarithm = Math.log1p((drivingKPa * filled) / left);
  return (filled / drivingKPa + (air / (drivingKPa * drivingKPa)) * logarithm) / permeability;
}

/** Enough for any filling: the steps shrink quadratically. */
const MOST_STEPS = 100;

/**
 * Level after so many seconds of filling, at most the stop level.
 *
 * Newton's method. The time to a level grows ever faster with the level, so from a level that is too
 * high the steps come down to the answer without passing it; the flow at the start, kept up, gives
 * such a level.
 */
export function levelAfter(figures: TankFigures, fromL: number, seconds: number): number {
  const { stopL, shellL, air, drivingKPa, permeability } = figures;
  if (seconds <= 0 || fromL >= stopL) return fromL;
  if (refillSeconds(figures, fromL, stopL) <= seconds) return stopL;
  const flowAt = (level: number): number => permeability * (drivingKPa - air / (shellL - level));
  let level = Math.min(stopL, fromL + flowAt(fromL) * seconds);
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = level - (refillSeconds(figures, fromL, level) - seconds) * flowAt(level);
    if (!(next < level)) break;
    level = next;
  }
  return level;
}

function levelIn(value: number, shellL: number, name: string): number {
  return checkNumber(name, value, {
    holds: (litres) => litres >= 0 && litres < shellL,
    words: `litres from 0 to below the shell, ${shellL}`,
  });
}
