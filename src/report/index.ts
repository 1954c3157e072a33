// Takes: rows, views and findings of a command. Gives: table, CSV, JSON, Markdown and SVG texts,
// and writes them whole or not at all. Never computes a figure, never reads a bench, never prints.
// Loads the table drawer, the schemas and vega when they are used.

export {
  type DrainCurve,
  type DrainCurveChartInput,
  drainCurveChart,
} from './charts/drain-curve-chart.ts';
export {
  type DrainRegion,
  type DrainRegionsChartInput,
  drainRegionsChart,
} from './charts/drain-regions-chart.ts';
export type { Chart } from './charts/draw-svg.ts';
export type { ReductionMark } from './charts/reduction-marks.ts';
export { type ReductionsChartInput, reductionsChart } from './charts/reductions-chart.ts';
export {
  type YearlyDrain,
  type YearlyDrainChartInput,
  yearlyDrainChart,
} from './charts/yearly-drain-chart.ts';
export { csvText } from './csv.ts';
export { envelopeText } from './envelope.ts';
export { FINDINGS_SHOWN, findingsText, findingText } from './findings-text.ts';
export { atMostDigits, plainNumber, significant, withUncertaintyDigits } from './format-number.ts';
export { lowerBoundText, percentEstimate, percentRange, upperBoundText } from './format-percent.ts';
export { durationText, volumeText } from './format-quantity.ts';
export { escapeMarkdown, escapeMarkdownLine, markdownTables } from './markdown.ts';
export type { BenchStamp, Outcome } from './outcome.ts';
export type { FolderMarker } from './output-folder.ts';
export { FORMATS, type Format, type RenderOptions, render } from './render.ts';
export { colourStyle, PLAIN_STYLE, type Style } from './style.ts';
export { textTables } from './text-table.ts';
export type { View, ViewColumn } from './view.ts';
export { type WriteFolderOptions, writeFile, writeFolder } from './write-output.ts';
