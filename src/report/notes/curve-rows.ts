import type { DrainCurve } from '../../analyse/index.ts';
import type { WaterCurveRow } from '../../model/index.ts';
import type { NotesInput } from './notes-input.ts';

/** The rows of pours that stand alone, which no number of pours a day goes with. */
export function isolatedRows(input: NotesInput): WaterCurveRow[] {
  const rows = input.outcomes.waterCurve.rows as readonly (WaterCurveRow & {
    readonly pours_per_day?: number | null;
  })[];
  return rows.filter((row) => (row.pours_per_day ?? null) === null);
}

/** True where a figure exists for any pour size. */
export function hasCurve(input: NotesInput, { drain }: DrainCurve): boolean {
  return isolatedRows(input).some(
    (row) =>
      row.device === drain.device.values.device &&
      row.variant === drain.variant &&
      row.total_drain_ratio !== null,
  );
}
