import type { MineralRow } from '../../model/index.ts';
import type { View, ViewColumn } from '../view.ts';
import { guidanceViews } from './mineral-guidance-views.ts';
import { indexView } from './mineral-index-view.ts';
import { figureOf, type ShownWater, shownWaters } from './mineral-shown-waters.ts';
import { gainView, rejectionView } from './mineral-stage-views.ts';
import { intervalText } from './mineral-words.ts';

const LEFT = 'left';
const RIGHT = 'right';

/** The tables of minerals: content, hardness, guidance, gains, rejection, indices. */
export function mineralsViews(
  rows: readonly MineralRow[],
  names: ReadonlyMap<string, string>,
): View[] {
  if (rows.length === 0) {
    return [{ caption: 'No minerals were tested', columns: [], rows: [], legend: [] }];
  }
  const waters = shownWaters(rows, names);
  const of = (group: MineralRow['group']) => rows.filter((row) => row.group === group);
  return [
    contentView(waters),
    hardnessView(waters),
    ...guidanceViews(waters),
    gainView(of('gain'), names),
    rejectionView([...of('reduction'), ...of('rejection')], names),
    indexView(waters),
  ].flatMap((view) => (view.rows.length === 0 ? [] : [view]));
}

/** Columns of the content of a water, in order. */
export const CONTENT = [
  ['calcium', 'Ca, mg/L'],
  ['magnesium', 'Mg, mg/L'],
  ['sodium', 'Na, mg/L'],
  ['potassium', 'K, mg/L'],
  ['total-alkalinity', 'Alkalinity, mg/L as CaCO3'],
  ['bicarbonate', 'Bicarbonate, mg/L as HCO3'],
  ['total-dissolved-solids', 'TDS, mg/L'],
  ['ph', 'pH'],
  ['fluoride', 'Fluoride, mg/L'],
] as const;

function contentView(waters: readonly ShownWater[]): View {
  const shown = waters.filter((water) =>
    CONTENT.some(([key]) => key !== 'ph' && figureOf(water, key, 'content') !== undefined),
  );
  return {
    caption: `Minerals of ${shown.length} waters: what each feed brings and each product keeps`,
    columns: [
      { head: 'Event', align: LEFT },
      { head: 'Water', align: LEFT },
      ...CONTENT.map(([, head]): ViewColumn => ({ head, align: RIGHT })),
    ],
    rows: shown.map((water) => [
      water.event,
      water.name,
      ...CONTENT.map(([key]) => contentText(figureOf(water, key, 'content'))),
    ]),
    legend: [
      '<: not detected, below the limit shown; a dash: not tested.',
      '*: not measured, calculated from the ions. Bicarbonate is measured, or from alkalinity and pH.',
    ],
  };
}

function contentText(row: MineralRow | undefined): string {
  if (row === undefined) return '-';
  const isCalculated = row.method?.startsWith('calculated') === true;
  return `${intervalText(row)}${isCalculated ? ' *' : ''}`;
}

function hardnessView(waters: readonly ShownWater[]): View {
  const found = waters.flatMap((water) => {
    const row = figureOf(water, 'total-hardness', 'content');
    return row === undefined ? [] : [{ water, row }];
  });
  const units = found[0]?.row.other_units.map(({ unit }) => unit) ?? [];
  return {
    caption: 'Hardness in all common units',
    columns: [
      { head: 'Event', align: LEFT },
      { head: 'Water', align: LEFT },
      { head: 'mg/L as CaCO3', align: RIGHT },
      ...units.map((unit): ViewColumn => ({ head: HARDNESS_HEADS[unit] ?? unit, align: RIGHT })),
    ],
    rows: found.map(({ water, row }) => [
      water.event,
      water.name,
      intervalText(row),
      ...row.other_units.map((figure) => intervalText(figure)),
    ]),
    legend: [
      '°dH: 10 mg/L as CaO. °fH: 10 mg/L as CaCO3. °e: English degree (Clark), a grain in an imperial gallon. gpg: a grain in a US gallon.',
    ],
  };
}

const HARDNESS_HEADS: Readonly<Record<string, string>> = {
  degdH: '°dH',
  degfH: '°fH',
  degClark: '°e (Clark)',
};
