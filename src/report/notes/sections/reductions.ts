import { atMostDigits } from '../../format-number.ts';
import { type AnalyteFacts, leadingAnalytes, type ReductionNotes } from '../analyte-facts.ts';
import {
  feedPhrase,
  levelSentences,
  outcomeSentences,
  testedSubjects,
} from '../analyte-sentences.ts';
import { analyteGroups } from '../analyte-words.ts';
import type { NotesChart } from '../notes-charts.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  counted,
  figure,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  say,
} from '../piece.ts';
import { isBare, isFirm, type ToldApart, toldApart } from '../told-apart.ts';
import { groupTable, HOW_TO_READ } from './reduction-table.ts';
import { sharedPatterns, withoutEffect } from './shared-patterns.ts';
import { spikedPart } from './spiked-feeds.ts';

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
