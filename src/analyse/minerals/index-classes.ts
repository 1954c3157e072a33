import type { Interval } from '../../model/index.ts';
import { chlorideSulfateRatio } from '../saturation/index.ts';

/**
 * The class of an index over its whole range; null where its ends lie in different classes, or where
 * the index has none.
 *
 * Source: aggressiveness classes of AWWA C400 and Ryznar's from memory, taken for
 * Puckorius too; lead concern from the
 * chloride-to-sulfate ratio: USGS SIR 2016-5092.
 */
export function indexClass(
  quantity: string,
  range: Interval,
  alkalinity: Interval | null,
): string | null {
  const low = classAt(quantity, range.low, alkalinity?.low ?? null);
  const high = classAt(quantity, range.high, alkalinity?.high ?? null);
  const crossed = classAt(quantity, range.high, alkalinity?.low ?? null);
  return low === high && low === crossed ? low : null;
}

function classAt(quantity: string, value: number, alkalinity: number | null): string | null {
  switch (quantity) {
    case 'langelier-index':
    case 'calcite-saturation-index':
      return value < 0 ? 'may dissolve calcite' : 'may precipitate calcite';
    case 'ccpp':
      return value < 0 ? 'dissolves calcite' : 'precipitates calcite';
    case 'ryznar-index':
    case 'puckorius-index':
      return value < 6 ? 'tends to scale' : value > 7 ? 'tends to corrode' : 'between';
    case 'aggressiveness-index':
      return value < 10
        ? 'highly aggressive'
        : value < 12
          ? 'moderately aggressive'
          : 'not aggressive';
    case 'chloride-sulfate-mass-ratio':
      return leadConcern(value, alkalinity);
    default:
      return null;
  }
}

/** The class of the mass ratio: above 0.5 it takes the alkalinity. */
function leadConcern(ratio: number, alkalinity: number | null): string | null {
  if (ratio > 0.5 && alkalinity === null) return null;
  const { concern } = chlorideSulfateRatio(ratio, 1, alkalinity ?? 0);
  return `${concern} concern for lead parts`;
}
