import type { WaterCurveRow } from '../../model/index.ts';
import { STANDARD } from '../../model/index.ts';
import { drainCurveChart } from '../charts/drain-curve-chart.ts';
import { reductionsChart } from '../charts/reductions-chart.ts';
import { yearlyDrainChart } from '../charts/yearly-drain-chart.ts';
import { summaryText } from '../views/index.ts';
import { type AnalyteFacts, isOf, type ReductionNotes } from './analyte-facts.ts';
import { analyteGroups } from './analyte-words.ts';
import { hasCurve, isolatedRows } from './curve-rows.ts';
import { litres, pour, ratio } from './figures.ts';
import { type NotesChart, noted, suffix } from './notes-chart.ts';
import type { NotesInput } from './notes-input.ts';
import { count, listed, markup, NOTHING, type Piece, quoted, say } from './piece.ts';
import { dailyCharts } from './sections/daily-drain.ts';
import { DAYS_OF_YEAR } from './sections/water-tables.ts';
import { costCharts, idleCharts, mineralCharts, regionCharts } from './subject-charts.ts';
import { deviceNames, subjectName } from './subjects.ts';
import type { WaterNotes } from './water-notes.ts';

const PANELS = 8;
const SCENARIOS = 4;

/** All charts of the notes; those with nothing to show are left out. */
export async function notesCharts(
  input: NotesInput,
  notes: ReductionNotes,
  water: WaterNotes,
): Promise<NotesChart[]> {
  return [
    ...(await reductionCharts(notes)),
    ...(await drainCharts(water)),
    ...(await curveCharts(input)),
    ...(await dailyCharts(input)),
    ...(await regionCharts(input)),
    ...(await mineralCharts(input)),
    ...(await idleCharts(input)),
    ...(await costCharts(input)),
  ];
}

async function reductionCharts(notes: ReductionNotes): Promise<NotesChart[]> {
  const charts: NotesChart[] = [];
  for (const { group, items } of analyteGroups(notes.analytes)) {
    const shown = items.filter(hasMark);
    const size = Math.ceil(shown.length / Math.ceil(shown.length / PANELS));
    for (let first = 0; first < shown.length; first += size) {
      const part = shown.slice(first, first + size);
      const path = `charts/reductions-${group.id}${suffix(first / size)}.svg`;
      const chart = await reductionsChart({
        title: `${group.title}: reductions by device; bounds rank no device`,
        analytes: part.map(({ analyte }) => ({ key: analyte.key, name: analyte.name })),
        devices: notes.states.map((state) => ({
          key: `${state.key}\t${state.variant}`,
          name: state.name,
        })),
        reductions: marksOf(notes, part),
      });
      charts.push(noted(path, group.id, chart, reductionsAlternative(group.title, notes, part)));
    }
  }
  return charts;
}

/** True where a device shows something: an analyte without any is left to the table. */
function hasMark(facts: AnalyteFacts): boolean {
  return facts.devices.some(
    ({ summary }) =>
      summary !== null && summary.outcome !== 'untested' && summary.outcome !== 'untestable',
  );
}

function marksOf(notes: ReductionNotes, part: readonly AnalyteFacts[]) {
  const keys = new Set(part.map(({ analyte }) => analyte.key));
  return notes.summaries.flatMap((summary) => {
    const state = notes.states.find((each) => isOf(summary, each));
    if (state === undefined || !keys.has(summary.analyte.key)) return [];
    return {
      analyte: summary.analyte.key,
      device: `${state.key}\t${state.variant}`,
      outcome: summary.outcome,
      firm: summary.facts.every(({ row }) => row.firm),
      low: summary.low,
      estimate: summary.estimate,
      high: summary.high,
      shown: summaryText(summary),
    };
  });
}

function reductionsAlternative(
  title: string,
  notes: ReductionNotes,
  part: readonly AnalyteFacts[],
): Piece {
  const marks = marksOf(notes, part);
  const of = (...outcomes: readonly string[]): number =>
    marks.filter(({ outcome }) => outcomes.includes(outcome)).length;
  return say`Chart. ${markup(title)}: ${listed(part.map(({ analyte }) => quoted(analyte.name)))}, one row a device. Pairs with a reduction or its bounds: ${count('chart.reduced', of('measured', 'at-least', 'between'))}; with none shown: ${count('chart.not-shown', of('not-shown'))}; with a rise: ${count('chart.rises', of('rise'))}.`;
}

