/**
 * Litres drained per litre of clean water, over any period.
 *
 * Pool the volumes of a period first: a mean of ratios is not the ratio of the period.
 * @param cleanL clean litres delivered
 * @param drainL litres sent to drain
 * @returns null when nothing clean was delivered
 * @example totalDrainRatio(2, 3) // 1.5
 */
export function totalDrainRatio(cleanL: number, drainL: number): number | null {
  return cleanL > 0 ? drainL / cleanL : null;
}

/**
 * Share of the feed that was delivered as clean water.
 *
 * @param cleanL clean litres delivered
 * @param drainL litres sent to drain
 * @returns a fraction from 0 to 1; null when nothing clean was delivered
 * @example recovery(2, 3) // 0.4
 */
export function recovery(cleanL: number, drainL: number): number | null {
  return cleanL > 0 ? cleanL / (cleanL + drainL) : null;
}
