import type { ReductionSummary } from '../../compare/index.ts';
import type { LevelVerdict, ReductionOutcome, ReductionRow } from '../../model/index.ts';
import {
  type AnalyteFacts,
  type AnalyteFeed,
  type DeviceReduction,
  isTelling,
} from './analyte-facts.ts';
import { analyteWords } from './analyte-words.ts';
import { estimate, levelPiece, lowerBound, number, range, sidePiece } from './figures.ts';
import { listed, markup, NOTHING, type Piece, quoted, say } from './piece.ts';
import { devicePhrase, namesOf, type Subject } from './subjects.ts';

interface Told extends DeviceReduction {
  readonly summary: ReductionSummary;
}

/** Devices by outcome; what was not tested is apart. */
function told(facts: AnalyteFacts, outcome: ReductionOutcome): Told[] {
  return facts.devices.flatMap(({ subject, summary }) =>
    summary?.outcome === outcome ? { subject, summary } : [],
  );
}

/** Devices whose product of this analyte was tested against a feed. */
export function testedSubjects(facts: AnalyteFacts): Subject[] {
  return facts.devices.flatMap(({ subject, summary }) =>
    summary === null || summary.outcome === 'untested' ? [] : subject,
  );
}

/** `2.1 ug/L (july) and 1.8 ug/L (august)`. */
export function feedPhrase(
  facts: AnalyteFacts,
  feeds: readonly AnalyteFeed[] = facts.feeds,
): Piece {
  const { key, unit } = facts.analyte;
  return listed(
    feeds.map((feed) => {
      const spiked = feed.kind === 'spiked' ? markup(', spiked') : NOTHING;
      const side = sidePiece(`${key}.feed.${feed.event}`, feed.side, unit);
      return say`${side} (${feed.event}${spiked})`;
    }),
  );
}

/**
 * What the devices did to an analyte, grouped by outcome, the largest group first. Each sentence
 * carries its figures; a bound is stated as a bound.
 */
export function outcomeSentences(facts: AnalyteFacts): Piece[] {
  const all = testedSubjects(facts);
  const sentences = [
    { devices: told(facts, 'at-least').filter(isNotDetected), words: atLeastSentence },
    {
      devices: told(facts, 'at-least').filter((each) => !isNotDetected(each)),
      words: aboveRangeSentence,
    },
    { devices: told(facts, 'between'), words: betweenSentence },
    { devices: told(facts, 'measured'), words: measuredSentence },
    { devices: told(facts, 'not-shown'), words: notShownSentence },
    { devices: told(facts, 'untestable'), words: untestableSentence },
    { devices: told(facts, 'rise'), words: riseSentence },
  ];
  const ordered = sentences
    .filter(({ devices }) => devices.length > 0)
    .sort((a, b) => b.devices.length - a.devices.length)
    .map(({ devices, words }) => words(facts.analyte.key, devices, all));
  const untested = facts.devices.length - all.length;
  const left = facts.devices.flatMap(({ subject }) => (all.includes(subject) ? [] : subject));
  return untested === 0 || all.length === 0
    ? ordered
    : [
        ...ordered,
        say`Not tested: ${devicePhrase(`${facts.analyte.key}.untested`, left, subjectsOf(facts), 'shown')}.`,
      ];
}

function subjectsOf(facts: AnalyteFacts): Subject[] {
  return facts.devices.map(({ subject }) => subject);
}

type Words = (key: string, devices: readonly Told[], all: readonly Subject[]) => Piece;

const who = (key: string, devices: readonly Told[], all: readonly Subject[]): Piece =>
  devicePhrase(
    key,
    devices.map(({ subject }) => subject),
    all,
  );

const lowestLow = (devices: readonly Told[]): number | null =>
  devices.reduce<number | null>((low, { summary }) => {
    if (summary.low === null) return null;
    return low === null ? null : Math.min(low, summary.low);
  }, Number.POSITIVE_INFINITY);

const atLeastSentence: Words = (key, devices, all) => {
  const bound = boundPhrase(`${key}.at-least`, devices);
  const limits = limitPhrase(key, devices);
  return say`Not detected in the product of ${who(`${key}.not-detected`, devices, all)}${limits}${bound}.`;
};

/** The feed is known from below only, so the product may be any figure. */
const aboveRangeSentence: Words = (key, devices, all) =>
  say`With a feed above the range of the method, ${who(`${key}.above-range`, devices, all)}${boundPhrase(`${key}.above-range`, devices)}.`;

function boundPhrase(key: string, devices: readonly Told[]): Piece {
  const low = lowestLow(devices);
  if (low === null || !Number.isFinite(low)) return NOTHING;
  return say`: reduced by at least ${lowerBound(key, low)}`;
}

function isNotDetected({ summary }: Told): boolean {
  return summary.facts.every(({ row }) => row.product.low === 0);
}

