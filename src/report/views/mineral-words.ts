import type { MineralRow } from '../../model/index.ts';
import { atMostDigits } from '../format-number.ts';

/** A figure as an interval: `12.4`, `< 0.5`, `0.1 to 0.5`, `> 500`. */
export function intervalText(figure: Pick<MineralRow, 'low' | 'estimate' | 'high'>): string {
  const { low, estimate, high } = figure;
  if (estimate !== null) return atMostDigits(estimate, 3);
  if (low === null) return high === null ? 'unknown' : `< ${atMostDigits(high, 3)}`;
  if (high === null) return `> ${atMostDigits(low, 3)}`;
  if (low === 0) return `< ${atMostDigits(high, 3)}`;
  const [from, to] = [atMostDigits(low, 3), atMostDigits(high, 3)];
  return from === to ? from : `${from} to ${to}`;
}
