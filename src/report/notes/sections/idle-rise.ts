import type { IdleRiseRow, WaterUseRow } from '../../../model/index.ts';
import { significant } from '../../format-number.ts';
import { durationText } from '../../format-quantity.ts';
import { litres, pour, spreadFigure } from '../figures.ts';
import { type FlushPair, flushPairs, type IdleGroup, idleGroups } from '../idle-groups.ts';
import type { NotesChart } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  figure,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** The first water after a pause, meter by meter, and what an automatic flush changes. */
export function idleRiseSection(input: NotesInput, charts: readonly NotesChart[]): Piece {
  const groups = idleGroups(input);
  if (groups.length === 0) return NOTHING;
  return blocks([
    markup('## The first water after a pause'),
    paragraph([
      ...groups.map((group) => highestOf(input, group)),
      groups.length === 1
        ? NOTHING
        : markup('Readings of different meters or scales stand apart and are not compared.'),
      markup('A meter reads conductivity and shows it as dissolved solids; it names no substance.'),
    ]),
    ...groups.flatMap((group) => [
      ...charts.filter(({ section }) => section === `idle.${group.id}`).map(({ image }) => image),
      pauseTable(input, group),
      flushTable(input, group),
      scenarioTable(input, group),
    ]),
  ]);
}

/** The highest first reading of a meter, and when. */
export function highestOf(input: NotesInput, group: IdleGroup): Piece {
  const name = stateNames(input.bench);
  const [highest] = group.pauses
    .filter((row) => row.first_draw_tds !== null && row.idle_s !== null)
    .sort((a, b) => (b.first_draw_tds ?? 0) - (a.first_draw_tds ?? 0));
  if (highest === undefined) return NOTHING;
  const running =
    highest.running_tds === null || highest.running_from !== 'no-pause'
      ? NOTHING
      : say`, against ${reading('running', highest.running_tds, group.unit)} ${group.unit} without a pause`;
  return say`By ${group.title} the highest first reading was ${reading('first', highest.first_draw_tds, group.unit)} (${name(highest.device, highest.variant)}, after ${pause(highest)})${running}.`;
}

function reading(key: string, tds: number | null, unit: string): Piece {
  return tds === null ? markup('not tested') : figure(key, tds, unit, significant(tds, 3));
}

function pause({ idle_s }: IdleRiseRow): Piece {
  return idle_s === null ? NOTHING : figure('pause', idle_s, 's', durationText(idle_s));
}

function share(key: string, value: number | null): Piece {
  return value === null
    ? markup('not tested')
    : figure(key, value * 100, '%', significant(value * 100, 2));
}

function pauseTable(input: NotesInput, { title, pauses }: IdleGroup): Piece {
  const name = stateNames(input.bench);
  return tablePiece({
    caption: say`First water after a pause: ${title}`,
    columns: [
      left('Device'),
      right('Pause'),
      right('First reading'),
      right('In the first'),
      right('Of the feed, %'),
      right('Running'),
      right('Volume to recover'),
    ],
    rows: pauses.map((row) => [
      quoted(name(row.device, row.variant)),
      pause(row),
      reading('first', row.first_draw_tds, row.unit),
      row.first_draw_L === null ? markup('not tested') : pour('drawn', row.first_draw_L * 1000),
      share('of-feed', row.first_draw_of_feed),
      say`${reading('running', row.running_tds, row.unit)}${row.running_from === 'last-reading' ? markup(' \\[l\\]') : NOTHING}`,
      row.recover_L === null ? markup('not reached') : pour('recover', row.recover_L * 1000),
    ]),
    legend: [
      markup(
        'Recovered: nine tenths of the rise are gone. \\[l\\] the last reading after this pause stands for the running water.',
      ),
    ],
  });
}

