import type { MeasuredVolume } from '../analyse/index.ts';
import type { Place } from '../findings/index.ts';
import type { Quantity, TraceRow } from '../model/index.ts';
import { ratioText } from '../reference/index.ts';

/** One step of a trace: what was done, with what, and where it stands. */
export interface TraceStep {
  readonly depth: number;
  readonly what: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly formula: string | null;
  readonly place: Place;
}

/** Numbers the steps; a deeper step explains the nearest shallower one above it. */
export function traceRows(steps: readonly TraceStep[]): TraceRow[] {
  return steps.map((step, index) => ({
    step: index + 1,
    ...step,
    value: step.value !== null && Number.isFinite(step.value) ? step.value : null,
  }));
}

/** How the text of a cell became its value: `2 x 500 mL / 1000`, `1.5 gal x 3.785411784`. */
export function quantityFormula(quantity: Quantity): string {
  return quantity.parts
    .map(({ times, number, unit, unitFrom }) => {
      const repeated = times === 1 ? `${number}` : `${times} x ${number}`;
      const isCore = unit.toBase.num === unit.toBase.den && unit.offset.num === 0;
      const factor = isCore ? '' : ` ${ratioText(unit.toBase)}`;
      const from = unitFrom === 'header' ? ' (unit of the header)' : '';
      return `${repeated} ${unit.name}${factor}${from}`;
    })
    .join(' + ');
}

/** The cell of a volume, and its conversion where it was weighed. */
export function volumeStep(
  what: string,
  depth: number,
  volume: MeasuredVolume,
  place: Place,
): TraceStep {
  const formula = quantityFormula(volume.quantity);
  const { weighedAt } = volume;
  return {
    depth,
    what,
    value: volume.volumeL,
    unit: 'L',
    formula:
      weighedAt === null
        ? formula
        : `${formula}, weighed: mass x (1 - 0.0012/8.0) / (water density - 0.0012) at ` +
          `${weighedAt.temperatureC} degC${weighedAt.isAssumed ? ' (assumed)' : ''}`,
    place,
  };
}
