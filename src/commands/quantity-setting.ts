import { BenchError } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import { readQuantity } from '../normalise/index.ts';
import type { Dimension } from '../reference/index.ts';

/**
 * A quantity written in a setting or on the command line, in its core unit.
 *
 * @param where how the user knows it: `--pour`, `feed.window`
 * @throws {BenchError} with the problem of the text
 */
export function quantitySetting(
  bench: Bench,
  text: string,
  dimension: Dimension,
  where: string,
): number {
  const reading = readQuantity(text, {
    dimensions: [dimension],
    headerUnit: null,
    measures: bench.settings.measures ?? null,
    isStopwatch: false,
  });
  if ('problem' in reading) {
    throw new BenchError(reading.problem, `${where}: ${reading.message}`, reading.remedy);
  }
  if (!(reading.value.value > 0)) {
    throw new BenchError(
      'quantity-zero',
      `${where}: "${text}" is not above zero`,
      `write a ${dimension} above zero`,
    );
  }
  return reading.value.value;
}

/** The window in which a feed before or after serves a product, seconds. */
export function feedWindowS(bench: Bench): number {
  return quantitySetting(bench, bench.settings.feed.window, 'time', 'feed.window in bench.json');
}
