import type { Finding } from '../../findings/index.ts';
import { type LabLayoutSettings, labLayoutSchema } from '../../model/index.ts';
import { type PlaceOf, type SchemaWords, schemaFindings } from '../schema-findings.ts';

const WORDS: SchemaWords = {
  entry: 'a key of a lab layout',
  name: 'key',
  file: 'the file',
  entries: 'a lab layout',
  page: 'docs/lab-layouts.md',
  keys: Object.keys(labLayoutSchema.shape),
};

export interface SidecarReading {
  /** Null when a key is wrong; the findings say which. */
  readonly sidecar: LabLayoutSettings | null;
  readonly findings: readonly Finding[];
}

/** A `lab/NAME.layout.json`, with every unknown key and every value of a wrong kind. */
export function readSidecar(value: unknown, placeOf: PlaceOf): SidecarReading {
  const parsed = labLayoutSchema.safeParse(value, { reportInput: true });
  if (parsed.success) return { sidecar: parsed.data, findings: [] };
  return { sidecar: null, findings: schemaFindings(parsed.error.issues, WORDS, placeOf) };
}
