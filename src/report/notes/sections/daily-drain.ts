import { STANDARD, type WaterCurveRow } from '../../../model/index.ts';
import { dailyDrainChart } from '../../charts/daily-drain-chart.ts';
import { pour, spreadFigure } from '../figures.ts';
import { type NotesChart, noted } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import { blocks, count, markup, NOTHING, type Piece, say } from '../piece.ts';
import { stateNames } from '../subjects.ts';

const SECTION = 'daily';

function dailyRows(input: NotesInput): readonly WaterCurveRow[] {
  const rows = input.outcomes.dailyCurve.rows as readonly WaterCurveRow[];
  return rows.filter(({ total_drain_ratio }) => total_drain_ratio !== null);
}

/** Drain and recovery against pours a day of one size, at random times. */
export async function dailyCharts(input: NotesInput): Promise<NotesChart[]> {
  const rows = dailyRows(input);
  const [first] = rows;
  if (first === undefined) return [];
  const name = stateNames(input.bench);
  const labels = [...new Set(rows.map((row) => name(row.device, row.variant)))];
  const chart = await dailyDrainChart({
    title: `Drain and recovery by pours a day, in pours of ${first.pour_mL} mL at random`,
    curves: labels.map((label) => ({
      name: label,
      points: rows
        .filter((row) => name(row.device, row.variant) === label)
        .map(({ pours_per_day, total_drain_ratio, low, high }) => ({
          perDay: pours_per_day ?? 0,
          ratio: total_drain_ratio,
          low,
          high,
        })),
    })),
  });
  const alternative = say`Chart. Litres to drain per litre of clean water, and recovery, against pours a day: ${count('chart.daily', labels.length)} lines. ${ends(input)}`;
  return [noted('charts/drain-by-pours-a-day.svg', SECTION, chart, alternative)];
}

/** What pours a day change, and the chart of it. */
export function dailyPart(input: NotesInput, charts: readonly NotesChart[]): Piece {
  const [first] = dailyRows(input);
  if (first === undefined) return NOTHING;
  return blocks([
    markup('### By pours a day'),
    say`Pours of ${pour('daily', first.pour_mL)} at random through the day, so many on average: the more there are, the more of them may share a flush. ${ends(input)} Ranges hold the spread of years.`,
    ...charts.filter(({ section }) => section === SECTION).map(({ image }) => image),
  ]);
}

/** Lowest and highest at the fewest and at the most pours a day, in the standard state. */
function ends(input: NotesInput): Piece {
  const rows = dailyRows(input).filter(({ variant }) => variant === STANDARD);
  const counts = rows.map(({ pours_per_day }) => pours_per_day ?? 0);
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  if (rows.length === 0) return NOTHING;
  return least === most
    ? endAt(input, rows, least)
    : say`${endAt(input, rows, least)} ${endAt(input, rows, most)}`;
}

function endAt(input: NotesInput, rows: readonly WaterCurveRow[], perDay: number): Piece {
  const name = stateNames(input.bench);
  const found = rows
    .filter(({ pours_per_day }) => pours_per_day === perDay)
    .sort((a, b) => (a.total_drain_ratio ?? 0) - (b.total_drain_ratio ?? 0));
  const [low, high] = [found[0], found.at(-1)];
  if (low === undefined || high === undefined) return NOTHING;
  const text = (row: WaterCurveRow): Piece => {
    const { low: from, total_drain_ratio: estimate, high: to } = row;
    const key = `daily.${perDay}.${row.device}`;
    return say`${spreadFigure(key, { low: from, estimate, high: to }, 'L/L')} L (${name(row.device, row.variant)})`;
  };
  const range = low === high ? text(low) : say`from ${text(low)} to ${text(high)}`;
  return say`With ${count(`daily.${perDay}`, perDay)} a day ${range} to drain per litre of clean water.`;
}
