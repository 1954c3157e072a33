import type { MineralRow } from '../../../model/index.ts';
import { figureOf, type ShownWater } from '../../views/mineral-shown-waters.ts';
import { CONTENT } from '../../views/minerals-view.ts';
import { contentPiece, mineralRows, watersByEvent } from '../mineral-waters.ts';
import type { NotesChart } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';
import { guidancePart } from './mineral-guidance.ts';
import { indicesPart } from './mineral-indices.ts';
import { stagePart } from './mineral-stage.ts';

const HARDNESS = ['total-hardness', 'Hardness, mg/L as CaCO3'] as const;

/** What the water keeps of its minerals, gains of mineral stages, corrosion and scaling. */
export function mineralsSection(input: NotesInput, charts: readonly NotesChart[]): Piece {
  const events = [...watersByEvent(input)].map(([event, waters]) => ({
    event,
    waters: waters.filter(hasMinerals),
  }));
  const shown = events.filter(({ waters }) => waters.length > 0);
  if (shown.length === 0) return NOTHING;
  const images = charts.filter(({ section }) => section === 'mineral-prints');
  return blocks([
    markup('## What the water keeps of its minerals'),
    paragraph([
      ...shown.slice(0, 1).map(({ event, waters }) => keptOf(event, waters)),
      markup(
        'Minerals in drinking water are a matter of taste, pipes and habit; nothing here says how much anyone needs.',
      ),
    ]),
    ...shown.map(({ event, waters }) => contentTable(event, waters)),
    markup(
      '&lt; not detected, below the limit shown; a dash: not tested; \\*: not measured, calculated from the ions. Hardness in all common units: [tables/minerals.csv](tables/minerals.csv).',
    ),
    ...images.map(({ image }) => image),
    guidancePart(input),
    stagePart(input),
    indicesPart(input),
  ]);
}

function hasMinerals(water: ShownWater): boolean {
  return CONTENT.some(([key]) => key !== 'ph' && figureOf(water, key, 'content') !== undefined);
}

/** Calcium and dissolved solids of the feed, and the range over the products. */
function keptOf(event: string, waters: readonly ShownWater[]): Piece {
  const feed = waters.find(({ name }) => name === 'Feed');
  const products = waters.filter(({ rows }) => rows.some(({ position }) => position === 'product'));
  const told = (['calcium', 'magnesium', 'total-dissolved-solids'] as const).flatMap((key) => {
    const known = products
      .flatMap((water) => {
        const row = figureOf(water, key, 'content');
        return row === undefined ? [] : { water, row };
      })
      .sort((a, b) => middleOf(a.row) - middleOf(b.row));
    const [lowest] = known;
    const highest = known.at(-1);
    const feedRow = feed === undefined ? undefined : figureOf(feed, key, 'content');
    if (feed === undefined || feedRow === undefined || lowest === undefined || !highest) return [];
    const text = (water: ShownWater): Piece => say`${contentPiece(water, key)} (${water.name})`;
    const reach =
      lowest === highest
        ? text(lowest.water)
        : say`from ${text(lowest.water)} to ${text(highest.water)}`;
    return say`of ${WORDS[key]} the feed held ${contentPiece(feed, key)} ${feedRow.unit}, the products ${reach}`;
  });
  return told.length === 0 ? NOTHING : say`In ${event}, ${listed(told)}.`;
}

const WORDS = {
  calcium: 'calcium',
  magnesium: 'magnesium',
  'total-dissolved-solids': 'dissolved solids',
} as const;

function middleOf({ low, estimate, high }: MineralRow): number {
  return estimate ?? ((low ?? 0) + (high ?? low ?? 0)) / 2;
}

function contentTable(event: string, waters: readonly ShownWater[]): Piece {
  const columns = [...CONTENT.slice(0, 4), HARDNESS, ...CONTENT.slice(4)].filter(([key]) =>
    waters.some((water) => figureOf(water, key, 'content') !== undefined),
  );
  return tablePiece({
    caption: say`Minerals of ${count(`${event}.waters`, waters.length)} waters, ${event}: what the feed brings and each product keeps`,
    columns: [left('Water'), ...columns.map(([, head]) => right(markup(head)))],
    rows: waters.map((water) => [
      quoted(water.name),
      ...columns.map(([key]) => contentPiece(water, key)),
    ]),
  });
}

/** One sentence for the summary: how many devices have a mineral stage and whether it shows. */
export function mineralSummary(input: NotesInput): Piece {
  const rows = mineralRows(input);
  const gained = rows.filter(
    (row) =>
      row.group === 'gain' &&
      row.quantity === 'total-hardness' &&
      row.against !== 'feed' &&
      row.class === 'gained',
  );
  const devices = [...new Set(gained.flatMap(({ device }) => device ?? []))];
  return devices.length === 0
    ? NOTHING
    : say`The mineral stage of ${listed(devices.map((key) => quoted(nameIn(input, key))))} adds hardness, as far as the limits show it.`;
}

function nameIn(input: NotesInput, key: string): string {
  return input.bench.tables.devices.find(({ values }) => values.device === key)?.values.name ?? key;
}
