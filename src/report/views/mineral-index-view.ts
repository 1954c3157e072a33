import type { MineralRow } from '../../model/index.ts';
import type { View, ViewColumn } from '../view.ts';
import { figureOf, type ShownWater } from './mineral-shown-waters.ts';

const LEFT = 'left';
const RIGHT = 'right';

export const INDICES = [
  ['langelier-index', 'Langelier'],
  ['ryznar-index', 'Ryznar'],
  ['puckorius-index', 'Puckorius'],
  ['calcite-saturation-index', 'Saturation index'],
  ['ccpp', 'CCPP, mg/L as CaCO3'],
  ['aggressiveness-index', 'Aggressiveness'],
  ['larson-ratio', 'Larson'],
  ['chloride-sulfate-mass-ratio', 'Chloride/sulfate'],
] as const;

/** Corrosion and scaling indices, one line a water. */
export function indexView(waters: readonly ShownWater[]): View {
  const shown = waters.filter((water) => water.rows.some(({ group }) => group === 'index'));
  return {
    caption: 'Corrosion and scaling: indices say little on very dilute water',
    columns: [
      { head: 'Event', align: LEFT },
      { head: 'Water', align: LEFT },
      ...INDICES.map(([, head]): ViewColumn => ({ head, align: RIGHT })),
      { head: 'Remarks', align: LEFT },
    ],
    rows: shown.map((water) => [
      water.event,
      water.name,
      ...INDICES.map(([key]) => indexText(figureOf(water, key, 'index'))),
      indexRemarks(water),
    ]),
    legend: [
      'Langelier, Ryznar and Puckorius (made for cooling water): logarithmic form. Saturation index and precipitation potential (CCPP, positive precipitates): equilibrium form without ion pairs, closed system. Forms differ by up to 0.3 on one water.',
      'Very dilute: ionic strength may be below 0.001 mol/L. Below range: the figure would rest on the limits of the lab. A pH that is off by 0.1 moves an index by 0.1.',
      'Metal: such water can take up lead, copper and nickel from taps, fittings and lines behind the device. Parts meant for purified water, and letting the first water run off, reduce that; a sample from the tap shows it.',
    ],
  };
}

/** An index as an interval, two decimals; a dash where there is none. */
export function indexText(row: MineralRow | undefined): string {
  if (row === undefined) return '-';
  if (row.low === null && row.high === null) {
    return row.reason?.startsWith('below range') === true ? 'below range' : '-';
  }
  const low = fixed(row.low ?? 0);
  if (row.high === null) return `at least ${low}`;
  const high = fixed(row.high);
  return low === high ? low : `${low} to ${high}`;
}

function fixed(value: number): string {
  const text = value.toFixed(2);
  return text === '-0.00' ? '0.00' : text;
}

/** What to bear in mind about the indices of a water, and why some are missing. */
export function indexRemarks(water: ShownWater): string {
  const rows = water.rows.filter(({ group }) => group === 'index');
  const has = (note: MineralRow['notes'][number]) => rows.some(({ notes }) => notes.includes(note));
  const missing = [
    ...new Set(
      rows.flatMap(({ low, high, reason }) =>
        low === null && high === null && reason !== null && !reason.startsWith('below range')
          ? reason.split(', ')
          : [],
      ),
    ),
  ];
  return [
    ...(has('very-low-ionic-strength') ? ['very dilute'] : []),
    ...(has('metal-parts-downstream') ? ['metal'] : []),
    ...missing,
  ].join('; ');
}
