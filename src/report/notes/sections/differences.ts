import type { AnalyteFacts } from '../analyte-facts.ts';
import { analyteWords } from '../analyte-words.ts';
import { blocks, count, counted, joined, markup, NOTHING, type Piece, say } from '../piece.ts';
import { namesOf } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';
import type { ShownComparison } from '../told-apart.ts';

/** Groups named before they are only counted. */
const NAMED_GROUPS = 4;

/** On how many analytes devices are told apart, and what that means. */
export function differences(
  comparisons: readonly ShownComparison[],
  tested: readonly AnalyteFacts[],
): Piece {
  if (comparisons.length === 0) return NOTHING;
  const apart = new Set(
    comparisons.flatMap(({ analyte, apart: pairs }) => (pairs > 0 ? analyte : [])),
  ).size;
  return apart === 0
    ? markup('No two devices are told apart on any analyte, however their figures read.')
    : say`Two devices are told apart where the interval of the difference of their products on a feed they share leaves out zero, at a confidence that holds over all pairs of the analyte; that is so for some devices on ${count('apart.analytes', apart)} of ${counted('analytes', tested.length, 'analyte')}. Elsewhere figures that differ are not told apart.`;
}

/** What is told apart on one analyte. */
export function apartSentence(facts: AnalyteFacts, comparisons: readonly ShownComparison[]): Piece {
  const all = comparisons.filter(({ analyte }) => analyte === facts);
  const own = all.find(({ kind }) => kind === 'natural') ?? all[0];
  if (own === undefined) return NOTHING;
  const { key } = facts.analyte;
  const feeds = own.kind === 'spiked' ? markup(' on spiked feeds') : NOTHING;
  if (own.apart === 0) return say`No two devices are told apart${feeds}.`;
  const groups =
    own.groups.length > NAMED_GROUPS
      ? NOTHING
      : say` Groups not told apart within, least in the product first: ${groupNames(own)}.`;
  return say`Told apart${feeds}: ${apartCount(key, own)} of ${counted(`${key}.pairs`, own.pairs, 'pair')} of devices.${groups}`;
}

function apartCount(key: string, { apart, apparent }: ShownComparison): Piece {
  const number = count(`${key}.apart`, apart);
  if (apparent === 0) return number;
  return apparent === apart
    ? say`${number} (apparently)`
    : say`${number} (${count(`${key}.apparent`, apparent)} apparently)`;
}

function groupNames({ groups }: ShownComparison): Piece {
  return joined(groups.map(namesOf), '; ');
}

/** Every analyte on which a pair is told apart. */
export function differencesPart(
  comparisons: readonly ShownComparison[],
  marginPercent: Piece,
): Piece {
  const told = comparisons.filter(({ apart }) => apart > 0);
  if (told.length === 0) return NOTHING;
  const rest = comparisons.length - told.length;
  return blocks([
    markup('### Which devices are told apart'),
    tablePiece({
      caption: markup('Pairs of devices told apart, by analyte; natural and spiked feeds apart'),
      columns: [
        left('Analyte'),
        right('Devices'),
        right('Pairs'),
        right('Told apart'),
        right('Equivalent'),
        left('Groups not told apart within, least in the product first'),
      ],
      rows: told.map((own) => {
        const isSpiked = own.kind === 'spiked';
        const key = `${own.analyte.analyte.key}${isSpiked ? '.spiked' : ''}`;
        return [
          say`${analyteWords(own.analyte.analyte)}${isSpiked ? markup(' (spiked)') : NOTHING}`,
          count(`${key}.compared`, own.devices.length),
          count(`${key}.pairs`, own.pairs),
          apartCount(key, own),
          own.equivalent === 0 ? NOTHING : count(`${key}.equivalent`, own.equivalent),
          own.groups.length > NAMED_GROUPS
            ? say`${count(`${key}.groups`, own.groups.length)} groups`
            : groupNames(own),
        ];
      }),
      legend: [
        say`Equivalent: the results leave no difference of the reductions open larger than ${marginPercent}. Not told apart is not the same as equal; a device may stand in several groups.`,
        markup(
          'Apparently: the uncertainty is assumed. A bound is never held against a bound. Pairs without a shared feed, and bounds at different limits, are not compared. All groups: [tables/told-apart-groups.csv](tables/told-apart-groups.csv).',
        ),
        rest === 0
          ? NOTHING
          : say`Nothing is told apart on ${counted('differences.rest', rest, 'further line')} of analyte and kind of feed.`,
      ],
    }),
  ]);
}
