import { type Finding, finding } from '../../findings/index.ts';
import {
  calculatedDissolvedSolids,
  calculatedHardness,
  conductivityAt25,
  estimatedConductivity,
  linearConductivityAt25,
} from '../chemistry/index.ts';
import { ionBalanceFindings, isBalanced } from './ion-balance-findings.ts';
import { ionsOfSample, type SampleIons } from './ions-of-sample.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';
import { SoundFigures } from './sound-figures.ts';

/** A weighed residue is good to some mg/L at best; also used for other figures of that size. */
const RESIDUE_MG_PER_L = 10;

/** Standard Methods 1030 E, from memory. */
const SOLIDS_ACCEPTED = [1.0, 1.2] as const;

/** Beyond what moisture, organic matter and unmeasured ions explain; common practice, no source. */
const SOLIDS_POSSIBLE = [0.8, 1.5] as const;

/**
 * mg/L per µS/cm. Standard Methods gives 0.55 to 0.7 (from memory), regulatory reports up to 0.81;
 * nine invented waters computed by a speciation program came to 0.49 to 0.55.
 */
const SOLIDS_PER_CONDUCTIVITY = [0.4, 1.0] as const;

/** An estimate from ions is good to 10 %; beyond this something is wrong. */
const CONDUCTIVITY_POSSIBLE = [0.75, 1.3] as const;

/** Calculated and titrated hardness; common practice, no source. */
const HARDNESS_APART_PERCENT = 15;

/**
 * Major ions, dissolved solids, conductivity and hardness of each sample against one another.
 *
 * Where the ions do not balance, nothing else is computed from them: the cause is the same. Ions that
 * were not all measured still say what solids and conductivity have to be at least.
 */
export function waterChemistryFindings(view: SampleResults): Finding[] {
  const waters = view.samples.flatMap((row, sample) => {
    if (!isUsable(row) || row.values.position === 'blank') return [];
    return { sample, ions: ionsOfSample(view, sample) };
  });
  const balanced = waters.filter(({ ions }) => ions.isComplete && isBalanced(ions));
  const sound = new SoundFigures(balanced.map(({ sample }) => sample));
  return waters.flatMap(({ sample, ions }) => {
    const balance = ions.isComplete ? ionBalanceFindings(view, sample, ions, sound) : [];
    const isSound = balance.every(({ level }) => level === 'note');
    return [
      ...balance,
      ...(isSound ? fromIons(view, sample, ions) : []),
      ...solidsAgainstConductivity(view, sample),
      ...hardness(view, sample),
    ];
  });
}

function figure(view: SampleResults, sample: number, key: string) {
  const index = view.find(sample, view.analyteNamed(key));
  const value = index === -1 ? null : view.value(index);
  return value === null ? null : { index, value, limit: view.result(index).rl ?? 0 };
}

function fromIons(view: SampleResults, sample: number, ions: SampleIons): Finding[] {
  const findings: Finding[] = [];
  const solids = figure(view, sample, 'total-dissolved-solids');
  if (solids !== null) {
    const low = calculatedDissolvedSolids(ions.low, ions.silica.low);
    const high = calculatedDissolvedSolids(ions.high, ions.silica.high);
    const slack = Math.max(solids.limit, RESIDUE_MG_PER_L);
    const isOutside = ([least, most]: readonly [number, number]): boolean =>
      solids.value < least * low - slack || (ions.isComplete && solids.value > most * high + slack);
    if (isOutside(SOLIDS_POSSIBLE) || (ions.isComplete && isOutside(SOLIDS_ACCEPTED))) {
      findings.push(
        finding(
          isOutside(SOLIDS_POSSIBLE) ? 'dissolved-solids-off' : 'dissolved-solids-loose',
          `dissolved solids of ${shortNumber(solids.value)} mg/L are ` +
            `${shortNumber((2 * solids.value) / (low + high))} times the ` +
            `${shortNumber((low + high) / 2)} mg/L that the measured ions make; 1.0 to 1.2 is usual`,
          'ask the lab how they were found (dried at 180 °C, or from conductivity) and for a rerun',
          view.place(solids.index),
        ),
      );
    }
  }
  const conductivity = figure(view, sample, 'conductivity');
  if (conductivity !== null) {
    const [least, most] = CONDUCTIVITY_POSSIBLE;
    const low = estimatedConductivity(ions.low);
    const high = estimatedConductivity(ions.high);
    const slack = Math.max(conductivity.limit, RESIDUE_MG_PER_L);
    const isOff = (value: number): boolean =>
      (ions.isComplete && value > most * high + slack) || value < least * low - slack;
    if (isOff(conductivity.value)) {
      const raw = rawReading(view, sample, conductivity.value, isOff);
      findings.push(
        finding(
          'conductivity-off',
          `the conductivity of ${shortNumber(conductivity.value)} uS/cm does not fit the measured ions, ` +
            `which make about ${shortNumber((low + high) / 2)}${raw}`,
          'check its unit (uS/cm or mS/cm) and the temperature it is stated at',
          view.place(conductivity.index),
        ),
      );
    }
  }
  return findings;
}

