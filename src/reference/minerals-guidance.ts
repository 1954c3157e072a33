import { tableAnalytes } from './analyte-table.ts';
import { conversionTo } from './basis.ts';
import { unitNamed } from './read-unit.ts';
import { MINERALS_GUIDANCE_ROWS } from './tables/minerals-guidance.ts';
import { applyLinear } from './unit.ts';

/**
 * A published statement on how much of a mineral drinking water may or should hold. It is guidance,
 * never a requirement on a device.
 *
 * `low` and `high` are in `unit` and `basis` as printed; `canonicalLow` and `canonicalHigh` in the
 * unit and basis the analyte is kept in. A side the source leaves open is null.
 */
export interface MineralsGuidance {
  readonly analyte: string;
  /** `minimum`, `optimum range`, `maximum`, or the words of a taste panel. */
  readonly role: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly basis: string | null;
  readonly context: string;
  readonly source: string;
  /** `from memory`, or `seen: …` with the copy in which the value was read. */
  readonly verified: string;
  readonly note: string | null;
  readonly canonicalLow: number | null;
  readonly canonicalHigh: number | null;
}

/** An index that is no analyte, in the unit its guidance is printed in. */
const COMPUTED_ONLY = new Set(['ccpp']);

/**
 * Guidance on an analyte, or on the computed index `ccpp`, in the order of the table.
 *
 * @returns an empty list where there is none
 * @example mineralsGuidance('ccpp')[0].canonicalHigh // 10, mg/L as CaCO3
 */
export function mineralsGuidance(analyte: string): MineralsGuidance[] {
  return MINERALS_GUIDANCE_ROWS.filter(([key]) => key === analyte).map(
    ([, role, low, high, unit, basis, context, source, verified, note]) => {
      const printed = { low: numberOrNull(low), high: numberOrNull(high) };
      const canonical = canonicalFigure(analyte, unit, basis);
      return {
        analyte,
        role,
        ...printed,
        unit,
        basis: basis.startsWith('as ') ? basis : null,
        context,
        source,
        verified,
        note: note === '' ? null : note,
        canonicalLow: printed.low === null ? null : canonical(printed.low),
        canonicalHigh: printed.high === null ? null : canonical(printed.high),
      };
    },
  );
}

function numberOrNull(text: string): number | null {
  return text === '' ? null : Number(text);
}

/** @throws {RangeError} where the table holds a figure that cannot be converted */
function canonicalFigure(key: string, unit: string, basis: string): (value: number) => number {
  if (COMPUTED_ONLY.has(key)) return (value) => value;
  const analyte = tableAnalytes().find((each) => each.key === key);
  const from = unitNamed(unit);
  if (analyte === undefined || from === undefined) throw new RangeError(`guidance on ${key}`);
  const conversion = conversionTo(analyte, from, basis.startsWith('as ') ? basis : null);
  if (conversion.kind !== 'conversion') throw new RangeError(`guidance on ${key} in ${unit}`);
  return (value) => applyLinear(value, conversion.ratio, conversion.offset);
}
