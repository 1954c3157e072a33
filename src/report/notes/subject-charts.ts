import { costChart } from '../charts/cost-chart.ts';
import { drainRegionsChart } from '../charts/drain-regions-chart.ts';
import { idleRiseChart } from '../charts/idle-rise-chart.ts';
import { mineralFingerprints } from '../charts/mineral-fingerprint.ts';
import { significant } from '../format-number.ts';
import { durationText } from '../format-quantity.ts';
import { moneyText } from '../views/costs-view.ts';
import { ratio } from './figures.ts';
import { type IdleGroup, idleGroups } from './idle-groups.ts';
import { contentPiece, mineralRows, watersByEvent } from './mineral-waters.ts';
import { type NotesChart, noted, suffix } from './notes-chart.ts';
import type { NotesInput } from './notes-input.ts';
import { count, figure, joined, listed, markup, NOTHING, type Piece, say } from './piece.ts';
import { regionFields } from './sections/regions.ts';
import { isRecurring, type SpentCurve, spentCurves } from './sections/spent-table.ts';
import { deviceNames, stateNames } from './subjects.ts';

/** The fields of pour sizes and pours a day, marked by the device that drains least. */
export async function regionCharts(input: NotesInput): Promise<NotesChart[]> {
  const name = stateNames(input.bench);
  const charts: NotesChart[] = [];
  for (const { form, who, rows } of regionFields(input)) {
    const regions = rows.map((row) => ({
      pourMl: row.pour_mL,
      poursPerDay: row.pours_per_day,
      name: name(row.device, row.variant),
      ratio: row.total_drain_ratio.estimate,
      isToldApart: row.told_apart,
    }));
    const chart = await drainRegionsChart({
      title: `Which of the ${who} drains least, by pour size and pours a day`,
      regions,
    });
    const path = `charts/drain-regions${form === null ? '' : `-${form}`}.svg`;
    const labels = [...new Set(regions.map((region) => region.name))];
    const told = labels.map(
      (label) =>
        say`${label} in ${count(`chart.${label}`, regions.filter((region) => region.name === label).length)}`,
    );
    const ratios = regions.flatMap((region) => region.ratio ?? []);
    const range =
      ratios.length === 0
        ? NOTHING
        : say` Ratios from ${ratio('chart.regions', Math.min(...ratios))} to ${ratio('chart.regions', Math.max(...ratios))}.`;
    const alternative = say`Chart. Which of the ${markup(who)} drains least, over ${count('chart.cells', rows.length)} pairs of pour size and pours a day: ${listed(told)}.${range}`;
    charts.push(noted(path, `regions${form ?? ''}`, chart, alternative));
  }
  return charts;
}

/** One fingerprint an occasion. */
export async function mineralCharts(input: NotesInput): Promise<NotesChart[]> {
  const prints = await mineralFingerprints(mineralRows(input), deviceNames(input.bench));
  const waters = watersByEvent(input);
  return prints
    .filter(({ event }) => (waters.get(event)?.length ?? 0) > 0)
    .map(({ event, chart }, i) => {
      const own = waters.get(event) ?? [];
      const [first] = own;
      const holds =
        first === undefined
          ? NOTHING
          : say` ${first.name}: calcium ${contentPiece(first, 'calcium')} mg/L, magnesium ${contentPiece(first, 'magnesium')} mg/L, sodium ${contentPiece(first, 'sodium')} mg/L.`;
      const alternative = say`Chart. Minerals of ${count('chart.waters', own.length)} waters, ${event}, as bars, one row a water and one column a mineral.${holds} All figures: the table above.`;
      return noted(`charts/minerals${suffix(i)}.svg`, 'mineral-prints', chart, alternative);
    });
}

/** First readings against the pause, one chart a meter and scale with a line to draw. */
export async function idleCharts(input: NotesInput): Promise<NotesChart[]> {
  const name = stateNames(input.bench);
  const charts: NotesChart[] = [];
  for (const group of idleGroups(input)) {
    const labels = [...new Set(group.pauses.map((row) => name(row.device, row.variant)))];
    const curves = labels.map((label) => ({
      name: label,
      points: group.pauses.flatMap((row) =>
        name(row.device, row.variant) !== label ||
        row.idle_s === null ||
        row.first_draw_tds === null
          ? []
          : { pauseS: row.idle_s, reading: row.first_draw_tds },
      ),
    }));
    if (!curves.some(({ points }) => points.length > 1)) continue;
    const chart = await idleRiseChart({
      title: `First reading after a pause, by the length of the pause: ${group.label}`,
      unit: group.unit,
      curves,
    });
    const path = `charts/idle-rise${suffix(charts.length)}.svg`;
    charts.push(noted(path, `idle.${group.id}`, chart, idleAlternative(group, curves)));
  }
  return charts;
}

function idleAlternative(
  group: IdleGroup,
  curves: readonly {
    readonly name: string;
    readonly points: readonly { readonly pauseS: number; readonly reading: number }[];
  }[],
): Piece {
  const told = curves.flatMap(({ name, points }) => {
    const last = points.at(-1);
    if (last === undefined) return [];
    const reading = figure('chart.idle', last.reading, group.unit, significant(last.reading, 3));
    return say`${name} ${reading} after ${figure('chart.pause', last.pauseS, 's', durationText(last.pauseS))}`;
  });
  return say`Chart. First reading after a pause, ${group.title}, lines: ${count('chart.lines', curves.length)}. Last of each: ${joined(told, '; ')}.`;
}

/** Money spent over the years in the first scenario; nothing where no cost recurs. */
export async function costCharts(input: NotesInput): Promise<NotesChart[]> {
  const curves = spentCurves(input);
  const first = curves[0]?.points[0];
  if (first === undefined || !curves.some(isRecurring)) return [];
  const name = stateNames(input.bench);
  const chart = await costChart({
    title: `What each device has cost by when: ${first.scenario}`,
    currency: first.currency ?? '',
    curves: curves.map(({ device, variant, isWhole, points }) => ({
      name: name(device, variant),
      isWhole,
      points: points.map(({ year, spent }) => ({ year, amount: spent })),
    })),
  });
  return [noted('charts/costs.svg', 'costs', chart, costAlternative(input, curves))];
}

function costAlternative(input: NotesInput, curves: readonly SpentCurve[]): Piece {
  const name = stateNames(input.bench);
  const ends = curves
    .flatMap((curve) => {
      const last = curve.points.at(-1);
      return last === undefined ? [] : { curve, last };
    })
    .sort((a, b) => a.last.spent - b.last.spent);
  const text = ({ curve, last }: (typeof ends)[number]): Piece => {
    const currency = last.currency ?? 'money';
    const sum = curve.isWhole ? moneyText(last.spent) : `at least ${moneyText(last.spent, 'down')}`;
    return say`${figure('chart.spent', last.spent, currency, sum)} ${currency} (${name(curve.device, curve.variant)})`;
  };
  const [low] = ends;
  const high = ends.at(-1);
  const range =
    low === undefined || high === undefined
      ? markup('none')
      : say`from ${text(low)} to ${text(high)}`;
  return say`Chart. Money spent over the years, lines: ${count('chart.cost-lines', curves.length)}. In the end ${range}.`;
}
