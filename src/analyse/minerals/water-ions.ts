import type { Interval } from '../../model/index.ts';
import { IONS, type Ion, type IonConcentrations, ionicStrength } from '../chemistry/index.ts';
import { intervalIn, type MeasuredWater } from './mineral-waters.ts';

/** The least and the most of each major ion of a water, mg/L. */
export interface WaterIons {
  readonly low: IonConcentrations;
  readonly high: IonConcentrations;
  /** Calcium, magnesium, sodium, alkalinity (or bicarbonate), chloride and sulfate are all there. */
  readonly isComplete: boolean;
}

const NEEDED: readonly Ion[] = [
  'calcium',
  'magnesium',
  'sodium',
  'total-alkalinity',
  'chloride',
  'sulfate',
];

const PER_UNIT: Readonly<Record<string, number>> = { 'mg/L': 1, 'ug/L': 0.001 };

/** Bicarbonate as HCO3 counted as alkalinity as CaCO3. */
const ALKALINITY_PER_BICARBONATE = 50.0435 / 61.017;

/** Particles rather than ions in most tap waters. */
const NOT_COUNTED: readonly Ion[] = ['iron', 'manganese'];

/** The major ions of a water; those above the lab's range are left out. */
export function waterIons(water: MeasuredWater): WaterIons {
  const low: Partial<Record<Ion, number>> = {};
  const high: Partial<Record<Ion, number>> = {};
  const take = (ion: Ion, key: string, factor: number): void => {
    const interval = intervalIn(water, key);
    const unit = PER_UNIT[water.sides.get(key)?.analyte.unit ?? ''];
    if (interval === null || unit === undefined || !Number.isFinite(interval.high)) return;
    low[ion] = interval.low * unit * factor;
    high[ion] = interval.high * unit * factor;
  };
  for (const ion of IONS) if (!NOT_COUNTED.includes(ion)) take(ion, ion, 1);
  if (low['total-alkalinity'] === undefined) {
    take('total-alkalinity', 'bicarbonate', ALKALINITY_PER_BICARBONATE);
  }
  return { low, high, isComplete: NEEDED.every((ion) => low[ion] !== undefined) };
}

/** Ionic strength of a water and where it was taken from; null where nothing says it. */
export function strengthOf(
  water: MeasuredWater,
): { readonly interval: Interval; readonly method: string } | null {
  const ions = waterIons(water);
  if (ions.isComplete) {
    return {
      interval: { low: ionicStrength(ions.low), high: ionicStrength(ions.high) },
      method: 'ionic strength from the ions',
    };
  }
  const solids = intervalIn(water, 'total-dissolved-solids');
  if (solids !== null && Number.isFinite(solids.high)) {
    return {
      interval: { low: solids.low / SOLIDS_PER_STRENGTH, high: solids.high / SOLIDS_PER_STRENGTH },
      method: 'ionic strength from dissolved solids / 40,000',
    };
  }
  const conductivity = intervalIn(water, 'conductivity');
  if (conductivity === null || !Number.isFinite(conductivity.high)) return null;
  return {
    interval: {
      low: conductivity.low * STRENGTH_PER_CONDUCTIVITY,
      high: conductivity.high * STRENGTH_PER_CONDUCTIVITY,
    },
    method: 'ionic strength from 1.6e-5 of the conductivity',
  };
}

/** Both from Standard Methods 2330 B (from memory): mg/L, and mol/L per uS/cm. */
const SOLIDS_PER_STRENGTH = 40_000;
const STRENGTH_PER_CONDUCTIVITY = 1.6e-5;
