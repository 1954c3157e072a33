import type { Finding } from '../findings/index.ts';
import type { InputFile, SchemaName } from '../model/index.ts';
import type { View } from './view.ts';

/** What every command hands over for printing: rows for machines and views for people. */
export interface Outcome {
  readonly schema: SchemaName;
  readonly bench: BenchStamp | null;
  readonly inputs: readonly InputFile[];
  /** Every option, method and seed in force; no output path. */
  readonly settings: Readonly<Record<string, unknown>>;
  /** Empty for `findings/1`, whose rows are the findings. */
  readonly rows: readonly object[];
  readonly findings: readonly Finding[];
  readonly views: readonly View[];
}

export interface BenchStamp {
  readonly title: string | null;
  readonly edition: string | null;
  readonly fingerprint: string;
}
