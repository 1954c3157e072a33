import type { Bench, Interval, MineralRow } from '../../model/index.ts';
import type { Side } from '../reduction-side.ts';
import { type Comparison, type ComparisonWaters, comparisonsOf } from './comparison-waters.ts';
import { calciteOf, magnesiaOf } from './dissolved-stone.ts';
import type { RowFigure } from './mineral-row.ts';
import type { MeasuredWater } from './mineral-waters.ts';
import { sideLimits } from './side-limits.ts';

const GAINED = [
  'calcium',
  'magnesium',
  'sodium',
  'potassium',
  'total-hardness',
  'total-alkalinity',
  'total-dissolved-solids',
  'fluoride',
  'chloride',
  'sulfate',
] as const;

/** Stones a gain is told as, where all of it came from them. */
const STONES = {
  calcium: { quantity: 'calcite-dissolved', name: 'Calcite dissolved', basis: 'as CaCO3' },
  magnesium: { quantity: 'magnesia-dissolved', name: 'Magnesia dissolved', basis: 'as MgO' },
} as const;

/** What a mineral stage adds, over the water before it, over other devices and over the feed. */
export function gainFigures(
  bench: Bench,
  product: MeasuredWater,
  waters: ComparisonWaters,
): RowFigure[] {
  return GAINED.flatMap((key) => {
    const found = product.sides.get(key);
    if (found === undefined) return [];
    const { analyte, side } = found;
    const named = { name: analyte.name, unit: analyte.unit, basis: analyte.basis };
    return comparisonsOf(bench, waters, key, side).flatMap((comparison) => {
      const gain = gainOver(bench, side, comparison);
      const row: RowFigure = { group: 'gain', quantity: key, ...named, ...gain };
      return [row, ...stoneOf(key, row)];
    });
  });
}

function gainOver(bench: Bench, product: Side, comparison: Comparison) {
  const { confidence } = bench.settings;
  const limits = sideLimits(product, confidence);
  const interval: Interval = {
    low: limits.low - comparison.limits.high,
    high: limits.high - comparison.limits.low,
  };
  const isPoint = product.estimate !== null && comparison.estimate !== null;
  return {
    against: comparison.against,
    interval,
    estimate: isPoint ? (product.estimate ?? 0) - (comparison.estimate ?? 0) : null,
    confidence: product.isDecisionBound ? null : confidence,
    class: interval.low > 0 ? 'gained' : interval.high < 0 ? 'lost' : 'not-told',
    method: `product less ${comparison.method}`,
    notes: comparison.isAssumed ? (['assumed-uncertainty'] as MineralRow['notes']) : [],
  } satisfies Partial<RowFigure>;
}

function stoneOf(key: string, gain: RowFigure): RowFigure[] {
  if (key !== 'calcium' && key !== 'magnesium') return [];
  if (gain.class !== 'gained' || gain.against === 'feed' || gain.interval === null) return [];
  const dissolve = key === 'calcium' ? calciteOf : magnesiaOf;
  const { low, high } = gain.interval;
  const estimate = gain.estimate ?? null;
  const used = dissolve(estimate ?? low).carbonDioxideUsedMgPerL;
  return [
    {
      ...gain,
      ...STONES[key],
      interval: { low: dissolve(low).stoneMgPerL, high: dissolve(high).stoneMgPerL },
      estimate: estimate === null ? null : dissolve(estimate).stoneMgPerL,
      method: `if all of the gain in ${key} came from it; it uses ${estimate === null ? 'at least ' : ''}${Number(used.toPrecision(2))} mg/L of carbon dioxide`,
    },
  ];
}
