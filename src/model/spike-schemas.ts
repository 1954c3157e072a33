import { z } from 'zod';

/** Rows of the nominal and the measured dose of spiked feeds. */

const maybe = z.number().nullable();

const range = z.strictObject({ low: maybe, estimate: maybe, high: maybe });

export const spikeRow = z.strictObject({
  event: z.string(),
  analyte: z.string(),
  unit: z.string().describe('canonical unit of dose and feeds'),
  nominal: z.number().describe('the dose of spikes.csv, by calculation; no reduction uses it'),
  measured: range.describe('the spiked feed as measured; every reduction uses this'),
  measured_n: z.int().describe('results of the batch that were pooled'),
  measured_sample: z.string().nullable(),
  natural: range.describe('the natural feed before it was spiked; null where not measured'),
  natural_sample: z.string().nullable(),
  recovery: range.describe(
    '(measured - natural) / nominal, a fraction, ends with the uncertainty of both feeds; low null ' +
      'where the natural feed was not measured',
  ),
  confidence: z.number(),
  accepted_low: z.number().describe('recovery that is accepted, from quality.spike_recovery'),
  accepted_high: z.number(),
  agreement: z
    .enum(['agrees', 'differs', 'cannot-say', 'untested'])
    .describe('the whole recovery lies within, or outside, what is accepted'),
  note: z.string().nullable(),
});

export type SpikeRow = z.infer<typeof spikeRow>;