/** ` (reporting limit 0.5 ug/L)`: what bounds the products that were not detected. */
function limitPhrase(key: string, devices: readonly Told[]): Piece {
  const rows = devices.flatMap(({ summary }) => summary.facts.map(({ row }) => row));
  const bounded = rows.filter((row) => row.product.low === 0 && row.product.high !== null);
  const limits = [...new Set(bounded.map((row) => row.product.high ?? 0))].sort((a, b) => a - b);
  const [first] = bounded;
  const lowest = limits[0];
  const highest = limits.at(-1);
  if (first === undefined || lowest === undefined || highest === undefined) return NOTHING;
  const isOfTubes = first.product.method?.includes('limits of the tubes') === true;
  const name = isOfTubes
    ? 'upper limit'
    : first.reduction.bound_limit === 'detection'
      ? 'detection limit'
      : 'reporting limit';
  const low = number(`${key}.limit`, lowest, first.unit);
  return lowest === highest
    ? say` (${markup(name)} ${low} ${first.unit})`
    : say` (${markup(name)}s from ${low} to ${number(`${key}.limit`, highest, first.unit)} ${first.unit})`;
}

const betweenSentence: Words = (key, devices, all) => {
  const highs = devices.map(({ summary }) => summary.high ?? 1);
  const low = lowestLow(devices);
  const high = Math.max(...highs);
  const bounds =
    low !== null && high >= 1
      ? say`at least ${lowerBound(`${key}.between`, low)}`
      : range(`${key}.between`, low, high);
  return say`Seen and not fully quantified in the product of ${who(`${key}.between`, devices, all)}: reduced by ${bounds}.`;
};

const measuredSentence: Words = (key, devices, all) => {
  const ordered = [...devices].sort(
    (a, b) => (a.summary.estimate ?? 0) - (b.summary.estimate ?? 0),
  );
  const text = (one: Told): Piece =>
    say`${estimate(`${key}.measured`, one.summary)} (${one.subject.name})`;
  const [lowest] = ordered;
  const highest = ordered.at(-1);
  if (lowest === undefined || highest === undefined) return NOTHING;
  if (ordered.length <= 3) return say`Measured reduction: ${listed(ordered.map(text))}.`;
  return say`Measured in the product of ${who(`${key}.measured`, devices, all)}: reductions from ${text(lowest)} to ${text(highest)}.`;
};

const notShownSentence: Words = (key, devices, all) =>
  say`No reduction shown by ${who(`${key}.not-shown`, devices, all)}.`;

const untestableSentence: Words = (key, devices, all) =>
  say`The feed held too little to show a reduction by ${who(`${key}.untestable`, devices, all)}.`;

const riseSentence: Words = (_key, devices) =>
  say`A rise in the product of ${namesOf(devices.map(({ subject }) => subject))}: see [rises](#rises-and-open-points).`;

/**
 * The products against the reference levels that any of them is above or does not decide, levels
 * with the same products in one sentence. Goals of zero are left to their own paragraph.
 */
export function levelSentences(facts: AnalyteFacts): Piece[] {
  const products = facts.devices.flatMap(({ subject, summary }) =>
    (summary?.facts ?? []).map(({ row }) => ({ subject, row })),
  );
  return (['above', 'cannot-say'] as const).flatMap((verdict) => {
    const groups = new Map<string, { levels: LevelVerdict[]; products: typeof products }>();
    const levels = new Map(
      products.flatMap(({ row }) => row.reference_levels).map((level) => [levelKey(level), level]),
    );
    for (const [key, level] of levels) {
      const found = products.filter(({ row }) =>
        row.reference_levels.some((own) => levelKey(own) === key && own.verdict === verdict),
      );
      if (found.length === 0 || !isTelling({ ...level, verdict })) continue;
      const group = JSON.stringify(found.map(({ row }) => [row.device, row.event]));
      const known = groups.get(group) ?? { levels: [], products: found };
      groups.set(group, known);
      known.levels.push(level);
    }
    return [...groups.values()].map(({ levels: own, products: found }) => {
      const named = listed(own.map(levelPiece));
      const who = productPhrase(facts, found);
      return verdict === 'above'
        ? say`Above the ${named}: the product of ${who}.`
        : say`The lab’s limit leaves open whether the product of ${who} lies within the ${named}.`;
    });
  });
}

const PRODUCTS_NAMED = 4;

/** Products with their figures where they are few, else how many of the devices. */
function productPhrase(
  facts: AnalyteFacts,
  products: readonly { readonly subject: Subject; readonly row: ReductionRow }[],
): Piece {
  const { key, unit } = facts.analyte;
  if (products.length <= PRODUCTS_NAMED) {
    return listed(
      products.map(({ subject, row }) => {
        const side = sidePiece(`${key}.product.${row.event}`, row.product, unit);
        return say`${subject.name} (${side}, ${row.event})`;
      }),
    );
  }
  const subjects = [...new Set(products.map(({ subject }) => subject))];
  return devicePhrase(`${key}.level`, subjects, testedSubjects(facts));
}

function levelKey(level: LevelVerdict): string {
  return JSON.stringify([level.jurisdiction, level.kind, level.low, level.value, level.unit]);
}

/** `lead (2.1 ug/L)`, for lists of analytes; the first feed stands for the rest. */
export function analyteWithFeed(facts: AnalyteFacts): Piece {
  const [feed] = facts.feeds;
  const name = quoted(analyteWords(facts.analyte));
  if (feed === undefined) return name;
  const { key, unit } = facts.analyte;
  return say`${name} (${sidePiece(`${key}.feed.${feed.event}`, feed.side, unit)})`;
}

export function analyteNames(items: readonly AnalyteFacts[]): Piece {
  return listed(items.map(({ analyte }) => quoted(analyteWords(analyte))));
}
