import { type Finding, finding } from '../../findings/index.ts';
import {
  type Bench,
  type CostRow,
  type CostSettings,
  cellPlace,
  type Spread,
} from '../../model/index.ts';
import type { SpreadFact } from '../drain-uncertainty/index.ts';
import type { WaterUseFact } from '../water-use.ts';
import { commonCurrency } from './currencies.ts';
import { drawnCosts } from './drawn-costs.ts';
import { energyUse } from './energy-use.ts';
import { amountSpread, type KnownAmount, rangeOf, sumOf, timesAmount } from './known-amount.ts';
import { ownershipCost } from './ownership.ts';
import { type PartCost, partCosts } from './part-costs.ts';

const DAYS_PER_YEAR = 365;

/** The cost of one device in one state and scenario. */
export interface CostFact {
  readonly row: CostRow;
  readonly use: WaterUseFact;
  readonly parts: readonly PartCost[];
  readonly runningPerYear: KnownAmount;
}

export interface Costs {
  readonly facts: readonly CostFact[];
  /** Of every device and state: from its cheapest to its dearest scenario. */
  readonly ranges: readonly CostRow[];
  readonly findings: readonly Finding[];
}

/**
 * Cost of ownership of every device, state and scenario.
 *
 * What is not known is not counted and named; the sum is then a lower bound. Drain pays for water and
 * for the sewer, like all water let in. Ranges carry those of water use; prices, tariffs and lifetimes
 * are taken as stated.
 */
export function computeCosts(
  bench: Bench,
  uses: readonly SpreadFact[],
  settings: CostSettings,
): Costs {
  const { currency, findings: mixed } = commonCurrency(bench, settings);
  if (mixed.length > 0) return { facts: [], ranges: [], findings: mixed };
  const facts = uses.map((fact) => costFact(bench, fact, settings, currency));
  const drains = [...new Set(uses.map(({ drain }) => drain))];
  const states = drains.map((drain) =>
    facts.filter((fact) => fact.use.drain === drain).map((fact) => fact.row),
  );
  return {
    facts,
    ranges: states.flatMap((rows) => rangeRow(rows)),
    findings: [...missingTariffs(settings), ...notCounted(facts)],
  };
}

function costFact(
  bench: Bench,
  use: SpreadFact,
  settings: CostSettings,
  currency: string | null,
): CostFact {
  const { years, discountRate } = settings;
  const { device } = use.drain;
  const litresPerYear = cleanPerYear(use);
  const purchase = device.values.price?.amount ?? null;
  const parts = partCosts(bench, device.values.device, litresPerYear);
  const fedPerYear = fedWater(use);
  const tariffed = (price: number | undefined): KnownAmount | null =>
    fedPerYear === null || price === undefined
      ? null
      : { value: fedPerYear * price, isWhole: true };
  const water = tariffed(settings.water?.amount);
  const sewer = tariffed(settings.sewer?.amount);
  const kWh = energyUse(bench, use);
  const price = settings.electricity?.amount;
  const energy = kWh?.value === 0 && kWh.isWhole ? kWh : priced(kWh, price);
  const partsKnown = parts === null ? null : { value: 0, isWhole: parts.isWhole };
  const runningPerYear = sumOf([water, sewer, energy]);
  const sums = ownershipCost({
    purchase: purchase ?? 0,
    parts: parts?.parts ?? [],
    runningPerYear: runningPerYear.value,
    years,
    discountRate,
  });
  const isWhole = purchase !== null && partsKnown?.isWhole === true && runningPerYear.isWhole;
  const total = (value: number): KnownAmount => ({ value, isWhole });
  const ofParts = (value: number): KnownAmount | null =>
    partsKnown === null ? null : { value, isWhole: partsKnown.isWhole };
  const litres = litresPerYear === null ? 0 : litresPerYear * years;
  const missing = [
    ...(purchase === null ? (['purchase'] as const) : []),
    ...(partsKnown?.isWhole === true ? [] : (['parts'] as const)),
    ...(water === null ? (['water'] as const) : []),
    ...(sewer === null ? (['sewer'] as const) : []),
    ...(energy?.isWhole === true ? [] : (['energy'] as const)),
  ];
  const drawn = drawnCosts(bench, use, settings);
  const { confidence } = bench.settings;
  const none = new Float64Array(0);
  const spread = (
    amount: KnownAmount | null,
    draws: Float64Array | undefined,
    divisor = 1,
  ): Spread => amountSpread(amount, draws?.map((value) => value / divisor) ?? none, confidence);
  const row: CostRow = {
    device: device.values.device,
    variant: use.row.variant,
    scenario: use.row.scenario,
    currency,
    years,
    discount_rate: discountRate,
    clean_L_per_year: litresPerYear,
    price_date: device.values.price_date?.text ?? null,
    purchase,
    parts_pro_rata_per_year: spread(ofParts(sums.partsProRata / years), drawn?.partsProRata, years),
    parts_bought: spread(ofParts(sums.partsBought), drawn?.partsBought),
    water_per_year: spread(water, drawn?.waterPerYear),
    sewer_per_year: spread(sewer, drawn?.sewerPerYear),
    energy_kWh_per_year: spread(kWh, drawn?.kWhPerYear),
    energy_per_year: spread(energy, drawn?.energyPerYear),
    per_year: spread(total(sums.totalProRata / years), drawn?.totalProRata, years),
    per_litre: spread(litres > 0 ? total(sums.totalProRata / litres) : null, drawn?.perLitre),
    total_pro_rata: spread(total(sums.totalProRata), drawn?.totalProRata),
    total_bought: spread(total(sums.totalBought), drawn?.totalBought),
    present_value: spread(total(sums.presentValue), drawn?.presentValue),
    bottled_water:
      settings.bottledWater === null || litresPerYear === null
        ? null
        : litres * settings.bottledWater.amount,
    not_counted: missing,
    findings: missing.length === 0 ? [] : ['cost-not-counted'],
  };
  return { row, use, parts: parts?.parts ?? [], runningPerYear };
}

