// Takes: rows, views and findings of a command. Gives: table, CSV, JSON, Markdown and SVG texts,
// and writes them whole or not at all. Never computes a figure, never reads a bench, never prints.
// Loads the table drawer, the schemas and vega when they are used.
export type { BenchStamp, Outcome } from './outcome.ts';
export type { FolderMarker } from './output-folder.ts';
export { render } from './render.ts';
export type { View, ViewColumn } from './view.ts';
export { type WriteFolderOptions, writeFile, writeFolder } from './write-output.ts';
