import type { WaterUseRow } from '../../model/index.ts';
import { significant } from '../format-number.ts';
import type { View } from '../view.ts';

/** The refills of storage tanks that tanks.csv describes; no table without one. */
export function tankViews(rows: readonly WaterUseRow[]): View[] {
  const tanks = rows.flatMap((row) => (row.tank === null ? [] : { row, tank: row.tank }));
  if (tanks.length === 0) return [];
  const short = tanks.filter(({ tank }) => tank.shortfall_L_per_day > 0).length;
  return [
    {
      caption:
        `Refills of storage tanks: ${short === 0 ? 'no scenario draws' : `${short} of ${tanks.length} draw`} ` +
        'more than the tank holds and makes in time',
      columns: [
        { head: 'Device', align: 'left' },
        { head: 'Variant', align: 'left' },
        { head: 'Scenario', align: 'left' },
        { head: 'Fillings a day', align: 'right' },
        { head: 'Made, L/day', align: 'right' },
        { head: 'Drain per litre made', align: 'right' },
        { head: 'Drain per litre drawn', align: 'right' },
        { head: 'Short, L/day', align: 'right' },
      ],
      rows: tanks.map(({ row, tank }) => [
        row.device,
        row.variant,
        row.scenario,
        significant(tank.starts_per_day, 2),
        significant(tank.made_L_per_day, 3),
        tank.drain_per_made === null ? 'nothing made' : significant(tank.drain_per_made, 3),
        tank.drain_per_drawn === null ? 'nothing drawn' : significant(tank.drain_per_drawn, 3),
        significant(tank.shortfall_L_per_day, 3),
      ]),
      legend: [
        'Made and drawn differ where the tank ends fuller or emptier than it began; the tables above make both ends equal.',
        'Small draws from a nearly full tank cost most, as they are made against the pressure of the tank.',
      ],
    },
  ];
}
