import type { Interval } from '../../model/index.ts';
import { contentOf } from './content-figures.ts';
import { cornerRange } from './corner-range.ts';
import { guidanceVerdicts } from './guidance-verdicts.ts';
import { indexClass } from './index-classes.ts';
import { INDEX_KINDS, type IndexInput, type IndexKind } from './index-kinds.ts';
import type { RowFigure } from './mineral-row.ts';
import type { MeasuredWater } from './mineral-waters.ts';
import { strengthOf } from './water-ions.ts';

/**
 * Below these the logarithms rest on the last digit of the lab: calcium 1 mg/L, and the alkalinity
 * that much calcite would bring. Common practice, no source.
 */
const LEAST = { calcium: 1, alkalinity: 2.5, solids: 10 } as const;

/** Below this ionic strength, about 40 mg/L of dissolved solids, indices say little; no source. */
const DILUTE_MOL_PER_L = 0.001;

/** Smallest solids for which the logarithmic form agrees with its printed table. */
const TABLE_SOLIDS_MG_PER_L = 100;

/** The range of the equilibrium constants, degC. */
const TEMPERATURES = [0, 50] as const;

type Inputs = Readonly<Record<IndexInput, Interval | null>>;

interface RangeOrReason {
  readonly range: Interval | null;
  readonly reason: string | null;
}

const BELOW_RANGE = 'below range';

/**
 * Corrosion and scaling indices of a water; a figure that cannot be had is null with its reason.
 *
 * @returns none for a water in which none of their inputs but pH and temperature was measured
 */
export function indexFigures(water: MeasuredWater): RowFigure[] {
  const strength = strengthOf(water);
  const of = (key: string): Interval | null => contentOf(water, key)?.interval ?? null;
  const inputs: Inputs = {
    pH: of('ph'),
    temperature: of('temperature'),
    calcium: of('calcium'),
    alkalinity: of('total-alkalinity'),
    solids: of('total-dissolved-solids'),
    strength: strength?.interval ?? null,
    chloride: of('chloride'),
    sulfate: of('sulfate'),
  };
  const hasIons = [inputs.calcium, inputs.alkalinity, inputs.chloride, inputs.sulfate].some(
    (input) => input !== null,
  );
  if (!hasIons) return [];
  return INDEX_KINDS.map((kind) => indexFigure(water, inputs, kind, strength?.method ?? null));
}

function indexFigure(
  water: MeasuredWater,
  inputs: Inputs,
  kind: IndexKind,
  strengthMethod: string | null,
): RowFigure {
  const found = rangeOf(inputs, kind);
  const { range, reason } = found;
  const usesStrength = kind.needs.includes('strength') && strengthMethod !== null;
  const isPoint = range !== null && range.low === range.high;
  return {
    group: 'index',
    quantity: kind.quantity,
    name: kind.name,
    unit: kind.unit,
    basis: kind.basis,
    interval: range,
    estimate: isPoint ? range.low : null,
    class: range === null ? null : indexClass(kind.quantity, range, inputs.alkalinity),
    method: usesStrength ? `${kind.form}; ${strengthMethod}` : kind.form,
    reason,
    guidance: guidanceVerdicts(kind.quantity, range),
    notes: notesOf(water, inputs, kind, found),
  };
}

function rangeOf(inputs: Inputs, kind: IndexKind): RangeOrReason {
  const missing = kind.needs.filter((name) => inputs[name] === null);
  if (missing.length > 0) {
    return { range: null, reason: `no ${missing.map((name) => WORDS[name]).join(', no ')}` };
  }
  const box = kind.needs.flatMap((name) => inputs[name] ?? []);
  const unbounded = kind.needs.filter((name) => !Number.isFinite(inputs[name]?.high));
  if (unbounded.length > 0) {
    return {
      range: null,
      reason: `${unbounded.map((name) => WORDS[name]).join(', ')} above the range of the lab`,
    };
  }
  if (kind.ratio !== undefined) return ratioRange(box, kind.ratio);
  const low = kind.needs.flatMap((name) => tooLow(name, inputs[name]) ?? []);
  if (low.length > 0) return { range: null, reason: `${BELOW_RANGE}: ${low.join(', ')}` };
  const { temperature } = inputs;
  const [coldest, warmest] = TEMPERATURES;
  const isUsed = kind.needs.includes('temperature') && temperature !== null;
  if (isUsed && (temperature.low < coldest || temperature.high > warmest)) {
    return { range: null, reason: `temperature outside ${coldest} to ${warmest} degC` };
  }
  const range = cornerRange(box, kind.compute);
  return range === null
    ? { range, reason: 'no single range: the index turns within the bounds, or has no solution' }
    : { range, reason: null };
}

/** Low over high and high over low; without a lower bound of the divisor there is no upper end. */
function ratioRange(
  box: readonly Interval[],
  ratio: NonNullable<IndexKind['ratio']>,
): RangeOrReason {
  const range = ratio(box);
  if (Number.isNaN(range.low) || Number.isNaN(range.high)) {
    return { range: null, reason: 'neither side was found' };
  }
  return Number.isFinite(range.high)
    ? { range, reason: null }
    : { range, reason: 'no upper end: the divisor may be zero' };
}

const WORDS: Readonly<Record<IndexInput, string>> = {
  pH: 'pH',
  temperature: 'temperature',
  calcium: 'calcium',
  alkalinity: 'alkalinity',
  solids: 'dissolved solids',
  strength: 'ionic strength (ions, dissolved solids or conductivity)',
  chloride: 'chloride',
  sulfate: 'sulfate',
};

function tooLow(name: IndexInput, interval: Interval | null): string | null {
  if (name !== 'calcium' && name !== 'alkalinity' && name !== 'solids') return null;
  if (interval === null || interval.low >= LEAST[name]) return null;
  const basis = name === 'alkalinity' ? ' as CaCO3' : '';
  return `${WORDS[name]} may be below ${LEAST[name]} mg/L${basis}`;
}

function notesOf(
  water: MeasuredWater,
  inputs: Inputs,
  kind: IndexKind,
  { range, reason }: RangeOrReason,
): NonNullable<RowFigure['notes']> {
  const isDilute = inputs.strength !== null && inputs.strength.low < DILUTE_MOL_PER_L;
  const isBelowRange = reason?.startsWith(BELOW_RANGE) === true;
  const mayAttack =
    kind.attacksBelow !== null && (range === null ? isBelowRange : range.low < kind.attacksBelow);
  const isLeftOfTable =
    kind.needs.includes('solids') &&
    range !== null &&
    inputs.solids !== null &&
    inputs.solids.low < TABLE_SOLIDS_MG_PER_L;
  return [
    ...(isDilute ? (['very-low-ionic-strength'] as const) : []),
    ...(isLeftOfTable ? (['below-table-of-solids'] as const) : []),
    ...(water.position === 'product' && mayAttack ? (['metal-parts-downstream'] as const) : []),
  ];
}
