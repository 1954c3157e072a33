import type { Outcome } from './outcome.ts';
import type { Style } from './style.ts';

export const FORMATS = ['table', 'csv', 'json', 'md'] as const;

export type Format = (typeof FORMATS)[number];

export interface RenderOptions {
  /** Columns of the terminal, for tables. */
  readonly width: number;
  /** For tables; without it no colour. */
  readonly style?: Style;
  /** Version of the tool, for JSON. */
  readonly version: string;
}

/**
 * An outcome in the asked format. CSV and JSON come from its rows, tables and Markdown from its
 * views. Findings are in the JSON; of `findings/1` they are the rows of every format, in front of
 * the views.
 */
export async function render(
  outcome: Outcome,
  format: Format,
  options: RenderOptions,
): Promise<string> {
  switch (format) {
    case 'json': {
      const { envelopeText } = await import('./envelope.ts');
      return envelopeText(outcome, options.version);
    }
    case 'csv': {
      const { csvText } = await import('./csv.ts');
      const { publishedRows } = await import('./published-rows.ts');
      return csvText(outcome.schema, publishedRows(outcome).rows);
    }
    case 'md': {
      const { markdownTables } = await import('./markdown.ts');
      if (outcome.schema !== 'findings/1') return markdownTables(outcome.views);
      const { findingsView } = await import('./findings-view.ts');
      return markdownTables([findingsView(outcome.findings), ...outcome.views]);
    }
    case 'table': {
      const { textTables } = await import('./text-table.ts');
      const { findingsText } = await import('./findings-text.ts');
      const { width, style } = options;
      const tables = textTables(outcome.views, width, style);
      if (outcome.schema !== 'findings/1') return tables;
      const findings = findingsText(outcome.findings, { limit: null, ...(style && { style }) });
      return [findings || 'no findings\n', tables].filter((text) => text !== '').join('\n');
    }
    default:
      return format satisfies never;
  }
}
