import type { Interval, MineralRow } from '../../model/index.ts';
import { calculatedDissolvedSolids, calculatedHardness } from '../chemistry/index.ts';
import { alkalinityParts } from '../saturation/index.ts';
import { guidanceVerdicts } from './guidance-verdicts.ts';
import { hardnessInUnits } from './hardness-units.ts';
import type { RowFigure } from './mineral-row.ts';
import { intervalIn, type MeasuredWater } from './mineral-waters.ts';
import { waterIons } from './water-ions.ts';

/** What a water may hold and is shown for, in the order of the tables. */
const SHOWN = [
  'calcium',
  'magnesium',
  'sodium',
  'potassium',
  'total-hardness',
  'total-alkalinity',
  'bicarbonate',
  'total-dissolved-solids',
  'conductivity',
  'ph',
  'fluoride',
  'chloride',
  'sulfate',
] as const;

const CALCITE_MG_PER_MEQ = 50.0435;
const BICARBONATE_MG_PER_MEQ = 61.017;

/** A figure that was measured, or that others make. */
export interface Content {
  readonly interval: Interval;
  readonly estimate: number | null;
  readonly method: string;
  readonly notes?: MineralRow['notes'];
}

const DERIVED: Readonly<
  Record<string, { readonly name: string; readonly unit: string; readonly basis: string | null }>
> = {
  'total-hardness': { name: 'Hardness, total', unit: 'mg/L', basis: 'as CaCO3' },
  'total-alkalinity': { name: 'Alkalinity, total', unit: 'mg/L', basis: 'as CaCO3' },
  bicarbonate: { name: 'Bicarbonate', unit: 'mg/L', basis: 'as HCO3' },
  'total-dissolved-solids': { name: 'Total dissolved solids', unit: 'mg/L', basis: null },
};

/** What the water holds, each figure against guidance; what was neither measured nor made is left out. */
export function contentFigures(water: MeasuredWater): RowFigure[] {
  return SHOWN.flatMap((key): RowFigure[] => {
    const content = contentOf(water, key);
    if (content === null) return [];
    const analyte = water.sides.get(key)?.analyte ?? { ...DERIVED[key], key };
    const { name = key, unit = '', basis = null } = analyte;
    return [
      {
        group: 'content',
        quantity: key,
        name,
        unit,
        basis,
        ...content,
        other_units: otherUnits(key, content),
        guidance: unit === 'mg/L' || key === 'ph' ? guidanceVerdicts(key, content.interval) : [],
      },
    ];
  });
}

/** A figure of a water: the lab's own first, else made from others; null where neither is there. */
export function contentOf(water: MeasuredWater, key: string): Content | null {
  const measured = water.sides.get(key);
  if (measured !== undefined) {
    const { interval, estimate, method } = measured.side;
    return { interval, estimate, method };
  }
  switch (key) {
    case 'total-hardness':
      return hardness(water);
    case 'total-alkalinity':
      return alkalinity(water);
    case 'bicarbonate':
      return bicarbonate(water);
    case 'total-dissolved-solids':
      return dissolvedSolids(water);
    default:
      return null;
  }
}

function made(interval: Interval, method: string, notes: MineralRow['notes'] = []): Content {
  const estimate = interval.low === interval.high ? interval.low : null;
  return { interval, estimate, method, notes };
}

function hardness(water: MeasuredWater): Content | null {
  const calcium = intervalIn(water, 'calcium');
  const magnesium = intervalIn(water, 'magnesium');
  if (calcium === null || magnesium === null) return null;
  return made(
    {
      low: calculatedHardness(calcium.low, magnesium.low),
      high: calculatedHardness(calcium.high, magnesium.high),
    },
    'from calcium and magnesium: 2.497 Ca + 4.118 Mg',
  );
}

function alkalinity(water: MeasuredWater): Content | null {
  const measured = intervalIn(water, 'bicarbonate');
  if (measured === null) return null;
  const factor = CALCITE_MG_PER_MEQ / BICARBONATE_MG_PER_MEQ;
  return made(
    { low: measured.low * factor, high: measured.high * factor },
    'from bicarbonate, all alkalinity counted as such',
    ['counted-as-bicarbonate'],
  );
}

function bicarbonate(water: MeasuredWater): Content | null {
  const measured = intervalIn(water, 'total-alkalinity');
  if (measured === null) return null;
  const factor = BICARBONATE_MG_PER_MEQ / CALCITE_MG_PER_MEQ;
  const pH = intervalIn(water, 'ph');
  if (pH === null) {
    return made(
      { low: measured.low * factor, high: measured.high * factor },
      'from alkalinity, all of it counted as bicarbonate: no pH',
      ['counted-as-bicarbonate'],
    );
  }
  // Rises with alkalinity and falls with pH.
  return made(
    {
      low: alkalinityParts(pH.high, measured.low).bicarbonate * factor,
      high: alkalinityParts(pH.low, measured.high).bicarbonate * factor,
    },
    'from alkalinity and pH, at 25 degC',
  );
}

function dissolvedSolids(water: MeasuredWater): Content | null {
  const ions = waterIons(water);
  if (!ions.isComplete) return null;
  const silica = intervalIn(water, 'silica') ?? { low: 0, high: 0 };
  return made(
    {
      low: calculatedDissolvedSolids(ions.low, silica.low),
      high: calculatedDissolvedSolids(ions.high, silica.high),
    },
    'calculated from the major ions, as a residue dried at 180 degC',
  );
}

function otherUnits(key: string, content: Content): MineralRow['other_units'] {
  const scaled = (unit: string, basis: string | null, factor: number) => ({
    unit,
    basis,
    low: content.interval.low * factor,
    estimate: content.estimate === null ? null : content.estimate * factor,
    high: Number.isFinite(content.interval.high) ? content.interval.high * factor : null,
  });
  switch (key) {
    case 'total-hardness':
      return hardnessInUnits(1).map(({ unit, value }) => scaled(unit, null, value));
    case 'total-alkalinity':
      return [
        scaled('mg/L', 'as HCO3', BICARBONATE_MG_PER_MEQ / CALCITE_MG_PER_MEQ),
        scaled('meq/L', null, 1 / CALCITE_MG_PER_MEQ),
      ];
    default:
      return [];
  }
}
