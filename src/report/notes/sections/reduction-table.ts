import { type AnalyteFacts, weightOf } from '../analyte-facts.ts';
import { testedSubjects } from '../analyte-sentences.ts';
import { estimate, type MeasuredReduction, range, sideFigure } from '../figures.ts';
import {
  count,
  counted,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';

/** How the cells of the tables read, once for all of them. */
export const HOW_TO_READ = markup(
  'In the tables below, cells hold a number of devices and then the figures: from the lowest to the ' +
    'highest measured reduction; the lowest of the lower bounds; from the lowest to the highest ' +
    'bound. &lt; not detected, bounded by the lab’s limit. Feeds stand in the order of the sampling ' +
    'occasions and are natural unless marked spiked; reductions are those of natural feeds where ' +
    'there are any.',
);

/** One row an analyte: the feed, how many devices hold which outcome, and the figures. */
export function groupTable(items: readonly AnalyteFacts[]): Piece {
  const above = items.filter((facts) => weightOf(facts) === 3).length;
  const rises = items.filter((facts) =>
    facts.devices.some(({ summary }) => summary?.outcome === 'rise'),
  ).length;
  const facts = [
    ...(above === 0 ? [] : [say`${count('table.above', above)} above a chosen reference level`]),
    ...(rises === 0 ? [] : [say`${count('table.rises', rises)} with a rise`]),
  ];
  return tablePiece({
    caption: say`${counted('table.analytes', items.length, 'analyte')}${facts.length === 0 ? NOTHING : say`, ${listed(facts)}`}`,
    columns: [
      left('Analyte'),
      left('Unit'),
      right('Feed'),
      right('Devices tested'),
      right('Measured reduction'),
      right('Not detected in product'),
      right('Between bounds'),
      left('No reduction shown, rise, feed too low'),
    ],
    rows: items.map(tableRow),
  });
}

function tableRow(facts: AnalyteFacts): Piece[] {
  const { analyte, devices } = facts;
  const of = (outcome: string) =>
    devices.flatMap(({ summary }) => (summary?.outcome === outcome ? summary : []));
  const cell = (key: string, n: number, figures: () => Piece): Piece =>
    n === 0 ? NOTHING : say`${count(`${analyte.key}.${key}`, n)}: ${figures()}`;
  const measured = of('measured').sort((a, b) => (a.estimate ?? 0) - (b.estimate ?? 0));
  const undetected = of('at-least');
  const between = of('between');
  return [
    quoted(analyte.name),
    quoted(analyte.basis === null ? analyte.unit : `${analyte.unit} ${analyte.basis}`),
    feedCell(facts),
    count(`${analyte.key}.tested`, testedSubjects(facts).length),
    cell('measured', measured.length, () => measuredFigures(analyte.key, measured)),
    cell('not-detected', undetected.length, () =>
      range(`${analyte.key}.at-least`, lowestOf(undetected), null),
    ),
    cell('between', between.length, () =>
      range(
        `${analyte.key}.between`,
        lowestOf(between),
        Math.max(...between.map((summary) => summary.high ?? 1)),
      ),
    ),
    joined(restOf(facts), ', '),
  ];
}

function feedCell({ analyte, feeds }: AnalyteFacts): Piece {
  return joined(
    feeds.map((feed) => {
      const side = sideFigure(`${analyte.key}.feed.${feed.event}`, feed.side, analyte.unit);
      return feed.kind === 'spiked' ? say`${side} spiked` : side;
    }),
    '; ',
  );
}

/** From the lowest to the highest, without their intervals: the device pages hold those. */
function measuredFigures(key: string, ordered: readonly MeasuredReduction[]): Piece {
  const bare = (one: MeasuredReduction | undefined): Piece =>
    estimate(`${key}.measured`, { low: null, estimate: one?.estimate ?? 0, high: null });
  const lowest = bare(ordered[0]);
  const highest = bare(ordered.at(-1));
  return lowest.markdown === highest.markdown ? lowest : say`${lowest} to ${highest}`;
}

/** The lowest of the lower bounds; null where one of them is open. */
function lowestOf(summaries: readonly { readonly low: number | null }[]): number | null {
  return summaries.some(({ low }) => low === null)
    ? null
    : Math.min(...summaries.map(({ low }) => low ?? 0));
}

/** Devices that show no reduction, with the reason. */
function restOf({ analyte, devices }: AnalyteFacts): Piece[] {
  return (['not-shown', 'rise', 'untestable'] as const).flatMap((outcome) => {
    const n = devices.filter(({ summary }) => summary?.outcome === outcome).length;
    const words = {
      'not-shown': 'not shown',
      rise: n === 1 ? 'rise' : 'rises',
      untestable: 'feed too low',
    };
    return n === 0 ? [] : say`${count(`${analyte.key}.${outcome}`, n)} ${markup(words[outcome])}`;
  });
}
