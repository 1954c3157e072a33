import type { Bench, Interval, MineralRow, ReductionRow } from '../../model/index.ts';
import { IONS, type Ion, milliequivalents } from '../chemistry/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import type { Side } from '../reduction-side.ts';
import { type ComparisonWaters, comparisonsOf } from './comparison-waters.ts';
import type { RowFigure } from './mineral-row.ts';
import type { MeasuredWater } from './mineral-waters.ts';
import { isComparable, restsOnAssumed, sideLimits } from './side-limits.ts';
import { SOLIDS_MEASURES } from './solids-behind-stage.ts';

const PER_UNIT: Readonly<Record<string, number>> = { 'mg/L': 1, 'ug/L': 0.001 };

/** The fall in solids across a device with a mineral stage, said to be no rejection. */
export function solidsReductions(facts: readonly ReductionFact[]): RowFigure[] {
  return facts.flatMap(({ row, analyte, feed, product }): RowFigure[] => {
    if (!SOLIDS_MEASURES.includes(analyte.key) || feed === null || product === null) {
      return [];
    }
    return [
      {
        ...reductionFigure(row, 'reduction', analyte.name),
        method: 'product of the whole device, mineral stage included',
        notes: notesOf(['not-a-measure-of-rejection'], feed, product),
      },
    ];
  });
}

/** Solids in front of the mineral stage against the feed: what the device rejects, measured. */
export function stageRejections(bench: Bench, { stage, feed }: ComparisonWaters): RowFigure[] {
  if (stage === null || feed === null) return [];
  return SOLIDS_MEASURES.flatMap((key): RowFigure[] => {
    const before = stage.sides.get(key);
    const from = feed.sides.get(key)?.side;
    if (before === undefined || from === undefined) return [];
    if (!isComparable(bench, before.side, from)) return [];
    const { confidence } = bench.settings;
    const interval = shareKept([
      { feed: sideLimits(from, confidence), product: sideLimits(before.side, confidence) },
    ]);
    const isPoint = before.side.estimate !== null && from.estimate !== null;
    return [
      {
        group: 'rejection',
        quantity: key,
        name: before.analyte.name,
        against: 'feed',
        unit: '1',
        basis: null,
        interval,
        estimate: isPoint ? 1 - (before.side.estimate ?? 0) / (from.estimate ?? 1) : null,
        confidence,
        method: 'water before the mineral stage against the feed; limits of both sides',
        notes: notesOf([], from, before.side),
      },
    ];
  });
}

interface ChosenIon {
  readonly ion: Ion;
  readonly fact: ReductionFact;
  readonly feed: Side;
  readonly product: Side;
  readonly perUnit: number;
  /** What it was held against. */
  readonly basis: string;
}

/** Particles rather than ions in most tap waters. */
const NOT_COUNTED: readonly Ion[] = ['iron', 'manganese'];

/**
 * Rejection from the ions that the mineral stage does not add.
 *
 * An ion is taken where the feed holds enough of it and the product is not shown to lie above the
 * water before the stage; without such a sample, above the products of other devices of the
 * technology without a stage. What a stage adds unseen makes the rejection look smaller, never larger.
 * @param facts reductions of the device, variant and event
 */
export function ionRejections(
  bench: Bench,
  waters: ComparisonWaters,
  product: MeasuredWater,
  facts: readonly ReductionFact[],
): RowFigure[] {
  const chosen: ChosenIon[] = [];
  const added: string[] = [];
  const alone: string[] = [];
  for (const ion of IONS) {
    const fact = facts.find(({ analyte }) => analyte.key === ion);
    const side = product.sides.get(ion)?.side;
    if (fact === undefined || side === undefined || NOT_COUNTED.includes(ion)) continue;
    const perUnit = PER_UNIT[fact.analyte.unit];
    if (fact.feed === null || fact.product === null || perUnit === undefined) continue;
    if (fact.row.outcome === 'untestable' || !(fact.feed.interval.low > 0)) continue;
    const comparison = comparisonsOf(bench, waters, ion, side).find(
      ({ against }) => against !== 'feed',
    );
    if (comparison === undefined) {
      alone.push(ionWord(fact));
      continue;
    }
    if (sideLimits(side, bench.settings.confidence).low > comparison.limits.high) {
      added.push(ionWord(fact));
      continue;
    }
    const { feed, product: out } = fact;
    chosen.push({ ion, fact, feed, product: out, perUnit, basis: comparison.method });
  }
  const left = [
    ...(added.length === 0 ? [] : [`added by the stage: ${added.join(', ')}`]),
    ...(alone.length === 0 ? [] : [`nothing to compare with: ${alone.join(', ')}`]),
  ].join('; ');
  return [
    ...chosen.map(
      ({ fact, feed, product: out, basis }): RowFigure => ({
        ...reductionFigure(fact.row, 'rejection', fact.analyte.name),
        method: `not shown to lie above the ${basis}`,
        notes: notesOf([], feed, out),
      }),
    ),
    combined(bench, chosen, left),
  ];
}

