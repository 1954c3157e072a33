// Takes: the words and shapes of the domain. Gives: the file catalogue, settings, bench types and
// the schemas of every output. Never reads a file, never computes a figure.
// Imports findings/ and reference/ only.
export * from './bench.ts';
export * from './catalogue.ts';
export * from './claim-schemas.ts';
export type { CellKind, Cells, Column } from './columns.ts';
export type { CostCurveRow, CostRow } from './cost-schemas.ts';
export type { IdleRiseRow } from './idle-rise-schemas.ts';
export * from './lab-layout.ts';
export type {
  MineralGuidanceVerdict,
  MineralNote,
  MineralRow,
} from './mineral-schemas.ts';
export type { NextTestRow, TestPackageRow, TestPlanRow } from './next-test-schemas.ts';
export {
  type OtherFeedAssumption,
  type OtherFeedRefusal,
  type OtherFeedRow,
  REFUSALS,
  SOLIDS,
} from './other-feed-schemas.ts';
export { OUTCOMES } from './outcome-words.ts';
export * from './output-schemas.ts';
export * from './price-list.ts';
export * from './quantity.ts';
export * from './results.ts';
export * from './rows.ts';
export { type BenchSettings, benchSettingsSchema } from './settings.ts';
export type { SheetRow } from './sheet-schemas.ts';
export type { SpikeRow } from './spike-schemas.ts';
export * from './sum-schemas.ts';
export type { CostSettings, Tariff } from './tariff.ts';
export type { ToldApartGroupRow, ToldApartRow } from './told-apart-schemas.ts';
export type { DrainRegionRow, SweepRow, WaterInputRow } from './water-schemas.ts';
