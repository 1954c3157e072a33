import { atMostDigits } from '../../format-number.ts';
import { type AnalyteFacts, leadingAnalytes, type ReductionNotes } from '../analyte-facts.ts';
import {
  feedPhrase,
  levelSentences,
  outcomeSentences,
  testedSubjects,
} from '../analyte-sentences.ts';
import { analyteGroups } from '../analyte-words.ts';
import type { NotesChart } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import { blocks, bullets, figure, markup, NOTHING, type Piece, paragraph, say } from '../piece.ts';
import { isBare, isFirm, type ShownComparison, shownComparisons } from '../told-apart.ts';
import { apartSentence, differences, differencesPart } from './differences.ts';
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
  if (tested.length === 0) return NOTHING;
  const leading = leadingAnalytes(tested).slice(0, TOLD);
  const apart = shownComparisons(input.comparisons, tested);
  return blocks([
    markup('## Reductions'),
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
    differencesPart(apart, margin(input)),
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
function analyteStory(facts: AnalyteFacts, apart: readonly ShownComparison[]): Piece {
  return paragraph([
    say`**${facts.analyte.name}**: the feed held ${feedPhrase(facts)}.`,
    ...outcomeSentences(facts),
    apartSentence(facts, apart),
    ...levelSentences(facts),
  ]);
}

/** The largest difference of two reductions that counts as none. */
function margin({ bench }: NotesInput): Piece {
  const percent = bench.settings.equivalence_margin * 100;
  return figure('margin', percent, '%', `${atMostDigits(percent, 4)} %`);
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
  return say`Intervals of measured figures are at ${confidence} confidence.${assumed ? markup(' Where one rests on assumed uncertainty alone, a difference from it is apparent.') : NOTHING}`;
}
