import type { Bench, CostSettings } from '../../model/index.ts';
import type { SpreadFact } from '../drain-uncertainty/index.ts';
import { energyOf } from './energy-use.ts';
import { type OwnershipCost, ownershipCost } from './ownership.ts';
import { partCosts } from './part-costs.ts';

const DAYS_PER_YEAR = 365;

/** What the draws of water use come to in money: one column a figure, one entry a draw. */
export interface DrawnCosts {
  readonly partsProRata: Float64Array;
  readonly partsBought: Float64Array;
  readonly waterPerYear: Float64Array;
  readonly sewerPerYear: Float64Array;
  readonly kWhPerYear: Float64Array;
  readonly energyPerYear: Float64Array;
  readonly totalProRata: Float64Array;
  readonly totalBought: Float64Array;
  readonly presentValue: Float64Array;
  readonly perLitre: Float64Array;
}

/**
 * Costs of a device in a scenario for every draw of its water use.
 *
 * The clean water of a draw sets how long parts last by their capacity, its clean and drained water
 * what water and sewer cost, its clean water and flushes the hours of each state. Prices, tariffs,
 * lifetimes and powers are taken as stated. What is not known counts as nothing, as in the sums beside.
 * @returns null where water use has no draws
 */
export function drawnCosts(
  bench: Bench,
  use: SpreadFact,
  settings: CostSettings,
): DrawnCosts | null {
  const { spread, scenario, drain } = use;
  const { model } = drain;
  if (spread === null || model === null) return null;
  const draws = spread.totalDrainRatio.length;
  const column = (): Float64Array => new Float64Array(draws);
  const found = {
    partsProRata: column(),
    partsBought: column(),
    waterPerYear: column(),
    sewerPerYear: column(),
    kWhPerYear: column(),
    energyPerYear: column(),
    totalProRata: column(),
    totalBought: column(),
    presentValue: column(),
    perLitre: column(),
  };
  const { years, discountRate } = settings;
  const purchase = drain.device.values.price?.amount ?? 0;
  const perYear = DAYS_PER_YEAR / scenario.days;
  const partsOf = partsByLitres(bench, use, settings);
  // Running costs come to so many times those of a year, discounted.
  const { presentValue: annuity } = ownershipCost({
    purchase: 0,
    parts: [],
    runningPerYear: 1,
    years,
    discountRate,
  });
  const kWhs = kWhByDraw(bench, use, Math.min(draws, spread.years.period));
  for (let draw = 0; draw < draws; draw++) {
    const { cleanL, producingL, flushL } = spread.years.of(draw);
    const litres = cleanL * perYear;
    const parts = partsOf(litres);
    const fed = (cleanL + producingL + flushL) * perYear;
    const water = fed * (settings.water?.amount ?? 0);
    const sewer = fed * (settings.sewer?.amount ?? 0);
    const kWh = kWhs[draw % kWhs.length] ?? 0;
    const energy = kWh * (settings.electricity?.amount ?? 0);
    const running = water + sewer + energy;
    found.partsProRata[draw] = parts.partsProRata;
    found.partsBought[draw] = parts.partsBought;
    found.waterPerYear[draw] = water;
    found.sewerPerYear[draw] = sewer;
    found.kWhPerYear[draw] = kWh;
    found.energyPerYear[draw] = energy;
    found.totalProRata[draw] = purchase + parts.partsProRata + running * years;
    found.totalBought[draw] = purchase + parts.partsBought + running * years;
    found.presentValue[draw] = purchase + parts.presentValue + running * annuity;
    found.perLitre[draw] = (found.totalProRata[draw] as number) / (litres * years);
  }
  return found;
}

/** Costs of the parts alone by the clean litres of a year, each amount of water worked out once. */
function partsByLitres(
  bench: Bench,
  { drain }: SpreadFact,
  { years, discountRate }: CostSettings,
): (litresPerYear: number) => OwnershipCost {
  const known = new Map<number, OwnershipCost>();
  return (litresPerYear) => {
    const found =
      known.get(litresPerYear) ??
      ownershipCost({
        purchase: 0,
        parts: partCosts(bench, drain.device.values.device, litresPerYear)?.parts ?? [],
        runningPerYear: 0,
        years,
        discountRate,
      });
    known.set(litresPerYear, found);
    return found;
  };
}

/** Energy of a year, kWh, for the first draws; later ones come to the same in turn. */
function kWhByDraw(bench: Bench, use: SpreadFact, count: number): Float64Array {
  const kWhOf = energyOf(bench, use);
  const { spread, drain } = use;
  return Float64Array.from({ length: spread === null ? 0 : count }, (_, draw) => {
    if (spread === null) return 0;
    const { cleanL, fillingS } = spread.years.of(draw);
    const flushCounts = spread.years.flushesOf(draw);
    return (
      kWhOf({ cleanL, fillingS: drain.tank === null ? null : fillingS, flushCounts })?.value ?? 0
    );
  });
}
