import type { LevelVerdict, ReductionOutcome } from '../../../model/index.ts';
import {
  isTelling,
  leadingAnalytes,
  productLevels,
  type ReductionNotes,
} from '../analyte-facts.ts';
import { analyteNames, testedSubjects } from '../analyte-sentences.ts';
import { analyteWords } from '../analyte-words.ts';
import { spreadFigure } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  counted,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { technologyCounts } from '../subjects.ts';
import type { WaterNotes } from '../water-notes.ts';
import { claimRows, missed, verdictCounts } from './claims.ts';
import { costSummary } from './costs.ts';
import { idleSummary } from './idle-rise.ts';
import { mineralSummary } from './minerals.ts';
import { panelRows } from './panel.ts';

/** Title, edition and what matters most, one point a subject. */
export function summarySection(input: NotesInput, notes: ReductionNotes, water: WaterNotes): Piece {
  const { title, edition, date } = input.bench.settings;
  const stamp = [
    ...(edition === undefined ? [] : [say`Edition ${edition}`]),
    ...(date === undefined ? [] : [quoted(date)]),
  ];
  const dated = stamp.length === 0 ? say`No edition is stated.` : say`${listed(stamp, 'of')}.`;
  return blocks([
    say`# ${title}`,
    dated,
    shownOnly(input),
    paragraph([
      scope(input, notes),
      markup(
        'Results hold for this feed, these samples and these specimens; a test before and after a ' +
          'device is no certification, and nothing here is medical advice.',
      ),
    ]),
    bullets([
      pointed('[Claims](#claims-and-certificates)', claimsPoint(input)),
      pointed('[Levels](#the-feed-water)', aboveLevels(notes)),
      pointed('[Reductions](#reductions)', outcomes(notes)),
      pointed('[Rises](#rises-and-open-points)', rises(notes)),
      pointed('[Minerals](#what-the-water-keeps-of-its-minerals)', mineralSummary(input)),
      pointed('[After a pause](#the-first-water-after-a-pause)', idleSummary(input)),
      pointed('[Taste](#taste)', tastePoint(input)),
      pointed('[Water to drain](#water-to-drain)', drain(water)),
      pointed('[Costs](#costs)', costSummary(input)),
    ]),
  ]);
}

/** A sentence behind a link to its section; nothing without the sentence. */
function pointed(link: string, sentence: Piece): Piece {
  return sentence.markdown === '' ? NOTHING : say`${markup(link)}: ${sentence}`;
}

function claimsPoint(input: NotesInput): Piece {
  const rows = claimRows(input);
  return rows.length === 0 ? NOTHING : paragraph([verdictCounts(rows), missed(input, rows)]);
}

function tastePoint(input: NotesInput): Piece {
  const rows = panelRows(input);
  const apart = rows.filter(({ verdict }) => verdict === 'told-apart').length;
  return rows.length === 0
    ? NOTHING
    : say`The panel told the waters apart in ${count('panel.apart', apart)} of ${counted('panel.tests', rows.length, 'test')}.`;
}

function shownOnly(input: NotesInput): Piece {
  const named = Object.entries(input.filters).map(
    ([name, wanted]) => say`${markup(name)} ${listed(wanted.map(quoted))}`,
  );
  if (named.length === 0) return NOTHING;
  return say`These notes are limited to ${listed(named)}. Counts are of what is shown; every other figure is that of the whole bench.`;
}

function scope(input: NotesInput, notes: ReductionNotes): Piece {
  const { subjects, analytes } = notes;
  const total = input.bench.tables.devices.length;
  const devices = counted('devices', subjects.length, 'device');
  const kinds = subjects.length < 2 ? NOTHING : say`: ${technologyCounts(subjects)}`;
  const held =
    subjects.length === total
      ? say`This bench holds ${devices}${kinds}.`
      : say`Shown are ${count('devices', subjects.length)} of the ${counted('devices.all', total, 'device')} of the bench${kinds}.`;
  const tested = analytes.filter((facts) => testedSubjects(facts).length > 0);
  if (tested.length === 0) {
    return say`${held} No reduction was tested.`;
  }
  const results = count('results', input.bench.results.length);
  return say`${held} Feed and product were compared for ${counted('analytes', tested.length, 'analyte')}, on ${results} lab results in all.`;
}

