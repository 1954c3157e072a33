import { type LevelVerdict, resultAt, type SampleRow } from '../../../model/index.ts';
import type { Analyte } from '../../../reference/index.ts';
import { type AnalyteFacts, isTelling, isZeroGoal, type ReductionNotes } from '../analyte-facts.ts';
import { feedPhrase } from '../analyte-sentences.ts';
import { analyteGroups, analyteWords } from '../analyte-words.ts';
import { levelPiece, resultSide, type SideFigures, sideFigure } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  capitalised,
  count,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';

/** The feed: ions and general measures, and what lies above a chosen reference level. */
export function feedSection(input: NotesInput, notes: ReductionNotes): Piece {
  const feeds = input.bench.tables.samples.flatMap((row, index) =>
    row.values.position === 'feed' && row.values.status !== 'void' && row.values.of === null
      ? { row, index }
      : [],
  );
  if (feeds.length === 0) return NOTHING;
  return blocks([markup('## The feed water'), levelsOfFeed(input, notes), feedTable(input, feeds)]);
}

function levelsOfFeed(input: NotesInput, { analytes }: ReductionNotes): Piece {
  const wanted = input.bench.settings.reference_levels ?? [];
  if (wanted.length === 0) {
    return markup('The bench names no reference levels, so no water is held against any.');
  }
  const above = analytes.flatMap((facts) => {
    const levels = distinctLevels(facts, (level) => level.verdict === 'above' && isTelling(level));
    if (levels.length === 0) return [];
    const name = capitalised(quoted(analyteWords(facts.analyte)));
    const feeds = facts.feeds.filter((feed) =>
      feed.levels.some((level) => level.verdict === 'above' && isTelling(level)),
    );
    return say`${name}: ${feedPhrase(facts, feeds)}, above the ${listed(levels.map(levelPiece))}.`;
  });
  const goals = analytes.filter(
    (facts) =>
      distinctLevels(facts, (level) => isZeroGoal(level) && level.verdict === 'above').length > 0,
  );
  const from = listed(wanted.map(quoted));
  return blocks([
    above.length === 0
      ? say`No feed lay above a current level of ${from}, goals of zero aside.`
      : say`The feed is held against the current levels of ${from}. Above one of them:`,
    bullets(above),
    goals.length === 0
      ? NOTHING
      : say`A goal of zero is published for ${listed(goals.map(({ analyte }) => quoted(analyteWords(analyte))))}; the feed held ${markup(goals.length === 1 ? 'it' : 'each of them')}. No lab result can show that a goal of zero is met: a result below its limit is not zero.`,
    markup(
      'Reference levels are levels for supplies, read from published tables; they say nothing about one glass and are no medical advice.',
    ),
  ]);
}

function distinctLevels(
  facts: AnalyteFacts,
  wanted: (level: LevelVerdict) => boolean,
): LevelVerdict[] {
  const found = facts.feeds.flatMap((feed) => feed.levels.filter(wanted));
  const key = ({ jurisdiction, kind, value }: LevelVerdict) =>
    JSON.stringify([jurisdiction, kind, value]);
  return [...new Map(found.map((level) => [key(level), level])).values()];
}

/** Ions and general measures of every feed sample; the rest stands in the tables. */
function feedTable(
  input: NotesInput,
  feeds: readonly { readonly row: SampleRow; readonly index: number }[],
): Piece {
  const found = feedResults(input);
  const held = feeds.filter(({ index }) => found.has(index));
  const analytes = input.bench.results.analytes.flatMap((analyte) =>
    input.keepsAnalyte(analyte.key) ? { analyte } : [],
  );
  const general = analyteGroups(analytes).find(({ group }) => group.id === 'minerals');
  const rows = (general?.items ?? []).flatMap(({ analyte }) => {
    const cells = held.map(({ row, index }) => {
      const side = found.get(index)?.get(analyte.key);
      return side === undefined
        ? markup('')
        : sideFigure(`${row.values.sample}.${analyte.key}`, side, analyte.unit);
    });
    return cells.every((cell) => cell.markdown === '')
      ? []
      : [[quoted(analyte.name), quoted(unitText(analyte)), ...cells]];
  });
  if (rows.length === 0) return NOTHING;
  return tablePiece({
    caption: say`Ions and general measures of ${held.length === 1 ? markup('the feed') : say`${count('feed-samples', held.length)} feed samples`}`,
    columns: [
      left('Analyte'),
      left('Unit'),
      ...held.map(({ row }) => right(quoted(row.values.event ?? row.values.sample))),
    ],
    rows,
    legend: [
      markup(
        '&lt; not detected, bounded by the lab’s limit; “a to b” detected, not quantified; blank: not tested.',
      ),
      markup('All other analytes of the feed: [tables/reductions.csv](tables/reductions.csv).'),
    ],
  });
}

function unitText({ unit, basis }: Analyte): string {
  return basis === null ? unit : `${unit} ${basis}`;
}

/** Feed results by sample and analyte; several results of one pair span their bounds. */
function feedResults(input: NotesInput): Map<number, Map<string, SideFigures>> {
  const { results, settings } = input.bench;
  const found = new Map<number, Map<string, SideFigures>>();
  for (let index = 0; index < results.length; index += 1) {
    const sample = results.sample[index] ?? -1;
    const analyte = results.analytes[results.analyte[index] ?? -1];
    const side = resultSide(resultAt(results, index), settings.nondetect_bound);
    if (analyte === undefined || side === null) continue;
    const own = found.get(sample) ?? new Map<string, SideFigures>();
    found.set(sample, own);
    const earlier = own.get(analyte.key);
    own.set(analyte.key, earlier === undefined ? side : spanOf(earlier, side));
  }
  return found;
}

function spanOf(a: SideFigures, b: SideFigures): SideFigures {
  return {
    low: Math.min(a.low ?? 0, b.low ?? 0),
    high: a.high === null || b.high === null ? null : Math.max(a.high, b.high),
    estimate: null,
  };
}
