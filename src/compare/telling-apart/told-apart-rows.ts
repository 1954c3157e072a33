import type { UncertainSide } from '../../analyse/index.ts';
import type { ToldApartGroupRow, ToldApartRow } from '../../model/index.ts';
import type { Margin } from './compare-pair.ts';
import type { ComparedFigure } from './passage-interval.ts';
import type { AnalyteComparison, JudgedPair } from './tell-apart.ts';

const NOTHING = { low: null, estimate: null, high: null } as const;

/** Every pair of an analyte and kind of feed as it is published. */
export function toldApartRows(
  { analyte, kind, pairs, comparisons, adjustedConfidence }: AnalyteComparison,
  { confidence, margin }: { readonly confidence: number; readonly margin: Margin },
): ToldApartRow[] {
  return pairs.map((pair): ToldApartRow => {
    const { a, b, shared, passages } = pair;
    return {
      analyte: analyte.key,
      kind,
      unit: analyte.unit,
      device_a: a.device,
      variant_a: a.variant,
      device_b: b.device,
      variant_b: b.variant,
      verdict: pair.verdict,
      less_passes: pair.lower,
      firm: pair.firm,
      reason: pair.reason,
      events: shared?.events.map(({ event }) => event) ?? [],
      product_a: published(shared?.productA),
      product_b: published(shared?.productB),
      product_difference: ends(passages?.product),
      passage_difference: ends(passages?.difference),
      passage_ratio: ends(passages?.ratio),
      confidence,
      comparisons,
      adjusted_confidence: shared === null ? null : adjustedConfidence,
      margin: publishedMargin(margin),
      within_margin: pair.isWithinMargin,
    };
  });
}

/** The groups not told apart of an analyte and kind of feed. */
export function toldApartGroupRows(
  { analyte, kind, devices, pairs, groups, comparisons }: AnalyteComparison,
  { confidence }: { readonly confidence: number },
): ToldApartGroupRow[] {
  return groups.map((group, at) => {
    const members = group.flatMap((member) => devices[member] ?? []);
    const isWithin = ({ a, b }: JudgedPair): boolean => members.includes(a) && members.includes(b);
    return {
      analyte: analyte.key,
      kind,
      group: at + 1,
      groups: groups.length,
      members: members.map(({ device, variant }) => ({ device, variant })),
      not_comparable: pairs.filter((pair) => pair.verdict === 'not-comparable' && isWithin(pair))
        .length,
      confidence,
      comparisons,
    };
  });
}

function published(side: UncertainSide | undefined): ToldApartRow['product_a'] {
  if (side === undefined) return NOTHING;
  const { low, high } = side.interval;
  return { low, estimate: side.estimate, high: Number.isFinite(high) ? high : null };
}

function ends(figure: ComparedFigure | undefined): ToldApartRow['product_a'] {
  return figure ?? NOTHING;
}

function publishedMargin({ kind, value }: Margin): ToldApartRow['margin'] {
  return kind === 'points'
    ? { of: 'passage_difference', low: -value, high: value }
    : { of: 'passage_ratio', low: 1 / value, high: value };
}
