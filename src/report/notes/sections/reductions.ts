import type { ReductionFact } from '../../../analyse/index.ts';
import { atMostDigits } from '../../format-number.ts';
import {
  type AnalyteFacts,
  leadingAnalytes,
  type ReductionNotes,
  weightOf,
} from '../analyte-facts.ts';
import {
  analyteNames,
  feedPhrase,
  levelSentences,
  outcomeSentences,
  testedSubjects,
} from '../analyte-sentences.ts';
import { analyteGroups, analyteWords } from '../analyte-words.ts';
import {
  estimate,
  lowerBound,
  type MeasuredReduction,
  range,
  reductionFigure,
  sideFigure,
  sidePiece,
} from '../figures.ts';
import type { NotesChart } from '../notes-charts.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  counted,
  figure,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames, namesOf, subjectName, technologyCounts } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';
import { isBare, isFirm, type ToldApart, toldApart } from '../told-apart.ts';

/** How many analytes are told one by one; the tables hold the rest. */
const TOLD = 8;

/** Reductions: what leads, what all devices share, a table and charts for each group. */
export function reductionsSection(
  input: NotesInput,
  notes: ReductionNotes,
  charts: readonly NotesChart[],
): Piece {
  const tested = notes.analytes.filter((facts) => testedSubjects(facts).length > 0);
  const heading = markup('## Reductions');
  if (tested.length === 0) {
    return blocks([heading, markup('No product was tested against a feed: nothing is shown.')]);
  }
  const leading = leadingAnalytes(tested).slice(0, TOLD);
  const apart = toldApart(input.bench, tested);
  return blocks([
    heading,
    paragraph([
      markup(
        'A reduction is one minus product over feed. “At least” is a bound set by the lab’s limit and ' +
          'may be far below the true figure, so bounds rank no device.',
      ),
      uncertainty(input, notes),
      differences(apart, tested),
    ]),
    leading.length === 0
      ? NOTHING
      : blocks([
          markup('### What leads'),
          markup(
            'Analytes above a chosen reference level in a feed or a product come first, then those the lab’s limit leaves open, then those with a goal of zero.',
          ),
          bullets(leading.map((facts) => analyteStory(facts, apart))),
        ]),
    spikedPart(input, notes),
    headed('### What devices share', [
      sharedPatterns(tested.filter((facts) => !leading.includes(facts))),
      withoutEffect(notes, tested),
    ]),
    HOW_TO_READ,
    ...analyteGroups(tested).map(({ group, items }) =>
      blocks([
        markup(`### ${group.title}`),
        groupTable(items),
        ...charts.filter((chart) => chart.section === group.id).map((chart) => chart.image),
      ]),
    ),
    markup(
      'Figures for each device stand on its page, every event by itself in [tables/reductions.csv](tables/reductions.csv).',
    ),
  ]);
}

/** Parts below a heading; nothing where all of them are empty. */
function headed(heading: string, parts: readonly Piece[]): Piece {
  const body = blocks(parts);
  return body.markdown === '' ? NOTHING : blocks([markup(heading), body]);
}

const HOW_TO_READ = markup(
  'In the tables below, cells hold a number of devices and then the figures: from the lowest to the ' +
    'highest measured reduction; the lowest of the lower bounds; from the lowest to the highest ' +
    'bound. &lt; not detected, bounded by the lab’s limit. Feeds stand in the order of the sampling ' +
    'occasions and are natural unless marked spiked; reductions are those of natural feeds where ' +
    'there are any.',
);

/** One paragraph on an analyte: feed, products, levels. */
function analyteStory(facts: AnalyteFacts, apart: readonly ToldApart[]): Piece {
  return paragraph([
    say`**${facts.analyte.name}**: the feed held ${feedPhrase(facts)}.`,
    ...outcomeSentences(facts),
    apartSentence(facts, apart),
    ...levelSentences(facts),
  ]);
}

/** What stands behind the measured figures. */
function uncertainty(input: NotesInput, { summaries }: ReductionNotes): Piece {
  const measured = summaries.filter(({ outcome }) => outcome === 'measured');
  if (measured.length === 0) return NOTHING;
  if (measured.every(isBare)) {
    return markup('Measured figures stand without their uncertainty, which is not yet considered.');
  }
  const share = input.bench.settings.confidence * 100;
  const confidence = figure('confidence', share, '%', `${atMostDigits(share, 4)} %`);
  const assumed = measured.some((summary) => isBare(summary) || !isFirm(summary));
  return say`Intervals of measured figures are at ${confidence} confidence.${assumed ? markup(' Where one rests on assumed uncertainty alone, no difference is claimed from it.') : NOTHING}`;
}

/** On how many analytes devices are told apart, and what that means. */
function differences(apart: readonly ToldApart[], tested: readonly AnalyteFacts[]): Piece {
  if (apart.length === 0) {
    return markup('No two devices are told apart on any analyte, however their figures read.');
  }
  const analytes = new Set(apart.map(({ analyte }) => analyte));
  return say`Two devices are told apart where their bounds or intervals do not overlap, on the same feeds and at the same limits; that is so for some devices on ${count('apart.analytes', analytes.size)} of ${counted('analytes', tested.length, 'analyte')}. Elsewhere figures that differ are not told apart.`;
}

/** Devices named as told apart from others before their pairs are only counted. */
const APART_NAMED = 3;

