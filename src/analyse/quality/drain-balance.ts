import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace } from '../../model/index.ts';
import { fitDrain } from '../drain-fit.ts';
import { type EventSamples, eventSamples } from './event-samples.ts';
import type { SampleResults } from './sample-results.ts';
import { firstNames, shortNumber } from './short-number.ts';

/** What passes a membrane or stays behind it and neither reacts, gases out nor sticks. */
const CONSERVED = [
  'conductivity',
  'total-dissolved-solids',
  'calcium',
  'magnesium',
  'total-hardness',
  'sodium',
  'potassium',
  'strontium',
  'barium',
  'chloride',
  'sulfate',
  'nitrate',
  'fluoride',
  'bromide',
  'silica',
  'total-alkalinity',
];

/** A feed nearer to its limit is too uncertain to balance. */
const CLEAR_OF_LIMIT = 5;

/** Two waters and a volume ratio; only from two analytes on is the sample doubted as a whole. */
const MANY = 2;

/**
 * Mass balance of a device while producing: what the feed brings leaves with product and drain,
 * `feed x (1 + ratio) = product + ratio x drain`, with the drain ratio measured in drain-runs.csv.
 *
 * A drain sample that does not fit was taken at another time, belongs to another device, or was
 * exchanged.
 */
export function drainBalanceFindings(view: SampleResults): Finding[] {
  if (!view.samples.some(({ values }) => values.position === 'drain')) return [];
  return eventSamples(view).flatMap((group) => {
    const feed = group.feeds[0];
    const product = group.products[0];
    if (group.drains.length === 0 || feed === undefined || product === undefined) return [];
    const { fit } = fitDrain(view.bench, group.device, group.variant);
    if (fit === null || fit.ratio <= 0) return [];
    return group.drains.flatMap((drain) =>
      balance(view, group, { feed, product, drain }, fit.ratio),
    );
  });
}

interface Trio {
  readonly feed: number;
  readonly product: number;
  readonly drain: number;
}

function balance(view: SampleResults, group: EventSamples, trio: Trio, ratio: number): Finding[] {
  const row = view.samples[trio.drain];
  const off: { readonly index: number; readonly words: string }[] = [];
  let compared = 0;
  for (const key of CONSERVED) {
    const words = imbalance(view, trio, key, ratio);
    if (words === null) continue;
    compared += 1;
    if (words.text !== '') off.push({ index: words.index, words: words.text });
  }
  if (row === undefined || off.length === 0) return [];
  if (off.length >= MANY && 2 * off.length > compared) {
    return [
      finding(
        'drain-balance-off',
        `feed, product and drain of ${group.device} do not balance at the measured drain ratio of ` +
          `${shortNumber(ratio)}: ${firstNames(
            off.map(({ words }) => words),
            2,
          )}`,
        'check that the drain was caught while producing, and that no bottles were exchanged',
        cellPlace(row, 'sample'),
      ),
    ];
  }
  return off.map(({ index, words }) =>
    finding(
      'drain-balance-off',
      `the drain of ${group.device} does not balance: ${words}`,
      'ask the lab to run this analyte again in feed and drain',
      view.place(index),
    ),
  );
}

/** How one analyte misses the balance; empty text when it fits, null when it cannot be computed. */
function imbalance(
  view: SampleResults,
  trio: Trio,
  key: string,
  ratio: number,
): { readonly index: number; readonly text: string } | null {
  const analyte = view.analyteNamed(key);
  const feed = view.find(trio.feed, analyte);
  const product = view.find(trio.product, analyte);
  const drain = view.find(trio.drain, analyte);
  if (feed === -1 || product === -1 || drain === -1) return null;
  const [inFeed, inDrain] = [view.value(feed), view.value(drain)];
  const inProduct = view.interval(product);
  if (inFeed === null || inDrain === null || inProduct === null) return null;
  if (inFeed < CLEAR_OF_LIMIT * (view.result(feed).rl ?? 0)) return null;
  const allowed = view.bench.settings.quality.drain_balance / 100;
  const low = inFeed + (inFeed - inProduct.high) / ratio;
  const high = inFeed + (inFeed - inProduct.low) / ratio;
  const isFitting = inDrain >= low * (1 - allowed) && inDrain <= high * (1 + allowed);
  const { name, unit } = view.analyte(drain);
  return {
    index: drain,
    text: isFitting
      ? ''
      : `${name} should be near ${shortNumber((low + high) / 2)} ${unit} and is ${shortNumber(inDrain)}`,
  };
}
