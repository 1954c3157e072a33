import type { MineralRow } from '../../model/index.ts';
import { eventName, shownWaters } from '../views/mineral-shown-waters.ts';
import type { Chart } from './draw-svg.ts';
import { type FingerprintWater, mineralFingerprintChart } from './mineral-fingerprint-chart.ts';

const MINERALS = [
  ['calcium', 'Calcium', 'mg/L'],
  ['magnesium', 'Magnesium', 'mg/L'],
  ['sodium', 'Sodium', 'mg/L'],
  ['potassium', 'Potassium', 'mg/L'],
  ['total-alkalinity', 'Alkalinity', 'mg/L as CaCO3'],
  ['chloride', 'Chloride', 'mg/L'],
  ['sulfate', 'Sulfate', 'mg/L'],
] as const;

/** A fingerprint with the event it belongs to, for a file name and a heading. */
export interface EventFingerprint {
  readonly event: string;
  readonly chart: Chart;
}

/**
 * One mineral fingerprint an event, feed first, from rows of `minerals/1`.
 *
 * @param names device names to print, by key
 * @returns none for events in which none of the minerals was tested
 */
export async function mineralFingerprints(
  rows: readonly MineralRow[],
  names: ReadonlyMap<string, string>,
): Promise<EventFingerprint[]> {
  const content = rows.filter(({ group, low }) => group === 'content' && low !== null);
  const charts: EventFingerprint[] = [];
  for (const event of new Set(content.map(eventName))) {
    const own = content.filter((row) => eventName(row) === event);
    const tested = MINERALS.filter(([key]) => own.some(({ quantity }) => quantity === key));
    const waters = shownWaters(own, names).map((water) => fingerprintOf(water.name, water.rows));
    const shown = waters.filter(({ figures }) => figures.length > 0);
    if (tested.length === 0) continue;
    const chart = await mineralFingerprintChart({
      title: `${event}: what each water holds of its minerals, every column on its own scale`,
      minerals: tested.map(([key, name, unit]) => ({ key, name, unit })),
      waters: shown,
    });
    charts.push({ event, chart });
  }
  return charts;
}

function fingerprintOf(name: string, rows: readonly MineralRow[]): FingerprintWater {
  const figures = MINERALS.flatMap(([key]) => {
    const row = rows.find(({ quantity }) => quantity === key);
    return row === undefined ? [] : [{ mineral: key, low: row.low ?? 0, high: row.high }];
  });
  return { name, figures };
}
