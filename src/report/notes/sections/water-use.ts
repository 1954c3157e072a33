import { STANDARD } from '../../../model/index.ts';
import { amount, litres, number, ratio } from '../figures.ts';
import type { NotesChart } from '../notes-charts.ts';
import type { NotesInput } from '../notes-input.ts';
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

const TANK_MARK = markup(' \\[t\\]');

/** Drain per scenario, the advertised ratio beside it, and what a switched-off flush saves. */
export function waterUseSection(
  input: NotesInput,
  water: WaterNotes,
  charts: readonly NotesChart[],
): Piece {
  const heading = markup('## Water to drain');
  const drained = water.states.filter(({ drain }) => drain.device.values.drain_line === 'yes');
  if (drained.length === 0) {
    return blocks([
      heading,
      markup('No device shown has a drain line, so none sends water to the drain.'),
    ]);
  }
  if (drained.every(({ drain }) => drain.model === null)) {
    return blocks([
      heading,
      markup(
        'The drain of no device is known: no production run was measured. It is not tested, which is not zero.',
      ),
      advertisedOnly(drained),
    ]);
  }
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
    ratioTable(water, drained),
    advertised(water, drained),
    flushOff(water),
    yearTable(water, drained),
    ...charts.filter(({ section }) => section === 'water').map(({ image }) => image),
    noDrain(input, water),
  ]);
}

function tanks(drained: readonly UseState[]): Piece {
  const names = [
    ...new Map(
      drained
        .filter(({ drain }) => drain.hasTank && drain.model !== null)
        .map(({ drain, name }) => [drain.device.values.device, name]),
    ).values(),
  ];
  return names.length === 0
    ? NOTHING
    : say`${listed(names.map(quoted))} ${markup(names.length === 1 ? 'has a storage tank' : 'have a storage tank')}: the ratio holds for the draw size it was measured at, and smaller draws from a full tank drain more for each litre.`;
}

function unknown(drained: readonly UseState[]): Piece {
  const names = drained
    .filter(({ drain }) => drain.model === null && drain.variant === STANDARD)
    .map(({ name }) => quoted(name));
  return names.length === 0 ? NOTHING : say`Not tested: the drain of ${listed(names)}.`;
}

