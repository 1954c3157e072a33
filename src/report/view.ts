/**
 * A table as a person reads it: what the terminal and Markdown formats draw. Cells are already
 * worded and rounded; CSV and JSON never come from here.
 */
export interface View {
  /** States the finding, not only the topic. */
  readonly caption: string;
  readonly columns: readonly ViewColumn[];
  readonly rows: readonly (readonly string[])[];
  /** Symbols and cautions explained below the table. */
  readonly legend: readonly string[];
}

export interface ViewColumn {
  readonly head: string;
  readonly align: 'left' | 'right';
}
