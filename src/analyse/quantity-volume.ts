import type { Quantity } from '../model/index.ts';
import { volumeFromMassL } from '../reference/index.ts';

/** Temperature at which a weighed volume is computed when none was logged. */
export const ASSUMED_TEMPERATURE_C = 20;

/** A volume from a measured volume or a measured mass of water. */
export interface MeasuredVolume {
  readonly volumeL: number;
  readonly quantity: Quantity;
  /** Null for a measured volume. */
  readonly weighedAt: { readonly temperatureC: number; readonly isAssumed: boolean } | null;
}

/**
 * Litres of a volume, or of a mass of water at its logged temperature.
 *
 * Without a logged temperature a mass is taken at 20 °C; from 4 to 30 °C that is off by 0.3 % at
 * most.
 */
export function measuredVolume(quantity: Quantity, temperature: Quantity | null): MeasuredVolume {
  if (quantity.dimension !== 'mass') return { volumeL: quantity.value, quantity, weighedAt: null };
  const temperatureC = temperature?.value ?? ASSUMED_TEMPERATURE_C;
  return {
    volumeL: volumeFromMassL(quantity.value, temperatureC),
    quantity,
    weighedAt: { temperatureC, isAssumed: temperature === null },
  };
}
