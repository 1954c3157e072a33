import { type Finding, finding } from '../../findings/index.ts';
import { type Bench, cellPlace, SOLIDS } from '../../model/index.ts';

/** Measures of the sum of ions, which a mineral stage raises. */
export const SOLIDS_MEASURES: readonly string[] = SOLIDS;

/** True for a device that says it has a mineral stage. */
export function hasMineralStage(bench: Bench, device: string | null): boolean {
  return bench.tables.devices.some(
    ({ values }) => values.device === device && values.mineral_stage === 'yes',
  );
}

/** One note a device: its dissolved solids say nothing on what it rejects. */
export function solidsNotes(bench: Bench, devices: ReadonlySet<string>): Finding[] {
  return bench.tables.devices.flatMap((row) =>
    devices.has(row.values.device)
      ? [
          finding(
            'solids-not-rejection',
            `dissolved solids and conductivity of ${row.values.device} hold what its mineral stage adds; their reduction is not a measure of rejection`,
            'look at the rejection of ions that the stage does not add, or at the water before it',
            cellPlace(row, 'mineral_stage'),
          ),
        ]
      : [],
  );
}
