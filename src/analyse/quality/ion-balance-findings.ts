import { type Finding, finding } from '../../findings/index.ts';
import {
  balanceLimit,
  ION_EQUIVALENTS,
  type Ion,
  ionBalance,
  milliequivalents,
} from '../chemistry/index.ts';
import type { SampleIons } from './ions-of-sample.ts';
import type { SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';
import type { SoundFigures } from './sound-figures.ts';

/** How far apart cations and anions are, whatever the non-detects really were. */
interface Gap {
  /** Cations less anions, meq/L; 0 where some value of the non-detects closes the balance. */
  readonly meqPerL: number;
  readonly cations: number;
  readonly anions: number;
}

/**
 * Factors by which one ion is off when its basis or unit was taken wrongly, by molar masses: what is
 * printed times the factor would be right. Every ion can also be off by a decimal place.
 */
const BASIS_SLIPS: Readonly<Partial<Record<Ion, readonly (readonly [number, string])[]>>> = {
  nitrate: [
    [14.007 / 62.005, 'nitrate as NO3 was read as N'],
    [62.005 / 14.007, 'nitrate as N was read as NO3'],
  ],
  calcium: [
    [40.078 / 100.087, 'calcium as CaCO3 was read as Ca'],
    [100.087 / 40.078, 'calcium as Ca was read as CaCO3'],
  ],
  magnesium: [
    [24.305 / 100.087, 'magnesium as CaCO3 was read as Mg'],
    [100.087 / 24.305, 'magnesium as Mg was read as CaCO3'],
  ],
  'total-alkalinity': [
    [50.0435 / 61.017, 'alkalinity as HCO3 was read as CaCO3'],
    [61.017 / 50.0435, 'alkalinity as CaCO3 was read as HCO3'],
  ],
  sulfate: [
    [96.06 / 32.06, 'sulfate as S was read as SO4'],
    [32.06 / 96.06, 'sulfate as SO4 was read as S'],
  ],
};

const DECIMAL_SLIPS: readonly (readonly [number, string])[] = [
  [10, 'the figure may have lost a decimal place'],
  [0.1, 'the figure may have gained a decimal place'],
  [1000, 'the unit may be off by 1,000'],
  [0.001, 'the unit may be off by 1,000'],
];

/** The share of the gap a slip has to close before it is named. */
const CLOSED = 0.85;

/**
 * The ion balance of one sample.
 *
 * A note beyond the limits of Standard Methods 1030 E, a warning beyond `ion_balance` percent and
 * 0.2 meq/L; where a nitrate basis alone explains a gap beyond those limits, a warning at the nitrate.
 */
export function ionBalanceFindings(
  view: SampleResults,
  sample: number,
  ions: SampleIons,
  sound: SoundFigures,
): Finding[] {
  const gap = gapOf(ions);
  const limit = balanceLimit(gap.cations, gap.anions);
  if (Math.abs(gap.meqPerL) <= limit.meqPerL) return [];
  const sum = gap.cations + gap.anions;
  const percent = (100 * gap.meqPerL) / sum;
  const own = Math.max(0.2, (view.bench.settings.quality.ion_balance / 100) * sum);
  const slip = likelySlip(view, ions, gap, sound);
  const sums =
    `${view.sampleName(sample)}: cations ${shortNumber(gap.cations)} and anions ` +
    `${shortNumber(gap.anions)} meq/L lie ${shortNumber(Math.abs(percent))} % of their sum apart`;
  if (slip?.ion === 'nitrate' && slip.isBasis) {
    return [
      finding(
        'nitrate-basis-suspect',
        `${sums}; the balance closes if ${slip.words}`,
        'ask the lab whether the figure is as N or as NO3; the two differ by 4.43',
        view.place(ions.from.get('nitrate') ?? 0),
      ),
    ];
  }
  if (Math.abs(gap.meqPerL) <= own) {
    return [
      finding(
        'ion-balance-loose',
        `${sums}; Standard Methods accepts ${limit.rule}`,
        'none needed for reductions; look at the major ions before publishing minerals',
        view.place(heaviest(ions, gap.meqPerL)),
      ),
    ];
  }
  const alone = onlyDoubted(view, ions, sound);
  const index =
    slip === null ? (alone ?? heaviest(ions, gap.meqPerL)) : (ions.from.get(slip.ion) ?? 0);
  const hint =
    slip !== null
      ? `the balance closes at ${view.analyte(index).name} alone: ${slip.words}`
      : alone !== null
        ? `only ${view.analyte(index).name} is unlike that of every sample that balances`
        : 'a major ion is wrong, missing or on another basis';
  return [
    finding(
      'ion-balance-off',
      `${sums}; ${hint}`,
      'compare unit and basis of the major ions with the report of the lab, and ask for a rerun',
      view.place(index),
    ),
  ];
}

/** True where the ions of a sample meet the limits of Standard Methods 1030 E. */
export function isBalanced(ions: SampleIons): boolean {
  const gap = gapOf(ions);
  return Math.abs(gap.meqPerL) <= balanceLimit(gap.cations, gap.anions).meqPerL;
}

function gapOf(ions: SampleIons): Gap {
  const low = ionBalance(ions.low);
  const high = ionBalance(ions.high);
  const most = high.cationsMeqPerL - low.anionsMeqPerL;
  const least = low.cationsMeqPerL - high.anionsMeqPerL;
  return {
    meqPerL: least > 0 ? least : Math.min(most, 0),
    cations: (low.cationsMeqPerL + high.cationsMeqPerL) / 2,
    anions: (low.anionsMeqPerL + high.anionsMeqPerL) / 2,
  };
}

interface Slip {
  readonly ion: Ion;
  readonly words: string;
  readonly isBasis: boolean;
}

/**
 * The slip that closes the gap best: one of a basis where any closes it, else one of a decimal place,
 * which fits by chance more often.
 */
function likelySlip(
  view: SampleResults,
  ions: SampleIons,
  gap: Gap,
  sound: SoundFigures,
): Slip | null {
  const doubted = [...ions.from].flatMap(([ion, index]) => (sound.hold(view, index) ? [] : ion));
  const ofBasis = doubted.flatMap((ion) =>
    (BASIS_SLIPS[ion] ?? []).map(([factor, words]) => ({ ion, factor, words, isBasis: true })),
  );
  const ofDecimals = doubted.flatMap((ion) =>
    DECIMAL_SLIPS.map(([factor, words]) => ({ ion, factor, words, isBasis: false })),
  );
  return closest(ions, gap, ofBasis) ?? closest(ions, gap, ofDecimals);
}

/** The one ion no sound sample holds, among others that some do; null where that is not one ion. */
function onlyDoubted(view: SampleResults, ions: SampleIons, sound: SoundFigures): number | null {
  const doubted = [...ions.from.values()].filter((index) => !sound.hold(view, index));
  return doubted.length === 1 ? (doubted[0] ?? null) : null;
}

function closest(
  ions: SampleIons,
  gap: Gap,
  slips: readonly (Slip & { readonly factor: number })[],
): Slip | null {
  let best: Slip | null = null;
  let bestLeft = (1 - CLOSED) * Math.abs(gap.meqPerL);
  for (const slip of slips) {
    const { ion, factor } = slip;
    const sign = Math.sign(ION_EQUIVALENTS[ion].charge);
    const now = milliequivalents(ion, ((ions.low[ion] ?? 0) + (ions.high[ion] ?? 0)) / 2);
    const left = Math.abs(gap.meqPerL + sign * now * (factor - 1));
    if (left >= bestLeft) continue;
    bestLeft = left;
    best = slip;
  }
  return best;
}

/** The largest ion of the side that has too much. */
function heaviest(ions: SampleIons, gap: number): number {
  let index = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (const [ion, at] of ions.from) {
    if (Math.sign(ION_EQUIVALENTS[ion].charge) !== Math.sign(gap)) continue;
    const amount = milliequivalents(ion, ions.low[ion] ?? 0);
    if (amount > most) {
      most = amount;
      index = at;
    }
  }
  return index;
}