function priced(amount: KnownAmount | null, price: number | undefined): KnownAmount | null {
  return price === undefined ? null : timesAmount(amount, price);
}

/** Clean litres of a year: what the device gives, else what the scenario asks for. */
function cleanPerYear({ simulated, scenario, drain }: WaterUseFact): number {
  const perYear = DAYS_PER_YEAR / scenario.days;
  if (simulated !== null) return simulated.cleanL * perYear;
  const { volumeL } = scenario.pours(drain.flow?.flowLPerMin ?? null);
  return volumeL.reduce((sum, litres) => sum + litres, 0) * perYear;
}

/** Litres let into the device in a year; null where its drain is not known. */
function fedWater({ simulated, scenario }: WaterUseFact): number | null {
  if (simulated === null) return null;
  return ((simulated.cleanL + simulated.totalDrainL) * DAYS_PER_YEAR) / scenario.days;
}

function rangeRow(rows: readonly CostRow[]): CostRow[] {
  const [first] = rows;
  if (first === undefined) return [];
  const range = (pick: (row: CostRow) => CostRow['per_year']) => rangeOf(rows.map(pick));
  return [
    {
      ...first,
      scenario: null,
      clean_L_per_year: null,
      parts_pro_rata_per_year: range((row) => row.parts_pro_rata_per_year),
      parts_bought: range((row) => row.parts_bought),
      water_per_year: range((row) => row.water_per_year),
      sewer_per_year: range((row) => row.sewer_per_year),
      energy_kWh_per_year: range((row) => row.energy_kWh_per_year),
      energy_per_year: range((row) => row.energy_per_year),
      per_year: range((row) => row.per_year),
      per_litre: range((row) => row.per_litre),
      total_pro_rata: range((row) => row.total_pro_rata),
      total_bought: range((row) => row.total_bought),
      present_value: range((row) => row.present_value),
      bottled_water: null,
      not_counted: [...new Set(rows.flatMap((row) => row.not_counted))],
      findings: [...new Set(rows.flatMap((row) => row.findings))],
    },
  ];
}

function missingTariffs(settings: CostSettings): Finding[] {
  const named = [
    ['water', settings.water, '2.20 USD/m3'],
    ['sewer', settings.sewer, '2.60 USD/m3'],
    ['electricity', settings.electricity, '0.16 USD/kWh'],
  ] as const;
  return named
    .filter(([, tariff]) => tariff === null)
    .map(([name, , example]) =>
      finding(
        'tariff-missing',
        `bench.json states no tariff for ${name}, so it is not counted`,
        `add tariffs.${name} to bench.json, such as "${example}"; 0 where nothing is paid`,
      ),
    );
}

/** One finding a device, naming all that is not counted and what to log for it. */
function notCounted(facts: readonly CostFact[]): Finding[] {
  const devices = new Map<string, { fact: CostFact; missing: Set<string> }>();
  for (const fact of facts) {
    const name = fact.row.device;
    const entry = devices.get(name) ?? { fact, missing: new Set() };
    for (const part of fact.row.not_counted) entry.missing.add(part);
    devices.set(name, entry);
  }
  return [...devices.values()].flatMap(({ fact, missing }) => {
    if (missing.size === 0) return [];
    return finding(
      'cost-not-counted',
      `the cost of ${fact.row.device} is a lower bound: ${[...missing].join(', ')} not or not wholly known`,
      'log price (devices.csv), parts.csv, drain and power (energy.csv; 0 W where there is no plug)',
      cellPlace(fact.use.drain.device, 'device'),
    );
  });
}
