import type { UncertifiedInFeed } from '../../analyse/claims/index.ts';
import type { DrainCurve, PourFlow, ReductionFact, WaterUse } from '../../analyse/index.ts';
import type { AnalyteComparison, ReductionSummary } from '../../compare/index.ts';
import type { Bench, DeviceRow } from '../../model/index.ts';
import type { Outcome } from '../outcome.ts';

export interface FormRegions {
  readonly form: DeviceRow['values']['form'];
  readonly outcome: Outcome;
}

/** What the commands give over the same bench with the same filters. */
export interface NotesOutcomes {
  readonly reductions: Outcome;
  readonly sums: Outcome;
  readonly logReductions: Outcome;
  readonly filterLife: Outcome;
  /** Nominal doses beside the spiked feeds as measured. */
  readonly spikes: Outcome;
  readonly waterUse: Outcome;
  readonly waterCurve: Outcome;
  /** Against pours a day of one size, at random. */
  readonly dailyCurve: Outcome;
  readonly breakEven: Outcome;
  readonly regions: Outcome;
  /** The same among the devices of one form; none where all are of one form. */
  readonly regionsByForm: readonly FormRegions[];
  readonly pours: Outcome;
  readonly claims: Outcome;
  readonly minerals: Outcome;
  readonly idleRise: Outcome;
  readonly panel: Outcome;
  readonly costs: Outcome;
  /** Of the first scenario alone. */
  readonly costOverTime: Outcome;
  readonly compare: Outcome;
  readonly toldApartGroups: Outcome;
  readonly check: Outcome;
}

/** All that notes are composed from. Facts hold only what the filters keep. */
export interface NotesInput {
  readonly bench: Bench;
  /** Version of the tool, for provenance. */
  readonly version: string;
  /** The filters in force, by name; empty for notes on the whole bench. */
  readonly filters: Readonly<Record<string, readonly string[]>>;
  readonly outcomes: NotesOutcomes;
  /** Devices shown, in the order of devices.csv. */
  readonly devices: readonly string[];
  readonly reductions: readonly ReductionFact[];
  /** The headline of every device, variant and analyte, as `compare` has it. */
  readonly summaries: readonly ReductionSummary[];
  /** Which devices differ on which analyte; every device of the bench enters. */
  readonly comparisons: readonly AnalyteComparison[];
  /** Contaminants of the feed that no certified claim stands behind. */
  readonly uncertified: readonly UncertifiedInFeed[];
  readonly waterUse: WaterUse;
  readonly curves: readonly DrainCurve[];
  readonly flows: readonly PourFlow[];
  /** Whether an analyte is among those shown. */
  keepsAnalyte(key: string): boolean;
}
