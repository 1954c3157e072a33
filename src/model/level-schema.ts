import { z } from 'zod';

/** A product held against one reference level. */
export const verdictSchema = z.strictObject({
  jurisdiction: z.string(),
  kind: z.string(),
  low: z.number().nullable(),
  value: z.number().nullable(),
  unit: z.string(),
  basis: z.string().nullable(),
  verdict: z.enum(['within', 'above', 'cannot-say']),
  source: z.string(),
  verified: z.string(),
});

export type LevelVerdict = z.infer<typeof verdictSchema>;
