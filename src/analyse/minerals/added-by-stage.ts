import type { Bench } from '../../model/index.ts';
import { resultUncertainties } from '../uncertainty/index.ts';
import { comparisonsOf, comparisonWaters } from './comparison-waters.ts';
import { measuredWaters } from './mineral-waters.ts';
import { sideLimits } from './side-limits.ts';
import { hasMineralStage, SOLIDS_MEASURES } from './solids-behind-stage.ts';

/** What the minerals of a stage raise when they dissolve, whatever a comparison shows. */
const DISSOLVED_STONE: readonly string[] = [
  ...SOLIDS_MEASURES,
  'calcium',
  'magnesium',
  'total-hardness',
  'total-alkalinity',
  'phenolphthalein-alkalinity',
  'bicarbonate',
  'carbonate',
  'hydroxide',
];

/**
 * What the mineral stage of a device adds to its product.
 *
 * What dissolving stone raises, and any other analyte that a product was shown to hold more of than
 * the water before the stage, or without such a sample than the products of other devices of the
 * technology without a stage.
 * @returns a predicate of device and analyte key; false for devices without a mineral stage
 */
export function addedByStage(bench: Bench): (device: string, analyte: string) => boolean {
  const waters = measuredWaters(bench, resultUncertainties(bench));
  const shown = new Set<string>();
  for (const product of waters) {
    const { device, position } = product;
    if (position !== 'product' || device === null || !hasMineralStage(bench, device)) continue;
    const compared = comparisonWaters(bench, waters, product);
    for (const [key, { side }] of product.sides) {
      const before = comparisonsOf(bench, compared, key, side).find(
        ({ against }) => against !== 'feed',
      );
      const low = sideLimits(side, bench.settings.confidence).low;
      if (before !== undefined && low > before.limits.high) shown.add(`${device}\t${key}`);
    }
  }
  return (device, analyte) =>
    hasMineralStage(bench, device) &&
    (DISSOLVED_STONE.includes(analyte) || shown.has(`${device}\t${analyte}`));
}
