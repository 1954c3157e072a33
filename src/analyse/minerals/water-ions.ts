import type { Interval } from '../../model/index.ts';
import { ionicStrength, type MajorIons, majorIons } from '../chemistry/index.ts';
import { intervalIn, type MeasuredWater } from './mineral-waters.ts';

/** The major ions of a water; those above the lab's range are left out. */
export function waterIons(water: MeasuredWater): MajorIons<string> {
  return majorIons((key) => {
    const interval = intervalIn(water, key);
    const unit = water.sides.get(key)?.analyte.unit;
    return interval === null || unit === undefined ? null : { ...interval, unit, from: key };
  });
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
