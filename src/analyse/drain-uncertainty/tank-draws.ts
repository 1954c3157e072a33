import { BenchError } from '../../findings/index.ts';
import { randomStream, type StorageTank, tankLevels } from '../../simulate/index.ts';
import { normalQuantile } from '../../statistics/index.ts';
import type { DeviceTank } from '../tank/index.ts';
import { normals, streamNumber } from './named-streams.ts';
import type { TankUncertainty } from './tank-uncertainty.ts';

/** Uncertain figures of a tank, as the inputs of the answer name them. */
export const TANK_INPUTS = [
  'shell',
  'gauge',
  'precharge',
  'feed-pressure',
  'stop',
  'restart',
  'permeate-flow',
  'osmotic',
] as const;
export type TankInput = (typeof TANK_INPUTS)[number];

/**
 * The figures of a tank drawn many times. Tanks are as many as are played; a draw takes one after the
 * other in turn, and has a drain flow of its own, which moves nothing in time.
 */
export interface TankDraws {
  readonly tanks: readonly StorageTank[];
  /** What was drawn for each tank, in its own unit; of `osmotic` a factor. */
  readonly inputs: Readonly<Record<TankInput, Float64Array>>;
  /** Drain flow of each draw, as a multiple of the measured one. */
  readonly rejectFactor: Float64Array;
}

/** Least number of tanks that are played where there are as many draws. */
const LEAST_TANKS = 200;

/** How many tanks are played: whole rounds of the years, so that every year meets as many tanks. */
export function tankCount(draws: number, years: number): number {
  return Math.min(draws, years * Math.ceil(LEAST_TANKS / years));
}

/**
 * Draws the figures of a tank from what is open in them: each input at the middles of parts of equal
 * probability, in an order of its own.
 *
 * Pressures that cannot belong together are brought nearer to the measured ones by halves until they
 * do.
 * @param count tanks to play, see `tankCount`
 * Source: McKay, Beckman and Conover, A comparison of three methods for selecting values of input
 *   variables, Technometrics 21 (1979), 239: Latin hypercube sampling (from memory).
 */
export function tankDraws(
  { tank }: DeviceTank,
  device: string,
  open: TankUncertainty,
  of: { readonly draws: number; readonly count: number; readonly seed: number },
): TankDraws {
  const strata = (name: string): Float64Array => {
    const { nextFraction } = randomStream(of.seed, streamNumber(`tank ${name} of ${device}`));
    const parts = Float64Array.from({ length: of.count }, (_, at) => (at + 0.5) / of.count);
    for (let at = of.count - 1; at > 0; at--) {
      const other = Math.floor(nextFraction() * (at + 1));
      const part = parts[at] as number;
      parts[at] = parts[other] as number;
      parts[other] = part;
    }
    return parts;
  };
  const normal = (name: TankInput, middle: number, sd: number): Float64Array =>
    strata(name).map((part) => middle + sd * normalQuantile(part));
  const { low, high } = open.osmotic;
  const inputs: Record<TankInput, Float64Array> = {
    shell: normal('shell', tank.shellL, open.shellL),
    gauge: normal('gauge', 0, open.gaugeKPa),
    precharge: normal('precharge', tank.prechargeKPa, open.readingKPa),
    'feed-pressure': normal('feed-pressure', tank.feedKPa, open.readingKPa),
    stop: normal('stop', tank.stopKPa, open.readingKPa),
    restart: normal('restart', tank.restartKPa, open.readingKPa),
    'permeate-flow': normal('permeate-flow', tank.openFlowLPerMin, open.permeateLPerMin),
    osmotic: strata('osmotic').map((part) => low + (high - low) * part),
  };
  const tanks = Array.from({ length: of.count }, (_, at) => workable(tank, inputs, at));
  const next = normals(randomStream(of.seed, streamNumber(`tank reject-flow of ${device}`)));
  const relative = tank.rejectFlowLPerMin > 0 ? open.rejectLPerMin / tank.rejectFlowLPerMin : 0;
  const rejectFactor = Float64Array.from({ length: of.draws }, () =>
    Math.max(0, 1 + relative * next()),
  );
  return { tanks, inputs, rejectFactor };
}

/** The measured figures of a tank as so many draws. */
export function measuredTank({ tank }: DeviceTank, count: number): TankDraws {
  const none = new Float64Array(count);
  return {
    tanks: Array<StorageTank>(count).fill(tank),
    inputs: {
      shell: none,
      gauge: none,
      precharge: none,
      'feed-pressure': none,
      stop: none,
      restart: none,
      'permeate-flow': none,
      osmotic: none,
    },
    rejectFactor: new Float64Array(count).fill(1),
  };
}

/** Halvings after which what is left of an error is nothing. */
const MOST_HALVINGS = 30;

function workable(
  tank: StorageTank,
  inputs: Readonly<Record<TankInput, Float64Array>>,
  at: number,
): StorageTank {
  const drawn = (name: TankInput): number => inputs[name][at] as number;
  for (let halving = 0; halving < MOST_HALVINGS; halving++) {
    const part = 2 ** -halving;
    const near = (measured: number, value: number): number => measured + (value - measured) * part;
    const pressure = (measured: number, name: TankInput): number =>
      near(measured, drawn(name) + drawn('gauge'));
    const tried: StorageTank = {
      ...tank,
      shellL: near(tank.shellL, drawn('shell')),
      prechargeKPa: pressure(tank.prechargeKPa, 'precharge'),
      feedKPa: pressure(tank.feedKPa, 'feed-pressure'),
      stopKPa: pressure(tank.stopKPa, 'stop'),
      restartKPa: pressure(tank.restartKPa, 'restart'),
      openFlowLPerMin: near(tank.openFlowLPerMin, drawn('permeate-flow')),
      ...(tank.osmoticKPa === undefined
        ? {}
        : { osmoticKPa: tank.osmoticKPa * near(1, drawn('osmotic')) }),
    };
    if (canWork(tried)) return tried;
  }
  return tank;
}

function canWork(tank: StorageTank): boolean {
  try {
    tankLevels(tank);
    return true;
  } catch (error) {
    if (!(error instanceof BenchError)) throw error;
    return false;
  }
}
