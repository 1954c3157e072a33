import { z } from 'zod';

/** What timed pours say beyond all volume over all time. Measured at the bench: no ratings. */

const figure = z.number();
const maybe = figure.nullable();

const END = 'interval at the confidence of the bench: repeats, readings, stopwatch and vessels';

/** Seconds to fill a vessel at the high and the low end of the flow. */
const fillRange = z
  .strictObject({ low_s: figure, high_s: maybe.describe('null: the low end of the flow is 0') })
  .nullable();

export const flowColumns = {
  flow_uncertainty: z
    .strictObject({
      low_L_per_min: figure.describe(END),
      high_L_per_min: figure,
      standard_L_per_min: figure.describe('the larger of scatter and readings, with the vessels'),
      degrees_of_freedom: maybe.describe('null: the instruments alone decide'),
      scatter_L_per_min: maybe.describe('of the repeats; null without any on the bench'),
      reading_L_per_min: figure.describe('graduation or division, anew at every reading'),
      stopwatch_L_per_min: figure.describe('starting and stopping by hand'),
      vessel_L_per_min: figure.describe('vessel or scale: the same in all repeats'),
      rests_on: z
        .enum(['repeats', 'bench', 'instruments'])
        .describe('bench: a single pour, with the scatter of the repeats of other devices'),
    })
    .nullable()
    .describe('parts are standard uncertainties; null without water'),
  fill_range_glass_250_mL: fillRange,
  fill_range_carafe_1_L: fillRange,
  fill_range_us_cup: fillRange,
  fill_range_us_gallon: fillRange,
  repeats: z
    .strictObject({
      n: z.int().describe('single pours, and runs of split or cumulative readings as one each'),
      mean_L_per_min: figure,
      sd_L_per_min: figure,
      low_L_per_min: figure.describe('interval of the mean by its scatter alone'),
      high_L_per_min: figure,
    })
    .nullable()
    .describe('null with a single pour'),
  first_rush: z
    .strictObject({
      runs: z.int(),
      length_s: figure.describe('mean length of the first split'),
      flow_L_per_min: figure,
      low_L_per_min: figure,
      high_L_per_min: figure,
      after_L_per_min: figure.describe('flow of the rest of the same runs'),
      after_low_L_per_min: figure,
      after_high_L_per_min: figure,
    })
    .nullable()
    .describe('null where no first second was split off'),
  decline: maybe.describe('share by which the end of a run flows slower than its start'),
  decline_low: maybe,
  decline_high: maybe,
  settled: z
    .strictObject({
      flow_L_per_min: figure.describe('slope of cumulative volume against time'),
      low_L_per_min: figure,
      high_L_per_min: figure,
      start_lag_s: figure.describe('time lost at the start, by the same line'),
      start_lag_low_s: figure,
      start_lag_high_s: figure,
    })
    .nullable(),
  standardised: z
    .strictObject({
      pours: z.int(),
      pressure_kPa: figure,
      temperature_degC: figure,
      by_power_L_per_min: figure.describe('with 1.03^(T - 25)'),
      by_power_low_L_per_min: figure.describe('with thermometer and gauge'),
      by_power_high_L_per_min: figure,
      by_arrhenius_L_per_min: figure.describe('with exp(K (1/298.15 - 1/T))'),
      by_arrhenius_low_L_per_min: figure,
      by_arrhenius_high_L_per_min: figure,
    })
    .nullable()
    .describe('at the solids and recovery of the bench, so no rating'),
  advertised_flow_L_per_min: maybe,
  share_of_advertised_flow: maybe,
  production_L_per_day: maybe.describe('without pause, as measured at the bench'),
  production_low_L_per_day: maybe.describe('null where it comes from tanks.csv'),
  production_high_L_per_day: maybe,
  production_from: z.enum(['pours', 'tanks']).nullable(),
  advertised_production_L_per_day: maybe,
  share_of_advertised_production: maybe,
  usable_tank_L: maybe.describe('clean water between a full and an empty tank, by tanks.csv'),
} as const;
