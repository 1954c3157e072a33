import { z } from 'zod';

/** Rows of the sheets for a sampling day: one row is one line to be worked off or filled in. */

const word = z.string().nullable();

/** `laboratories`: in tables that drinking-water laboratories publish. */
const reading = z.enum(['seen', 'laboratories', 'memory']).nullable();

export const SHEETS = [
  'sampling',
  'bottles',
  'custody',
  'pours',
  'drain-runs',
  'flushes',
  'idle-tds',
] as const;

export const sheetRow = z.strictObject({
  sheet: z.enum(SHEETS).describe('the sheet the line belongs to'),
  order: z.int().describe('place of the line within its sheet and event, from 1'),
  event: word,
  sample: word.describe('sample code'),
  proposed: z.boolean().describe('the code is a proposal: samples.csv does not hold it'),
  position: word,
  of: word.describe('of a duplicate: the sample it repeats'),
  device: word,
  variant: word,
  rule: word.describe('flush rule'),
  run_first: word.describe('volume to run to waste first, as written in samples.csv'),
  idle_before: word.describe('pause before that, as written in samples.csv'),
  taken_at: word.describe('when it was or is to be taken, local time'),
  bottle: word.describe('which bottle of the kit'),
  preservative: word,
  container: word.describe('what the bottle is made of'),
  kit_read: reading.describe('how far the rule for preservative and container was read'),
  analytes: z.array(z.string()).describe('analytes of the bottle that share the deadline'),
  warmest_C: z.number().nullable().describe('warmest transport; null: none asked for'),
  holding_time: word.describe('longest time from sampling to analysis, or that the lab has to say'),
  holding_rule: word.describe('regulation or method of the holding time'),
  holding_read: reading.describe('how far that rule was read'),
  holding_hours: z.number().nullable(),
  analyse_by: word.describe('taken_at plus the holding time; null without a time of sampling'),
  write: z.array(z.string()).describe('cells left blank, to be filled in by hand'),
});

export type SheetRow = z.infer<typeof sheetRow>;
