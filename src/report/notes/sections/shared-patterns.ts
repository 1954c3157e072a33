import type { AnalyteFacts, ReductionNotes } from '../analyte-facts.ts';
import { analyteNames } from '../analyte-sentences.ts';
import { analyteWords } from '../analyte-words.ts';
import { lowerBound } from '../figures.ts';
import { listed, NOTHING, type Piece, paragraph, quoted, say } from '../piece.ts';
import { namesOf, technologyCounts } from '../subjects.ts';

/** What every device shares, analytes of one pattern in one sentence. */
export function sharedPatterns(rest: readonly AnalyteFacts[]): Piece {
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
export function withoutEffect(notes: ReductionNotes, tested: readonly AnalyteFacts[]): Piece {
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
