/**
 * Tick values for an axis from 0: steps of 1, 2 or 5 times a power of ten, ending at or beyond the
 * largest value.
 *
 * @param largest largest value to show; 0 or less gives 0 and 1
 * @param count roughly how many steps
 * @example ticksFromZero(870, 5) // [0, 200, 400, 600, 800, 1000]
 */
export function ticksFromZero(largest: number, count: number): number[] {
  if (!(largest > 0)) return [0, 1];
  const rough = largest / count;
  const power = Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((each) => exact(each, power) >= rough) ?? 10;
  const steps = Math.ceil(largest / exact(factor, power) - 1e-9);
  return Array.from({ length: steps + 1 }, (_, i) => exact(factor * i, power));
}

/**
 * Tick values for a logarithmic axis: 1, 2 and 5 times the powers of ten that lie from `lowest` to
 * `highest`, both above 0.
 *
 * @example logTicks(80, 2500) // [100, 200, 500, 1000, 2000]
 */
export function logTicks(lowest: number, highest: number): number[] {
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(lowest)); exact(1, power) <= highest; power += 1) {
    for (const factor of [1, 2, 5]) {
      const tick = exact(factor, power);
      if (tick >= lowest && tick <= highest) ticks.push(tick);
    }
  }
  return ticks;
}

/** `factor` times a power of ten as the nearest double, free of the drift of multiplication. */
function exact(factor: number, power: number): number {
  return Number(`${factor}e${power}`);
}