/** Analytes above a level that is no goal of zero, in the feed and in a product. */
function aboveLevels({ analytes }: ReductionNotes): Piece {
  if (analytes.every((facts) => facts.feeds.every((feed) => feed.levels.length === 0))) {
    return NOTHING;
  }
  const leading = leadingAnalytes(analytes);
  const isAbove = (levels: readonly LevelVerdict[]): boolean =>
    levels.some((level) => level.verdict === 'above' && isTelling(level));
  const inFeed = (kind: 'natural' | 'spiked') =>
    leading.filter((facts) =>
      facts.feeds.some((feed) => feed.kind === kind && isAbove(feed.levels)),
    );
  const natural = inFeed('natural');
  const spiked = inFeed('spiked').filter((facts) => !natural.includes(facts));
  const products = leading.filter((facts) =>
    facts.devices.some(({ summary }) => summary !== null && isAbove(productLevels(summary))),
  );
  return paragraph([
    natural.length === 0
      ? markup('Goals of zero aside, no natural feed lay above a chosen reference level.')
      : say`Goals of zero aside, ${analyteNames(natural)} lay above a chosen reference level in a natural feed.`,
    spiked.length === 0 ? NOTHING : say`Above one in a spiked feed: ${analyteNames(spiked)}.`,
    products.length === 0
      ? markup('No product is known to lie above one.')
      : say`Above one in a product: ${analyteNames(products)}.`,
  ]);
}

function outcomes({ analytes }: ReductionNotes): Piece {
  const pairs = analytes.flatMap((facts) =>
    facts.devices.flatMap(({ summary }) => summary?.outcome ?? ('untested' as const)),
  );
  const of = (...wanted: readonly ReductionOutcome[]): number =>
    pairs.filter((outcome) => wanted.includes(outcome)).length;
  const tested = pairs.length - of('untested');
  if (tested === 0) return NOTHING;
  const parts = [
    { n: of('measured'), words: 'hold a measured reduction', key: 'measured' },
    { n: of('at-least', 'between'), words: 'hold bounds of one', key: 'bounded' },
    { n: of('not-shown'), words: 'show none', key: 'not-shown' },
    { n: of('rise'), words: 'show a rise', key: 'rise' },
    { n: of('untestable'), words: 'show nothing, as the feed held too little', key: 'untestable' },
  ].filter(({ n }) => n > 0);
  const told = parts.map(({ n, words, key }) => say`${count(`pairs.${key}`, n)} ${markup(words)}`);
  return say`Of ${count('pairs', tested)} pairs of device and analyte, ${listed(told)}.`;
}

function rises({ analytes }: ReductionNotes): Piece {
  const rising = analytes.flatMap((facts) => {
    const devices = facts.devices.flatMap(({ subject, summary }) =>
      summary?.facts.some(({ row }) => row.outcome === 'rise') === true ? quoted(subject.name) : [],
    );
    return devices.length === 0
      ? []
      : say`${quoted(analyteWords(facts.analyte))} (${listed(devices)})`;
  });
  return rising.length === 0
    ? NOTHING
    : say`A rise was seen for ${listed(rising)}; it calls for a retest.`;
}

function drain(water: WaterNotes): Piece {
  const [scenario] = water.scenarios;
  const { lowest, highest } = water.range(scenario?.name ?? '');
  if (scenario === undefined || lowest === null || highest === null) return NOTHING;
  const text = (one: typeof lowest): Piece =>
    say`${spreadFigure('drain', one.row.total_drain_ratio, 'L/L')} L (${one.name})`;
  return lowest === highest
    ? say`In the scenario ${scenario.name}, flushes included, ${text(lowest)} went to the drain per litre of clean water.`
    : say`In the scenario ${scenario.name}, flushes included, devices with a drain line sent from ${text(lowest)} to ${text(highest)} to the drain per litre of clean water.`;
}
