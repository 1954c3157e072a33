import type { Bench, Interval, MineralRow } from '../../model/index.ts';
import type { Side } from '../reduction-side.ts';
import type { MeasuredWater } from './mineral-waters.ts';
import { isComparable, restsOnAssumed, sideLimits } from './side-limits.ts';

/** What a figure of a product is held against, and what was compared. */
export interface Comparison {
  readonly against: NonNullable<MineralRow['against']>;
  readonly method: string;
  readonly limits: Interval;
  /** Without uncertainty: the range of the figures as reported. */
  readonly interval: Interval;
  readonly estimate: number | null;
  readonly isAssumed: boolean;
}

/** The waters a product of a device with a mineral stage can be held against. */
export interface ComparisonWaters {
  readonly stage: MeasuredWater | null;
  readonly feed: MeasuredWater | null;
  /** Products of the same event from devices of the same technology without a mineral stage. */
  readonly others: readonly MeasuredWater[];
  readonly technology: string;
}

function deviceOf(bench: Bench, device: string | null) {
  return bench.tables.devices.find(({ values }) => values.device === device)?.values;
}

/**
 * The feed, the water before the stage and the other devices' products of one event.
 *
 * A device that leaves `mineral_stage` blank is not known to lack one, so it is not among the others.
 */
export function comparisonWaters(
  bench: Bench,
  waters: readonly MeasuredWater[],
  product: MeasuredWater,
): ComparisonWaters {
  const technology = deviceOf(bench, product.device)?.technology ?? '';
  const same = waters.filter(({ event, kind }) => event === product.event && kind === product.kind);
  const feeds = same.filter(({ position }) => position === 'feed');
  return {
    stage:
      same.find(
        ({ position, device, variant }) =>
          position === 'stage' && device === product.device && variant === product.variant,
      ) ?? null,
    feed:
      feeds.find(({ device }) => device === product.device) ??
      feeds.find(({ device }) => device === null) ??
      null,
    others: same.filter(({ position, device }) => {
      const row = deviceOf(bench, device);
      return position === 'product' && row?.mineral_stage === 'no' && row.technology === technology;
    }),
    technology,
  };
}

/** All that an analyte of a product can be held against, the water before the stage first. */
export function comparisonsOf(
  bench: Bench,
  { stage, feed, others, technology }: ComparisonWaters,
  key: string,
  product: Side,
): Comparison[] {
  const { confidence } = bench.settings;
  const sideOf = (water: MeasuredWater | null): Side[] => {
    const side = water?.sides.get(key)?.side;
    return side !== undefined && isComparable(bench, product, side) ? [side] : [];
  };
  const single = (against: 'stage' | 'feed', method: string, side: Side): Comparison => ({
    against,
    method,
    limits: sideLimits(side, confidence),
    interval: side.interval,
    estimate: side.estimate,
    isAssumed: restsOnAssumed(side, product),
  });
  const sides = others.flatMap(sideOf);
  const among: Comparison[] =
    sides.length === 0
      ? []
      : [
          {
            against: 'devices-without-mineral-stage',
            method: `range of ${sides.length} products of ${technology} devices without a mineral stage at the event`,
            limits: spanOf(sides.map((side) => sideLimits(side, confidence))),
            interval: spanOf(sides.map(({ interval }) => interval)),
            estimate: sides.length === 1 ? (sides[0]?.estimate ?? null) : null,
            isAssumed: restsOnAssumed(...sides, product),
          },
        ];
  return [
    ...sideOf(stage).map((side) => single('stage', 'water before the mineral stage', side)),
    ...among,
    ...sideOf(feed).map((side) => single('feed', 'feed of the event', side)),
  ];
}

function spanOf(all: readonly Interval[]): Interval {
  return {
    low: Math.min(...all.map(({ low }) => low)),
    high: Math.max(...all.map(({ high }) => high)),
  };
}
