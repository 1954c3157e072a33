import { z } from 'zod';

/** Rows of the cost of ownership. Money is in the currency of the row, never converted. */

const maybe = z.number().nullable();

const amount = (about: string) =>
  z
    .strictObject({ low: maybe, estimate: maybe, high: maybe })
    .describe(
      `${about}; low alone: at least so much, as something is not counted; all null: not known`,
    );

export const costRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  scenario: z
    .string()
    .nullable()
    .describe('null: from the cheapest to the dearest of all scenarios'),
  currency: z.string().nullable(),
  years: z.number().describe('horizon'),
  discount_rate: z.number().describe('per year, a fraction'),
  clean_L_per_year: maybe,
  price_date: z.string().nullable().describe('day the purchase price was seen'),
  purchase: maybe,
  parts_pro_rata_per_year: amount('parts by wear, a year'),
  parts_bought: amount('parts bought whole within the horizon, the first set not among them'),
  water_per_year: amount('all water let in, clean and drain, at the water tariff'),
  sewer_per_year: amount('the same water at the sewer tariff'),
  energy_kWh_per_year: amount('energy of all states, kWh a year'),
  energy_per_year: amount('its cost'),
  per_year: amount('everything, parts by wear, over the years'),
  per_litre: amount('everything, parts by wear, over the clean litres'),
  total_pro_rata: amount('everything over the horizon, parts by wear'),
  total_bought: amount('everything over the horizon, parts bought whole'),
  present_value: amount('the same payments discounted to the day of purchase'),
  bottled_water: maybe.describe('the same clean litres bought in bottles over the horizon'),
  not_counted: z.array(z.enum(['purchase', 'parts', 'water', 'sewer', 'energy'])),
  findings: z.array(z.string()),
});

export type CostRow = z.infer<typeof costRow>;

/** Points of the money spent over the years in one scenario; two at every purchase of parts. */
export const costCurveRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  scenario: z.string(),
  currency: z.string().nullable(),
  year: z.number().describe('after the purchase'),
  spent: z.number().describe('so far, parts bought whole'),
  whole: z.boolean().describe('false: something is not counted, and the sum is a lower bound'),
});

export type CostCurveRow = z.infer<typeof costCurveRow>;