/** Water saved and solids gained by switching the automatic flush off, side by side. */
function flushTable(input: NotesInput, group: IdleGroup): Piece {
  const name = stateNames(input.bench);
  const pairs = flushPairs(group);
  if (pairs.length === 0) return NOTHING;
  return tablePiece({
    caption: say`What switching the automatic flush off saves in water and costs in dissolved solids: ${group.title}`,
    columns: [
      left('Device'),
      left('Scenario'),
      right('Drain with flush, L a year'),
      right('Without'),
      right('Saved'),
      right(say`Mean of the water with flush, ${group.unit}`),
      right('Without'),
      right('Water covered, with and without, %'),
    ],
    rows: pairs.map(({ on, off }) => {
      const saved =
        on.drain_L_per_year === null || off.drain_L_per_year === null
          ? null
          : on.drain_L_per_year - off.drain_L_per_year;
      return [
        quoted(name(on.device, on.variant)),
        quoted(off.scenario ?? ''),
        yearlyDrain(input, on),
        yearlyDrain(input, off),
        litres('saved', saved),
        spreadFigure('mean.on', on.mean_tds, group.unit),
        spreadFigure('mean.off', off.mean_tds, group.unit),
        say`${share('covered', on.covered_share)} and ${share('covered', off.covered_share)}`,
      ];
    }),
    legend: [
      markup(
        `The means compare only where both cover about the same water.${input.outcomes.costs.rows.length === 0 ? '' : ' Both states in money: [tables/costs.csv](tables/costs.csv).'}`,
      ),
    ],
  });
}

/** The drain of a year with its range, as the part on water to drain has it. */
function yearlyDrain(input: NotesInput, { device, variant, scenario }: IdleRiseRow): Piece {
  const row = (input.outcomes.waterUse.rows as readonly WaterUseRow[]).find(
    (each) => each.device === device && each.variant === variant && each.scenario === scenario,
  );
  return row === undefined
    ? markup('not tested')
    : spreadFigure(`${device}.${variant}.${scenario ?? ''}`, row.drain_L_per_year, 'L');
}

/** Devices and scenarios that the tested pauses reach, other than those of the flush table. */
function scenarioTable(input: NotesInput, group: IdleGroup): Piece {
  const name = stateNames(input.bench);
  const paired = new Set(flushPairs(group).flatMap(({ on, off }) => [on, off]));
  const rest = group.scenarios.filter((row) => !paired.has(row));
  const covered = rest.filter(({ mean_tds }) => mean_tds.low !== null);
  const uncovered = new Set(
    rest.filter((row) => !covered.includes(row)).map((row) => name(row.device, row.variant)),
  );
  const without =
    uncovered.size === 0
      ? NOTHING
      : say`The tested pauses of ${listed([...uncovered].map(quoted))} reach no pour of ${
          covered.length === 0 ? markup('any') : markup('some')
        } scenario, so no mean is given there.`;
  if (covered.length === 0) return without;
  return blocks([
    tablePiece({
      caption: say`Water of a scenario, as far as the tested pauses reach: ${group.title}`,
      columns: [
        left('Device'),
        left('Scenario'),
        right('Water covered, %'),
        right(say`Mean of it, ${group.unit}`),
      ],
      rows: covered.map((row) => [
        quoted(name(row.device, row.variant)),
        quoted(row.scenario ?? ''),
        share('covered', row.covered_share),
        spreadFigure('mean', row.mean_tds, group.unit),
      ]),
    }),
    without,
  ]);
}

/** The highest first reading, and what an automatic flush changes in the first scenario. */
export function idleSummary(input: NotesInput): Piece {
  const groups = idleGroups(input);
  const [group] = groups;
  if (group === undefined) return NOTHING;
  const told = groups.flatMap((each) => {
    const pairs = flushPairs(each).filter(
      ({ on, off }) => on.mean_tds.low !== null && off.mean_tds.low !== null,
    );
    return pairs
      .filter(({ on }) => on.scenario === pairs[0]?.on.scenario)
      .map(({ on, off }) => flushSentence(input, each, { on, off }));
  });
  return paragraph([highestOf(input, group), ...told]);
}

/** Water and solids of one device with its automatic flush on and off, in one sentence. */
function flushSentence(input: NotesInput, { unit }: IdleGroup, { on, off }: FlushPair): Piece {
  const name = stateNames(input.bench);
  const drain =
    on.drain_L_per_year === null || off.drain_L_per_year === null
      ? markup('its drain is not known')
      : say`it drains ${yearlyDrain(input, off)} L a year in place of ${yearlyDrain(input, on)} L`;
  return say`${name(on.device, on.variant)} without its automatic flush, scenario ${on.scenario ?? ''}: ${drain}, and the mean of its water goes from ${spreadFigure('mean.on', on.mean_tds, unit)} to ${spreadFigure('mean.off', off.mean_tds, unit)} ${unit}.`;
}
