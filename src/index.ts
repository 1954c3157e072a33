/**
 * The library: each command's function over a bench read with `readBench`.
 *
 * @example
 * import { readBench, reductions } from 'pourbench';
 * const { rows } = reductions(readBench('samples/first-bench'), { analytes: ['lead'] });
 */
export { check } from './commands/check.ts';
export { claims } from './commands/claims.ts';
export { compare } from './commands/compare.ts';
export { costs, costsChart } from './commands/costs.ts';
export { filterLife } from './commands/filter-life.ts';
export type { Filters } from './commands/filters.ts';
export { type IdleRiseOptions, idleRise } from './commands/idle-rise.ts';
export { lookup } from './commands/lookup.ts';
export { minerals } from './commands/minerals.ts';
export { blankBench } from './commands/new.ts';
export { type NextTestsOptions, nextTests, testPackages, testPlan } from './commands/next-tests.ts';
export { notes } from './commands/notes.ts';
export { type OtherFeedOptions, otherFeed } from './commands/other-feed.ts';
export { type PanelOptions, panel } from './commands/panel.ts';
export { pours } from './commands/pours.ts';
export { readBench, SettingsError } from './commands/read-bench.ts';
export { type FeedFile, type ReadFeedOptions, readFeed } from './commands/read-feed.ts';
export { type PriceFile, readPrices } from './commands/read-prices.ts';
export { reductions } from './commands/reductions.ts';
export { type SheetsOptions, sheets } from './commands/sheets.ts';
export { spikes } from './commands/spikes.ts';
export { logReductions, sums } from './commands/sums.ts';
export { toldApart, toldApartGroups } from './commands/tell-apart.ts';
export { type TraceOptions, trace } from './commands/trace.ts';
export {
  breakEvens,
  type CurveOptions,
  drainRegions,
  type SweepOptions,
  sweepWaterUse,
  type WaterUseOptions,
  waterCurve,
  waterInputs,
  waterUse,
} from './commands/water-use.ts';
export { BenchError, type Finding, type Level, type Place } from './findings/index.ts';
export type {
  Bench,
  BenchSettings,
  BreakEvenRow,
  ClaimRow,
  CostRow,
  DrainRegionRow,
  FindingRow,
  IdleRiseRow,
  LookupRow,
  MeasureRow,
  MineralRow,
  NextTestRow,
  OtherFeedRow,
  PourRow,
  ReductionOutcome,
  ReductionRow,
  SchemaName,
  SheetRow,
  SweepRow,
  TestPackageRow,
  TestPlanRow,
  TraceRow,
  WaterCurveRow,
  WaterInputRow,
  WaterUseRow,
} from './model/index.ts';
export type { Outcome } from './report/outcome.ts';