/** Which devices lie below others on an analyte. */
function apartSentence(facts: AnalyteFacts, apart: readonly ToldApart[]): Piece {
  const own = apart.filter(({ analyte }) => analyte === facts);
  const lower = [...new Set(own.map((pair) => pair.lower.subject))];
  if (lower.length === 0) return NOTHING;
  const { key } = facts.analyte;
  if (lower.length > APART_NAMED) {
    return say`Of its ${counted(`${key}.pairs`, pairsOf(testedSubjects(facts).length), 'pair')} of devices, ${count(`${key}.apart`, own.length)} ${markup(own.length === 1 ? 'is' : 'are')} told apart.`;
  }
  const told = lower.map((subject) => {
    const higher = own.filter((pair) => pair.lower.subject === subject).length;
    return say`${subject.name} below ${counted(`${key}.apart`, higher, 'other device')}`;
  });
  return say`Told apart: ${listed(told)}.`;
}

const pairsOf = (devices: number): number => (devices * (devices - 1)) / 2;

/**
 * Reductions of a spiked feed where a natural one leads: one item an analyte, every device with its
 * figure.
 */
function spikedPart(input: NotesInput, { summaries }: ReductionNotes): Piece {
  const leading = new Set(summaries.flatMap(({ facts }) => facts));
  const spiked = input.reductions.filter(
    (fact) => fact.row.kind === 'spiked' && fact.row.outcome !== 'untested' && !leading.has(fact),
  );
  if (spiked.length === 0) return NOTHING;
  const names = deviceNames(input.bench);
  const groups = new Map<string, ReductionFact[]>();
  for (const fact of spiked) {
    const key = JSON.stringify([fact.row.event, fact.row.analyte]);
    groups.set(key, [...(groups.get(key) ?? []), fact]);
  }
  const items = [...groups.values()].flatMap((facts) => {
    const [first] = facts;
    if (first === undefined) return [];
    const { analyte, event, feed, unit } = first.row;
    const told = facts.map(({ row }) => {
      const name = subjectName(names.get(row.device) ?? row.device, row.variant);
      const key = `spiked.${row.device}.${row.analyte}`;
      return say`${name} ${reductionFigure(key, row)}`;
    });
    const side = sidePiece(`${analyte}.feed.${event}`, feed, unit);
    return say`**${first.analyte.name}** (${event}, feed ${side}): ${joined(told, '; ')}.`;
  });
  return blocks([
    markup('### Spiked feeds'),
    markup(
      'A spiked feed holds more than the tap does, so it can show more of a reduction. It is one batch, dosed once, and stands apart from the natural feeds.',
    ),
    bullets(items),
  ]);
}

/** What every device shares, analytes of one pattern in one sentence. */
function sharedPatterns(rest: readonly AnalyteFacts[]): Piece {
  const every = (...outcomes: readonly string[]): AnalyteFacts[] =>
    rest.filter((facts) =>
      facts.devices.every(
        ({ summary }) =>
          summary === null || outcomes.includes(summary.outcome) || summary.outcome === 'untested',
      ),
    );
  const undetected = every('at-least');
  const unshown = every('not-shown');
  const reduced = every('measured', 'at-least', 'between').filter(
    (facts) => !undetected.includes(facts),
  );
  return paragraph([
    undetected.length === 0
      ? NOTHING
      : say`Not detected in any product tested: ${listed(undetected.map(withLowest))}.`,
    reduced.length === 0
      ? NOTHING
      : say`Reduced in every product tested, by figures or bounds in the tables: ${analyteNames(reduced)}.`,
    unshown.length === 0
      ? NOTHING
      : say`No device showed a reduction of ${listed(
          unshown.map(({ analyte }) => quoted(analyteWords(analyte))),
          'or',
        )}.`,
  ]);
}

function withLowest(facts: AnalyteFacts): Piece {
  const lows = facts.devices.flatMap(({ summary }) => summary?.low ?? []);
  const name = quoted(analyteWords(facts.analyte));
  return lows.length === 0
    ? name
    : say`${name} (at least ${lowerBound(`${facts.analyte.key}.at-least`, Math.min(...lows))})`;
}

/** Analytes that a whole technology left as they were, where another one reduced them. */
function withoutEffect(notes: ReductionNotes, tested: readonly AnalyteFacts[]): Piece {
  const technologies = [...new Set(notes.subjects.map(({ device }) => device.values.technology))];
  if (technologies.length < 2) return NOTHING;
  const sentences = technologies.flatMap((technology) => {
    const members = notes.subjects.filter(({ device }) => device.values.technology === technology);
    const unshown = tested.filter((facts) => {
      const own = facts.devices.filter(
        ({ subject, summary }) => members.includes(subject) && summary !== null,
      );
      const isUnshown = own.every(({ summary }) => summary?.outcome === 'not-shown');
      return own.length > 0 && isUnshown;
    });
    if (unshown.length === 0) return [];
    const what = listed(
      unshown.map(({ analyte }) => quoted(analyteWords(analyte))),
      'or',
    );
    return members.length === 1
      ? say`${namesOf(members)} showed no reduction of ${what}.`
      : say`None of the ${technologyCounts(members)} showed a reduction of ${what}.`;
  });
  return paragraph(sentences);
}

/** One row an analyte: the feed, how many devices hold which outcome, and the figures. */
function groupTable(items: readonly AnalyteFacts[]): Piece {
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
