import type { DrainRegionRow } from '../../../model/index.ts';
import { pour, spreadFigure } from '../figures.ts';
import type { NotesChart } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

export function regionRows(input: NotesInput): readonly DrainRegionRow[] {
  return input.outcomes.regions.rows as readonly DrainRegionRow[];
}

/** Which device drains least at which pour size and number of pours a day. */
export function regionsPart(input: NotesInput, charts: readonly NotesChart[]): Piece {
  const rows = regionRows(input);
  if (!hasRivals(input)) return NOTHING;
  return blocks([
    markup('### Which drains least where'),
    regionsSummary(input, rows),
    ...charts.filter(({ section }) => section === 'regions').map(({ image }) => image),
    regionsTable(input, rows),
  ]);
}

/** With a single device there is nothing to compare. */
export function hasRivals({ curves }: NotesInput): boolean {
  const devices = curves.flatMap(({ drain, isolated }) =>
    isolated === null ? [] : drain.device.values.device,
  );
  return new Set(devices).size > 1;
}

function contenders(rows: readonly DrainRegionRow[]): Set<string> {
  return new Set(rows.map(({ device, variant }) => JSON.stringify([device, variant])));
}

function regionsSummary(input: NotesInput, rows: readonly DrainRegionRow[]): Piece {
  const name = stateNames(input.bench);
  const told = [...contenders(rows)].flatMap((key) => {
    const own = rows.filter(({ device, variant }) => JSON.stringify([device, variant]) === key);
    const [first] = own;
    if (first === undefined) return [];
    const firm = own.filter(({ told_apart }) => told_apart === true).length;
    const label = name(first.device, first.variant);
    return say`${label} in ${count(`${label}.cells`, own.length)} of ${count('cells', rows.length)} (told apart from every other in ${count(`${label}.firm`, firm)})`;
  });
  return say`Among devices with a drain line and without a tank, with even pours from morning to evening, lowest by estimate: ${listed(told)}.`;
}

function regionsTable(input: NotesInput, rows: readonly DrainRegionRow[]): Piece {
  const name = stateNames(input.bench);
  const sizes = [...new Set(rows.map(({ pour_mL }) => pour_mL))];
  const counts = [...new Set(rows.map(({ pours_per_day }) => pours_per_day))];
  return tablePiece({
    caption: markup('Lowest drain by pour size and pours a day, litres per litre of clean water'),
    columns: [
      right('Pour'),
      ...counts.map((perDay) => left(say`${count('per-day', perDay)} a day`)),
    ],
    rows: sizes.map((size) => [
      pour('size', size),
      ...counts.map((perDay) => {
        const row = rows.find((each) => each.pour_mL === size && each.pours_per_day === perDay);
        if (row === undefined) return NOTHING;
        const key = `${size}.${perDay}`;
        const others = row.not_told_apart_from;
        const more = others.length === 0 ? NOTHING : say`, or ${joined(others.map(quoted), ', ')}`;
        return say`${name(row.device, row.variant)} ${spreadFigure(key, row.total_drain_ratio, 'L/L')}${more}`;
      }),
    ]),
    legend: [
      markup(
        '“Or”: not told apart from these, by the codes of the files. Lowest drain says nothing of what a device reduces, and nothing of its cost.',
      ),
    ],
  });
}
