import type { BenchSettings, CostSettings, Tariff } from '../model/index.ts';
import type { CellProblem } from './cell-problem.ts';
import { readQuantity } from './quantity-text.ts';
import { readTariff } from './tariff-text.ts';

/** Seconds of a year of 365.2425 days, as in the table of units. */
const YEAR_S = 31_556_952;

export interface CostSettingsReading {
  readonly value: CostSettings;
  /** What could not be read, each with where it stands in bench.json. */
  readonly problems: readonly { readonly path: readonly string[]; readonly problem: CellProblem }[];
}

/** Tariffs and horizon of a bench; what cannot be read is a problem and counts as not stated. */
export function readCostSettings(settings: BenchSettings): CostSettingsReading {
  const measures = settings.measures ?? null;
  const problems: { path: readonly string[]; problem: CellProblem }[] = [];
  const tariff = (
    name: keyof NonNullable<BenchSettings['tariffs']>,
    per: 'volume' | 'energy',
  ): Tariff | null => {
    const text = settings.tariffs?.[name];
    if (text === undefined) return null;
    const reading = readTariff(text, per, measures);
    if (!('problem' in reading)) return reading.value;
    problems.push({ path: ['tariffs', name], problem: reading });
    return null;
  };
  const horizon = readQuantity(settings.cost_horizon, {
    dimensions: ['time'],
    headerUnit: null,
    measures,
    isStopwatch: false,
  });
  const seconds = 'problem' in horizon ? 0 : horizon.value.value;
  if (!(seconds > 0)) {
    const problem = {
      problem: 'value-unexpected',
      message: `"${settings.cost_horizon}" is not a length of time above zero`,
      remedy: 'write it like 5 years',
    } as const;
    problems.push({ path: ['cost_horizon'], problem });
  }
  return {
    value: {
      water: tariff('water', 'volume'),
      sewer: tariff('sewer', 'volume'),
      electricity: tariff('electricity', 'energy'),
      bottledWater: tariff('bottled_water', 'volume'),
      years: seconds / YEAR_S,
      discountRate: settings.discount_rate,
      currency: settings.currency ?? null,
    },
    problems,
  };
}