function advertisedOnly(drained: readonly UseState[]): Piece {
  const rated = drained.filter(({ drain }) => drain.device.values.rated_drain_ratio !== null);
  return rated.length === 0
    ? NOTHING
    : markup('An advertised ratio exists and does not stand in for a measured one.');
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
    say`${ratio(`${name}.ratio`, line.row.total_drain_ratio.estimate)} L (${line.name})`;
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

function ratioTable(water: WaterNotes, drained: readonly UseState[]): Piece {
  const hasTank = drained.some(({ drain }) => drain.hasTank);
  return tablePiece({
    caption: markup(
      'Litres to drain per litre of clean water: as advertised, while producing, and in use with flushes',
    ),
    columns: [
      left('Device'),
      right('Advertised'),
      right('While producing'),
      ...water.scenarios.map(({ name }) => right(quoted(name))),
    ],
    rows: drained.map(({ name, drain, lines }) => [
      drain.hasTank ? say`${name}${TANK_MARK}` : quoted(name),
      advertisedCell(drain.device.values.rated_drain_ratio, drain.variant),
      ratio(`${name}.producing`, drain.model?.drainRatio ?? null),
      ...water.scenarios.map((scenario) =>
        ratio(
          `${name}.${scenario.name}`,
          lines.find(({ row }) => row.scenario === scenario.name)?.row.total_drain_ratio.estimate ??
            null,
        ),
      ),
    ]),
    legend: [
      markup(
        'Advertised: as stated by the maker, under conditions of the maker’s own; no figure of this bench rests on it.',
      ),
      ...(hasTank
        ? [markup('\\[t\\] storage tank: holds for the draw size it was measured at.')]
        : []),
    ],
  });
}

function advertisedCell(rated: number | null, variant: string): Piece {
  if (variant !== STANDARD) return NOTHING;
  return rated === null ? markup('not stated') : ratio('advertised', rated);
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
    ? 'The range of each figure stands in [tables/water-use.csv](tables/water-use.csv); no single difference is claimed here.'
    : 'The uncertainty of the measurement is not yet considered, so no single difference is claimed.';
  return say`Of the ${count('advertised', both.length)} devices with an advertised and a measured ratio, ${count('above-advertised.producing', producing.length)} read higher than advertised while producing${inUse}. ${markup(caution)}`;
}

/** True where the figures carry a range. */
function hasRanges(water: WaterNotes): boolean {
  return water.lines.some(({ row }) => row.total_drain_ratio.low !== null);
}

/** What switching flushes off changes in a year, scenario by scenario. */
function flushOff(water: WaterNotes): Piece {
  const items = water.states.flatMap((off) => {
    if (off.drain.variant === STANDARD || off.drain.rulesOff.length === 0) return [];
    const on = water.states.find(
      ({ drain }) => drain.device === off.drain.device && drain.variant === STANDARD,
    );
    const parts = off.lines.flatMap(({ row }) => {
      const before = on?.lines.find((line) => line.row.scenario === row.scenario)?.row;
      const from = before?.drain_L_per_year.estimate ?? null;
      const to = row.drain_L_per_year.estimate;
      if (from === null || to === null) return [];
      if (!(to < from)) return say`no less of ${row.scenario}`;
      const key = `${off.name}.${row.scenario}`;
      return say`${litres(`${key}.saved`, from - to)} L less of ${row.scenario} (${litres(`${key}.off`, to)} L in place of ${litres(`${key}.on`, from)} L)`;
    });
    if (on === undefined || parts.length === 0) return [];
    return say`${on.name}, ${joined(off.drain.rulesOff.map(quoted), ', ')} off, drain in a year: ${listed(parts)}.`;
  });
  return items.length === 0
    ? NOTHING
    : blocks([
        markup(
          'What switching a flush off saves, with all other figures of the device kept. The first water after a pause may carry more dissolved solids then.',
        ),
        bullets(items),
      ]);
}

function yearTable(water: WaterNotes, drained: readonly UseState[]): Piece {
  if (water.scenarios.length === 0) {
    return markup('The bench has no scenario, so no daily or yearly drain is computed.');
  }
  return tablePiece({
    caption: markup('Drain in a year, L: all of it, and the part by flushing'),
    columns: [
      left('Device'),
      ...water.scenarios.flatMap(({ name }) => [
        right(quoted(name)),
        right(say`${name}, by flushing`),
      ]),
    ],
    rows: drained.map(({ name, lines }) => [
      quoted(name),
      ...water.scenarios.flatMap((scenario) => {
        const row = lines.find((line) => line.row.scenario === scenario.name)?.row;
        const flushed = row?.flush_drain_L_per_day.estimate ?? null;
        return [
          litres(`${name}.${scenario.name}.year`, row?.drain_L_per_year.estimate ?? null),
          litres(
            `${name}.${scenario.name}.flush-year`,
            flushed === null ? null : flushed * DAYS_OF_YEAR,
          ),
        ];
      }),
    ]),
    legend: isScaled(water)
      ? [
          say`A year is ${count('days-of-year', DAYS_OF_YEAR)} days; scaled to it: ${listed(
            water.scenarios
              .filter(({ days }) => days !== DAYS_OF_YEAR)
              .map(
                ({ name, days }) =>
                  say`${name}, played for ${number(`${name}.days`, days, 'd')} days`,
              ),
          )}.`,
        ]
      : [],
  });
}

function isScaled(water: WaterNotes): boolean {
  return water.scenarios.some(({ days }) => days !== DAYS_OF_YEAR);
}

export const DAYS_OF_YEAR = 365;

function noDrain(_input: NotesInput, water: WaterNotes): Piece {
  const names = water.states
    .filter(({ drain }) => drain.device.values.drain_line === 'no' && drain.variant === STANDARD)
    .map(({ name }) => quoted(name));
  return names.length === 0
    ? NOTHING
    : say`Without a drain line, and so without drain: ${listed(names)}.`;
}
