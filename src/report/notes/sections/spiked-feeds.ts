import type { ReductionFact } from '../../../analyse/index.ts';
import type { ReductionNotes } from '../analyte-facts.ts';
import { reductionFigure, sidePiece } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import { blocks, bullets, joined, markup, NOTHING, type Piece, say } from '../piece.ts';
import { deviceNames, subjectName } from '../subjects.ts';

/**
 * Reductions of a spiked feed where a natural one leads: one item an analyte, every device with its
 * figure.
 */
export function spikedPart(input: NotesInput, { summaries }: ReductionNotes): Piece {
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
