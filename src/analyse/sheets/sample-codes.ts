import { type Bench, STANDARD, type WallTime } from '../../model/index.ts';
import { randomStream } from '../../simulate/index.ts';

/** A sample to be taken. */
export interface PlannedSample {
  readonly sample: string;
  readonly proposed: boolean;
  readonly position: string;
  readonly of: string | null;
  readonly device: string | null;
  readonly variant: string | null;
  readonly event: string | null;
  readonly runFirst: string | null;
  readonly idleBefore: string | null;
  readonly takenAt: WallTime | null;
}

/** A device in one state of its settings. */
export interface DeviceState {
  readonly device: string;
  readonly variant: string;
}

const EVENT = 'day-1';

/** Streams for the order count from 0 upwards; the pick of a duplicate has its own. */
const PICK_STREAM = 1_000_003;

/**
 * The samples of samples.csv that are not void; without any, a proposal: one feed, one product of
 * every device in every state, a duplicate of the feed, a duplicate of one product picked by the
 * seed, and a blank.
 */
export function sampleCodes(
  bench: Bench,
  states: readonly DeviceState[],
  seed: number,
): PlannedSample[] {
  const { samples } = bench.tables;
  if (samples.length === 0) return proposed(states, seed);
  return samples.flatMap(({ values }) =>
    values.status === 'void'
      ? []
      : {
          sample: values.sample,
          proposed: false,
          position: values.position,
          of: values.of,
          device: values.device,
          variant: values.device === null ? null : (values.variant ?? STANDARD),
          event: values.event,
          runFirst: values.run_first?.text ?? null,
          idleBefore: values.idle_before?.text ?? null,
          takenAt: values.taken_at,
        },
  );
}

function proposed(states: readonly DeviceState[], seed: number): PlannedSample[] {
  const plan = (sample: string, position: string, more: Partial<PlannedSample> = {}) => ({
    sample: `${EVENT}-${sample}`,
    proposed: true,
    position,
    of: null,
    device: null,
    variant: null,
    event: EVENT,
    runFirst: null,
    idleBefore: null,
    takenAt: null,
    ...more,
  });
  const products = states.map(({ device, variant }) =>
    plan(variant === STANDARD ? device : `${device}-${variant}`, 'product', { device, variant }),
  );
  const pick = Math.floor(randomStream(seed, PICK_STREAM).nextFraction() * products.length);
  const picked = products[pick];
  return [
    plan('feed', 'feed'),
    plan('feed-dup', 'feed', { of: `${EVENT}-feed` }),
    ...products,
    ...(picked === undefined
      ? []
      : [{ ...picked, sample: `${picked.sample}-dup`, of: picked.sample }]),
    plan('blank', 'blank'),
  ];
}
