import type { Finding } from '../../findings/index.ts';
import type { LabLayoutSettings } from '../../model/index.ts';

/** Gives every record of a lab file in turn, until the reader returns false. */
export type RecordSource = (
  // biome-ignore lint/suspicious/noConfusingVoidType: most readers want every record
  onRecord: (cells: readonly string[], line: number) => void | boolean,
) => void;

/** A lab file as text, taken apart at one delimiter. */
export interface LabText {
  readonly encoding: NonNullable<LabLayoutSettings['encoding']>;
  readonly delimiter: string;
  readonly records: RecordSource;
  readonly findings: readonly Finding[];
}

/** A lab file and the sidecar beside it, before any meaning. */
export interface LabSource {
  readonly path: string;
  /** The file name without its ending. */
  readonly stem: string;
  /**
   * Opens the file. What is null is found out: the encoding from the bytes, the delimiter from the
   * steadiest split.
   */
  readonly open: (
    encoding: NonNullable<LabLayoutSettings['encoding']> | null,
    delimiter: string | null,
  ) => LabText;
  /** The sidecar; null where there is none or it cannot be used. */
  readonly sidecar: LabLayoutSettings | null;
  readonly sidecarPath: string | null;
  /**
   * Name of the one sample of a file that has no column for samples; left out where a file has to
   * say whose results it holds.
   */
  readonly soleSample?: string;
}