/** Whether the conductivity fits as a reading at the temperature of the sample, in words. */
function rawReading(
  view: SampleResults,
  sample: number,
  reading: number,
  isOff: (value: number) => boolean,
): string {
  const celsius = figure(view, sample, 'temperature')?.value ?? null;
  const table = celsius === null ? null : conductivityAt25(reading, celsius);
  const linear = celsius === null ? null : linearConductivityAt25(reading, celsius);
  if (celsius === null || table === null || linear === null) return '';
  if (isOff(table) && isOff(linear)) return '';
  return (
    `; as a reading at the ${shortNumber(celsius)} °C of the sample it makes ${shortNumber(table)} ` +
    `at 25 °C (ISO 7888; ${shortNumber(linear)} by 2 % a degree), which fits: it may not be compensated`
  );
}

function solidsAgainstConductivity(view: SampleResults, sample: number): Finding[] {
  const solids = figure(view, sample, 'total-dissolved-solids');
  const conductivity = figure(view, sample, 'conductivity');
  if (solids === null || conductivity === null) return [];
  const [least, most] = SOLIDS_PER_CONDUCTIVITY;
  const slack = Math.max(solids.limit, RESIDUE_MG_PER_L);
  const isPossible =
    solids.value >= least * conductivity.value - slack &&
    solids.value <= most * conductivity.value + slack;
  if (isPossible) return [];
  return [
    finding(
      'conductivity-off',
      `dissolved solids of ${shortNumber(solids.value)} mg/L and a conductivity of ` +
        `${shortNumber(conductivity.value)} uS/cm do not fit: their ratio is ` +
        `${shortNumber(solids.value / conductivity.value)}, and ${least} to ${most} is possible`,
      'check the units (uS/cm or mS/cm, mg/L or g/L) and that both are of one bottle',
      view.place(conductivity.index),
    ),
  ];
}

function hardness(view: SampleResults, sample: number): Finding[] {
  const stated = figure(view, sample, 'total-hardness');
  const calcium = figure(view, sample, 'calcium');
  const magnesium = figure(view, sample, 'magnesium');
  if (stated === null || calcium === null || magnesium === null) return [];
  const computed = calculatedHardness(calcium.value, magnesium.value);
  const slack = Math.max(stated.limit, RESIDUE_MG_PER_L / 2);
  const allowed = Math.max(slack, (HARDNESS_APART_PERCENT / 100) * computed);
  if (Math.abs(stated.value - computed) <= allowed) return [];
  return [
    finding(
      'hardness-disagrees',
      `a hardness of ${shortNumber(stated.value)} mg/L as CaCO3 stands beside calcium and ` +
        `magnesium that make ${shortNumber(computed)}`,
      'check the units and the basis of all three (as Ca, as CaCO3, degrees)',
      view.place(stated.index),
    ),
  ];
}
