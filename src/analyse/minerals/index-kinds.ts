import type { Interval } from '../../model/index.ts';
import {
  aggressivenessIndex,
  type CarbonateWater,
  calciteSaturationIndex,
  langelier,
  larsonRatio,
  precipitationPotential,
  puckoriusIndex,
} from '../saturation/index.ts';

/** What an index may be computed from. */
export type IndexInput =
  | 'pH'
  | 'temperature'
  | 'calcium'
  | 'alkalinity'
  | 'solids'
  | 'strength'
  | 'chloride'
  | 'sulfate';

/** An index, what it needs and in which of its forms it is computed. */
export interface IndexKind {
  readonly quantity: string;
  readonly name: string;
  readonly unit: string;
  readonly basis: string | null;
  /** The form, by name: forms of one index differ by up to 0.3 on one water. */
  readonly form: string;
  /** In the order in which `compute` and `ratio` take them. */
  readonly needs: readonly IndexInput[];
  /** The index at one point; null where there is no solution. */
  readonly compute: (inputs: readonly number[]) => number | null;
  /** Set for a ratio, whose bounds need no corner: its upper end may be missing. */
  readonly ratio?: (box: readonly Interval[]) => Interval;
  /** A water below this may dissolve calcite and take up metals; null where the index says no such thing. */
  readonly attacksBelow: number | null;
}

/** Calcium as CaCO3 in calcium as Ca. */
const CALCITE_PER_CALCIUM = 100.087 / 40.078;

const LOG_FORM = 'logarithmic form: pHs = 9.3 + A + B - C - D';
const EQUILIBRIUM_FORM = 'equilibrium form, without ion pairs';

function logForm(inputs: readonly number[]) {
  const [pH = 0, temperatureC = 0, calcium = 0, alkalinityMgPerL = 0, tdsMgPerL = 0] = inputs;
  const calciumMgPerL = calcium * CALCITE_PER_CALCIUM;
  return langelier({ pH, temperatureC, calciumMgPerL, alkalinityMgPerL, tdsMgPerL });
}

function carbonateWater(inputs: readonly number[]): CarbonateWater {
  const [pH = 0, temperatureC = 0, calciumMgPerL = 0, alkalinityMgPerL = 0, strength = 0] = inputs;
  return { pH, temperatureC, calciumMgPerL, alkalinityMgPerL, ionicStrengthMolPerL: strength };
}

const LOG_NEEDS = ['pH', 'temperature', 'calcium', 'alkalinity', 'solids'] as const;
const EQUILIBRIUM_NEEDS = ['pH', 'temperature', 'calcium', 'alkalinity', 'strength'] as const;
const WHOLE: Interval = { low: Number.NaN, high: Number.NaN };

/** Every index, in the order of the tables. */
export const INDEX_KINDS: readonly IndexKind[] = [
  {
    quantity: 'langelier-index',
    name: 'Langelier index',
    unit: '1',
    basis: null,
    form: LOG_FORM,
    needs: LOG_NEEDS,
    compute: (inputs) => logForm(inputs).index,
    attacksBelow: 0,
  },
  {
    quantity: 'ryznar-index',
    name: 'Ryznar index',
    unit: '1',
    basis: null,
    form: LOG_FORM,
    needs: LOG_NEEDS,
    compute: (inputs) => logForm(inputs).ryznar,
    attacksBelow: null,
  },
  {
    quantity: 'puckorius-index',
    name: 'Puckorius index',
    unit: '1',
    basis: null,
    form: `2 pHs - pHeq, pHeq from the alkalinity; made for cooling water; ${LOG_FORM}`,
    needs: ['temperature', 'calcium', 'alkalinity', 'solids'],
    // The pH does not enter.
    compute: (inputs) => puckoriusIndex(logForm([7, ...inputs]).pHs, inputs[2] ?? 0),
    attacksBelow: null,
  },
  {
    quantity: 'calcite-saturation-index',
    name: 'Calcite saturation index',
    unit: '1',
    basis: null,
    form: EQUILIBRIUM_FORM,
    needs: EQUILIBRIUM_NEEDS,
    compute: (inputs) => calciteSaturationIndex(carbonateWater(inputs)),
    attacksBelow: 0,
  },
  {
    quantity: 'ccpp',
    name: 'Calcium carbonate precipitation potential',
    unit: 'mg/L',
    basis: 'as CaCO3',
    form: `closed system, positive precipitates; ${EQUILIBRIUM_FORM}`,
    needs: EQUILIBRIUM_NEEDS,
    compute: (inputs) => precipitationPotential(carbonateWater(inputs))?.potentialMgPerL ?? null,
    attacksBelow: 0,
  },
  {
    quantity: 'aggressiveness-index',
    name: 'Aggressiveness index',
    unit: '1',
    basis: null,
    form: 'pH + log10(calcium x alkalinity), both as CaCO3',
    needs: ['pH', 'calcium', 'alkalinity'],
    compute: ([pH = 0, calcium = 0, alkalinity = 0]) =>
      aggressivenessIndex(pH, calcium * CALCITE_PER_CALCIUM, alkalinity),
    attacksBelow: 12,
  },
  {
    quantity: 'larson-ratio',
    name: 'Larson ratio',
    unit: '1',
    basis: null,
    form: '(chloride + sulfate) / alkalinity, in equivalents',
    needs: ['chloride', 'sulfate', 'alkalinity'],
    compute: ([chloride = 0, sulfate = 0, alkalinity = 0]) =>
      larsonRatio(chloride, sulfate, alkalinity),
    ratio: ([chloride = WHOLE, sulfate = WHOLE, alkalinity = WHOLE]) => ({
      low: larsonRatio(chloride.low, sulfate.low, alkalinity.high),
      high: larsonRatio(chloride.high, sulfate.high, alkalinity.low),
    }),
    attacksBelow: null,
  },
  {
    quantity: 'chloride-sulfate-mass-ratio',
    name: 'Chloride-to-sulfate mass ratio',
    unit: '1',
    basis: null,
    form: 'chloride / sulfate, by mass',
    needs: ['chloride', 'sulfate'],
    compute: ([chloride = 0, sulfate = 0]) => chloride / sulfate,
    ratio: ([chloride = WHOLE, sulfate = WHOLE]) => ({
      low: chloride.low / sulfate.high,
      high: chloride.high / sulfate.low,
    }),
    attacksBelow: null,
  },
];
