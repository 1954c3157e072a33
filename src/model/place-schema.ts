import { z } from 'zod';

/** Where a figure or a claim stands; what does not apply is null. */
export const placeSchema = z.strictObject({
  file: z.string().nullable(),
  line: z.int().nullable(),
  column: z.int().nullable(),
  field: z.string().nullable(),
  cell: z.string().nullable(),
});
