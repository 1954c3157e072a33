import { z } from 'zod';

/** What timed pours say beyond all volume over all time. Measured at the bench: no ratings. */

const figure = z.number();
const maybe = figure.nullable();

export const flowColumns = {
  repeats: z
    .strictObject({
      n: z.int().describe('single pours, and runs of split or cumulative readings as one each'),
      mean_L_per_min: figure,
      sd_L_per_min: figure,
      low_L_per_min: figure.describe('interval of the mean at the confidence of the bench'),
      high_L_per_min: figure,
    })
    .nullable()
    .describe('null with a single pour'),
  first_rush: z
    .strictObject({
      runs: z.int(),
      length_s: figure.describe('mean length of the first split'),
      flow_L_per_min: figure,
      after_L_per_min: figure.describe('flow of the rest of the same runs'),
    })
    .nullable()
    .describe('null where no first second was split off'),
  decline: maybe.describe('share by which the end of a run flows slower than its start'),
  settled: z
    .strictObject({
      flow_L_per_min: figure.describe('slope of cumulative volume against time'),
      start_lag_s: figure.describe('time lost at the start, by the same line'),
    })
    .nullable(),
  standardised: z
    .strictObject({
      pours: z.int(),
      pressure_kPa: figure,
      temperature_degC: figure,
      by_power_L_per_min: figure.describe('with 1.03^(T - 25)'),
      by_arrhenius_L_per_min: figure.describe('with exp(K (1/298.15 - 1/T))'),
    })
    .nullable()
    .describe('at the solids and recovery of the bench, so no rating'),
  advertised_flow_L_per_min: maybe,
  share_of_advertised_flow: maybe,
  production_L_per_day: maybe.describe('without pause, as measured at the bench'),
  production_from: z.enum(['pours', 'tanks']).nullable(),
  advertised_production_L_per_day: maybe,
  share_of_advertised_production: maybe,
  usable_tank_L: maybe.describe('clean water between a full and an empty tank, by tanks.csv'),
} as const;