/** `Alkalinity, total` as `alkalinity`. */
function ionWord({ analyte }: ReductionFact): string {
  return (analyte.name.split(',')[0] ?? analyte.key).toLowerCase();
}

/** `sodium, chloride (against the water before the mineral stage)`, by what they were held against. */
function namesByBasis(chosen: readonly ChosenIon[]): string {
  const bases = [...new Set(chosen.map(({ basis }) => basis))];
  return bases
    .map((basis) => {
      const names = chosen.filter((one) => one.basis === basis).map(({ fact }) => ionWord(fact));
      return `${names.join(', ')} (against the ${basis})`;
    })
    .join('; ');
}

/** Equivalents of all chosen ions together. */
function combined(bench: Bench, chosen: readonly ChosenIon[], left: string): RowFigure {
  const row = {
    group: 'rejection',
    quantity: 'ions-not-added',
    name: 'Ions the mineral stage does not add',
    against: 'feed',
    unit: '1',
    basis: null,
  } as const;
  const ending = left === '' ? '' : `; ${left}`;
  if (chosen.length === 0) {
    return { ...row, interval: null, reason: `no ion to estimate it from${ending}` };
  }
  const { confidence } = bench.settings;
  const meq = ({ ion, perUnit }: ChosenIon, { low, high }: Interval): Interval => ({
    low: milliequivalents(ion, low * perUnit),
    high: milliequivalents(ion, high * perUnit),
  });
  const pairs = chosen.map((one) => ({
    feed: meq(one, sideLimits(one.feed, confidence)),
    product: meq(one, sideLimits(one.product, confidence)),
  }));
  const isPoint = chosen.every(
    ({ feed, product }) => feed.estimate !== null && product.estimate !== null,
  );
  const sumOf = (pick: (one: ChosenIon) => Side): number =>
    chosen.reduce(
      (sum, one) => sum + milliequivalents(one.ion, (pick(one).estimate ?? 0) * one.perUnit),
      0,
    );
  return {
    ...row,
    interval: shareKept(pairs),
    estimate: isPoint ? 1 - sumOf((one) => one.product) / sumOf((one) => one.feed) : null,
    confidence,
    method: `equivalents together, limits of all sides: ${namesByBasis(chosen)}${ending}`,
    notes: notesOf([], ...chosen.flatMap(({ feed, product }) => [feed, product])),
  };
}

/** 1 less the ratio of the sums, by interval arithmetic. */
function shareKept(
  pairs: readonly { readonly feed: Interval; readonly product: Interval }[],
): Interval {
  const sum = (pick: (pair: (typeof pairs)[number]) => number): number =>
    pairs.reduce((total, pair) => total + pick(pair), 0);
  return {
    low: 1 - sum(({ product }) => product.high) / sum(({ feed }) => feed.low),
    high: 1 - sum(({ product }) => product.low) / sum(({ feed }) => feed.high),
  };
}

function reductionFigure(
  row: ReductionRow,
  group: 'reduction' | 'rejection',
  name: string,
): RowFigure {
  const { estimate, interval_low, interval_high, confidence } = row.reduction;
  return {
    group,
    quantity: row.analyte,
    name,
    against: 'feed',
    unit: '1',
    basis: null,
    interval: {
      low: interval_low ?? Number.NEGATIVE_INFINITY,
      high: interval_high ?? Number.POSITIVE_INFINITY,
    },
    estimate,
    confidence,
  };
}

function notesOf(
  notes: MineralRow['notes'],
  ...sides: readonly Side[]
): NonNullable<RowFigure['notes']> {
  return restsOnAssumed(...sides) ? [...notes, 'assumed-uncertainty'] : notes;
}
