import { STANDARD } from '../../../model/index.ts';
import { amount, litres, spreadFigure } from '../figures.ts';
import type { NotesChart } from '../notes-chart.ts';
import {
  blocks,
  bullets,
  count,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';
import type { UseLine, UseState, WaterNotes } from '../water-notes.ts';
import { ratioTables, yearTables } from './water-tables.ts';
import { yardsticksPart } from './yardsticks.ts';

/** Drain per scenario, the advertised ratio beside it, and what a switched-off flush saves. */
export function waterUseSection(water: WaterNotes, charts: readonly NotesChart[]): Piece {
  const heading = markup('## Water to drain');
  const drained = water.states.filter(({ drain }) => drain.device.values.drain_line === 'yes');
  if (drained.length === 0) {
    return blocks([
      heading,
      markup('No device shown has a drain line, so none sends water to the drain.'),
    ]);
  }
  if (drained.every(({ drain }) => drain.model === null)) return NOTHING;
  return blocks([
    heading,
    paragraph([
      markup(
        'Total drain counts what a device sends to the drain while it produces and what its flushes add, over all pours of a scenario. The figures are those of this bench in use; they are no rating.',
      ),
      tanks(drained),
      unknown(drained),
    ]),
    bullets(water.scenarios.map((scenario) => scenarioItem(water, scenario.name))),
    ratioTables(water, drained),
    advertised(water, drained),
    yearTables(water, drained),
    ...charts.filter(({ section }) => section === 'water').map(({ image }) => image),
    flushOff(water),
    yardsticksPart(water),
    noDrain(water),
  ]);
}

/** Tanks without a description hold for one draw size; those with one are refilled in play. */
function tanks(drained: readonly UseState[]): Piece {
  const named = (own: readonly UseState[]): Piece[] =>
    [...new Map(own.map(({ drain, name }) => [drain.device.values.device, name])).values()].map(
      quoted,
    );
  const fixed = named(drained.filter(({ drain }) => drain.hasTank && drain.model !== null));
  const played = named(drained.filter(({ drain }) => drain.tank !== null && drain.model !== null));
  return paragraph([
    played.length === 0
      ? NOTHING
      : say`${listed(played)} ${markup(played.length === 1 ? 'has a storage tank whose refills are' : 'have storage tanks whose refills are')} played as tanks.csv describes them.`,
    fixed.length === 0
      ? NOTHING
      : say`${listed(fixed)} ${markup(fixed.length === 1 ? 'has a storage tank' : 'have a storage tank')}: the ratio holds for the draw size it was measured at, and smaller draws from a full tank drain more for each litre.`,
  ]);
}

function unknown(drained: readonly UseState[]): Piece {
  const names = drained
    .filter(({ drain }) => drain.model === null && drain.variant === STANDARD)
    .map(({ name }) => quoted(name));
  return names.length === 0 ? NOTHING : say`Not tested: the drain of ${listed(names)}.`;
}

/** What a scenario is, and the range of its total drain ratios. */
function scenarioItem(water: WaterNotes, name: string): Piece {
  const lines = water.lines.filter(({ row }) => row.scenario === name);
  const clean = lines.find(({ row }) => row.clean_L_per_day.estimate !== null)?.row;
  const { lowest, highest } = water.range(name);
  const daily =
    clean === undefined
      ? NOTHING
      : say` (${amount(`${name}.clean`, clean.clean_L_per_day.estimate ?? 0, 'L', 3)} of clean water a day)`;
  if (lowest === null || highest === null) return say`**${name}**${daily}: no drain is known.`;
  const text = (line: UseLine): Piece =>
    say`${spreadFigure(`${name}.ratio`, line.row.total_drain_ratio, 'L/L')} L (${line.name})`;
  const reach =
    lowest === highest
      ? say`${text(lowest)} to drain per litre of clean water`
      : say`from ${text(lowest)} to ${text(highest)} to drain per litre of clean water`;
  return say`**${name}**${daily}: ${reach}.${mostlyFlushing(lines, name)}`;
}

/** Devices that send more to the drain by flushing than while producing. */
function mostlyFlushing(lines: readonly UseLine[], scenario: string): Piece {
  const known = lines.filter(
    ({ row, drain }) =>
      drain.variant === STANDARD &&
      drain.device.values.drain_line === 'yes' &&
      row.flush_drain_L_per_day.estimate !== null,
  );
  const flushing = known.filter(
    ({ row }) =>
      (row.flush_drain_L_per_day.estimate ?? 0) > (row.producing_drain_L_per_day.estimate ?? 0),
  );
  if (flushing.length === 0) return NOTHING;
  const who =
    flushing.length <= 4
      ? listed(flushing.map(({ name }) => quoted(name)))
      : say`${count(`${scenario}.flushing`, flushing.length)} of ${count(`${scenario}.drained`, known.length)} devices with a drain line`;
  return say` More by flushing than while producing: ${who}.`;
}

/** Advertised against measured, as counts; without uncertainty no difference is claimed. */
function advertised(water: WaterNotes, drained: readonly UseState[]): Piece {
  const both = drained.filter(
    ({ drain }) =>
      drain.variant === STANDARD &&
      drain.device.values.rated_drain_ratio !== null &&
      drain.model !== null,
  );
  if (both.length === 0) return NOTHING;
  const rated = ({ drain }: UseState): number => drain.device.values.rated_drain_ratio ?? 0;
  const producing = both.filter((state) => (state.drain.model?.drainRatio ?? 0) > rated(state));
  const used = both.filter(
    (state) =>
      state.lines.length > 0 &&
      state.lines.every(({ row }) => (row.total_drain_ratio.estimate ?? 0) > rated(state)),
  );
  const inUse =
    water.scenarios.length === 0
      ? NOTHING
      : say`; with flushes, the figure of ${count('above-advertised.use', used.length)} reads higher in every scenario`;
  const caution = hasRanges(water)
    ? 'These counts are of estimates; where the advertised figure lies inside the range, the two are not told apart.'
    : 'No range was computed, so no single difference is claimed.';
  return say`Of the ${count('advertised', both.length)} devices with an advertised and a measured ratio, ${count('above-advertised.producing', producing.length)} read higher than advertised while producing${inUse}. ${markup(caution)}`;
}

/** True where the figures carry a range. */
function hasRanges(water: WaterNotes): boolean {
  return water.lines.some(({ row }) => row.total_drain_ratio.low !== null);
}

/** What switching flushes off changes in a year, scenario by scenario. */
function flushOff(water: WaterNotes): Piece {
  const rows = water.states.flatMap((off) => {
    if (off.drain.variant === STANDARD || off.drain.rulesOff.length === 0) return [];
    const on = water.states.find(
      ({ drain }) => drain.device === off.drain.device && drain.variant === STANDARD,
    );
    return off.lines.flatMap(({ row }) => {
      const before = on?.lines.find((line) => line.row.scenario === row.scenario)?.row;
      const from = before?.drain_L_per_year.estimate ?? null;
      const to = row.drain_L_per_year.estimate;
      if (on === undefined || before === undefined || from === null || to === null) return [];
      const key = `${off.name}.${row.scenario}`;
      return [
        [
          quoted(on.name),
          joined(off.drain.rulesOff.map(quoted), ', '),
          quoted(row.scenario),
          spreadFigure(`${key}.on`, before.drain_L_per_year, 'L'),
          spreadFigure(`${key}.off`, row.drain_L_per_year, 'L'),
          from > to ? litres(`${key}.saved`, from - to) : markup('nothing'),
        ],
      ];
    });
  });
  return rows.length === 0
    ? NOTHING
    : tablePiece({
        caption: markup('What switching a flush off saves: drain in a year, L'),
        columns: [
          left('Device'),
          left('Off'),
          left('Scenario'),
          right('With the flush'),
          right('Without'),
          right('Saved'),
        ],
        rows,
        legend: [
          markup(
            'All other figures of the device are kept. The first water after a pause may carry more dissolved solids then; where that was read, the part on pauses sets both side by side.',
          ),
        ],
      });
}

function noDrain(water: WaterNotes): Piece {
  const names = water.states
    .filter(({ drain }) => drain.device.values.drain_line === 'no' && drain.variant === STANDARD)
    .map(({ name }) => quoted(name));
  return names.length === 0
    ? NOTHING
    : say`Without a drain line, and so without drain: ${listed(names)}.`;
}
