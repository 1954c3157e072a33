import { randomStream } from '../../simulate/index.ts';
import type { PlannedSample } from './sample-codes.ts';

/**
 * The order in which samples are taken, event by event: the feed first, so that a lost day still
 * has one; everything else, duplicates of the feed among them, in random order, so that a drift of
 * the tap water over the day does not favour a device.
 *
 * Fisher-Yates shuffle with one random stream an event.
 * @param seed the same seed gives the same order
 * @returns the same samples; events in the order in which they appear
 */
export function samplingOrder(samples: readonly PlannedSample[], seed: number): PlannedSample[] {
  const events = [...new Set(samples.map(({ event }) => event))];
  return events.flatMap((event, stream) => {
    const own = samples.filter((sample) => sample.event === event);
    const isFirst = ({ position, of }: PlannedSample) => position === 'feed' && of === null;
    return [
      ...own.filter(isFirst),
      ...shuffled(
        own.filter((sample) => !isFirst(sample)),
        randomStream(seed, stream).nextFraction,
      ),
    ];
  });
}

function shuffled<T>(items: readonly T[], fraction: () => number): T[] {
  const left = [...items];
  const drawn: T[] = [];
  while (left.length > 0) drawn.push(...left.splice(Math.floor(fraction() * left.length), 1));
  return drawn;
}