async function drainCharts(water: WaterNotes): Promise<NotesChart[]> {
  const drained = water.lines.filter(({ drain }) => drain.device.values.drain_line === 'yes');
  const known = drained.filter(({ row }) => row.drain_L_per_year.estimate !== null);
  const scenarios = water.scenarios.filter(({ name }) =>
    known.some(({ row }) => row.scenario === name),
  );
  const charts: NotesChart[] = [];
  for (let first = 0; first < scenarios.length; first += SCENARIOS) {
    const part = scenarios.slice(first, first + SCENARIOS);
    const lines = part.flatMap(({ name }) => drained.filter(({ row }) => row.scenario === name));
    const year = (perDay: number | null): number | null =>
      perDay === null ? null : perDay * DAYS_OF_YEAR;
    const chart = await yearlyDrainChart({
      title: 'Drain in a year while producing and by flushing: the split changes with the scenario',
      rows: lines.map(({ name, row }) => ({
        scenario: row.scenario,
        device: name,
        producingL: year(row.producing_drain_L_per_day.estimate),
        flushingL: year(row.flush_drain_L_per_day.estimate),
      })),
    });
    const path = `charts/yearly-drain${suffix(first / SCENARIOS)}.svg`;
    const told = part.map(({ name }) => drainAlternative(water, name));
    charts.push(
      noted(
        path,
        'water',
        chart,
        say`Chart. Drain in a year by device, while producing and by flushing. ${listed(told, 'and')}.`,
      ),
    );
  }
  return charts;
}

function drainAlternative(water: WaterNotes, scenario: string): Piece {
  const { lowest, highest } = water.range(scenario);
  if (lowest === null || highest === null) return say`${scenario}: see the table`;
  const text = (line: typeof lowest): Piece =>
    say`${litres(`chart.${scenario}`, line.row.drain_L_per_year.estimate)} L (${line.name})`;
  return lowest === highest
    ? say`${scenario}: ${text(lowest)}`
    : say`${scenario}: ${text(lowest)} to ${text(highest)}`;
}

async function curveCharts(input: NotesInput): Promise<NotesChart[]> {
  const names = deviceNames(input.bench);
  const rows = isolatedRows(input);
  const curves = input.curves
    .filter((curve) => hasCurve(input, curve))
    .map(({ drain }) => {
      const { device } = drain.device.values;
      const points = rows.filter((row) => row.device === device && row.variant === drain.variant);
      return {
        name: subjectName(names.get(device) ?? device, drain.variant),
        points: points.map((row) => ({ pourMl: row.pour_mL, ratio: row.total_drain_ratio })),
      };
    });
  if (curves.length === 0) return [];
  const chart = await drainCurveChart({
    title: 'Small pours drain more for each litre: total drain ratio of a pour that stands alone',
    curves,
  });
  return [noted('charts/drain-curve.svg', 'curves', chart, curveAlternative(rows, curves.length))];
}

function curveAlternative(rows: readonly WaterCurveRow[], curves: number): Piece {
  const at = (size: number): Piece => {
    const ratios = rows
      .filter((row) => row.pour_mL === size && row.variant === STANDARD)
      .flatMap((row) => row.total_drain_ratio ?? []);
    if (ratios.length === 0) return NOTHING;
    const low = ratio(`chart.${size}`, Math.min(...ratios));
    const high = ratio(`chart.${size}`, Math.max(...ratios));
    return low.markdown === high.markdown
      ? say` At ${pour('chart.size', size)}: ${low}.`
      : say` At ${pour('chart.size', size)}: from ${low} to ${high}.`;
  };
  const sizes = [...new Set(rows.map((row) => row.pour_mL))];
  return say`Chart. Litres to drain per litre of clean water against pour size, curves: ${count('chart.curves', curves)}.${at(Math.min(...sizes))}${at(Math.max(...sizes))}`;
}
