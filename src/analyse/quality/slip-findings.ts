import { type Finding, finding } from '../../findings/index.ts';
import type { SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** A unit slip multiplies by 1,000; what two waters differ by on top of it lies within these. */
const THOUSAND = [200, 5000] as const;

/** NO3 over N by molar mass, and how closely a ratio has to meet it. */
const NITRATE_RATIO = 62.005 / 14.007;
const NITRATE_NEAR = 0.04;

/** A figure against a fellow of the same water, either way. */
export function unitSlip(
  view: SampleResults,
  index: number,
  other: number,
  than: string,
): Finding[] {
  const value = view.value(index);
  const { key, group } = view.analyte(index);
  if (value === null || value <= 0 || group === 'microbiological') return [];
  const ratio = value / other;
  const size = Math.max(ratio, 1 / ratio);
  if (size > THOUSAND[0] && size < THOUSAND[1]) {
    return [unitSuspect(view, index, size, `${ratio > 1 ? 'above' : 'below'} ${than}`)];
  }
  return key === 'nitrate' ? nitrateSlip(view, index, ratio, than) : [];
}

export function unitSuspect(
  view: SampleResults,
  index: number,
  times: number,
  where: string,
): Finding {
  return finding(
    'unit-suspect',
    `${view.analyte(index).name} is ${shortNumber(times)} times ${where}: its unit may be off by 1,000`,
    'compare the unit with the report of the lab (ng/L, ug/L, mg/L)',
    view.place(index),
  );
}

export function nitrateSlip(
  view: SampleResults,
  index: number,
  ratio: number,
  than: string,
): Finding[] {
  const size = Math.max(ratio, 1 / ratio);
  if (Math.abs(size / NITRATE_RATIO - 1) > NITRATE_NEAR) return [];
  // A product below its feed is what a device is for.
  if (ratio < 1 && than.startsWith('the feed')) return [];
  return [
    finding(
      'nitrate-basis-suspect',
      `nitrate is ${shortNumber(size)} times ${ratio > 1 ? 'above' : 'below'} ${than}, the factor ` +
        'between NO3 and N',
      'ask the lab whether the figure is as N or as NO3',
      view.place(index),
    ),
  ];
}
