import type { ReductionFact } from '../../../analyse/index.ts';
import type { SpikeRow } from '../../../model/index.ts';
import type { ReductionNotes } from '../analyte-facts.ts';
import { amount, reductionFigure, sidePiece, spreadFigure } from '../figures.ts';
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
    dosesPart(input),
  ]);
}

/** Nominal doses beside what the feed held; every reduction above uses the measured feed. */
function dosesPart(input: NotesInput): Piece {
  const rows = input.outcomes.spikes.rows as readonly SpikeRow[];
  if (rows.length === 0) return NOTHING;
  const told = rows.map((row) => {
    const key = `dose.${row.event}.${row.analyte}`;
    const name = input.bench.analytes.byKey(row.analyte)?.name ?? row.analyte;
    const { recovery } = row;
    const found =
      recovery.estimate === null
        ? NOTHING
        : say`, ${spreadFigure(`${key}.recovery`, percentOf(recovery), '%')} % of the dose found`;
    const said = markup(row.agreement === 'differs' ? ': **the two differ**' : '');
    return say`${name} (${row.event}): dosed with ${amount(key, row.nominal, row.unit)}, measured ${sidePiece(`${key}.feed`, row.measured, row.unit)}${found}${said}.`;
  });
  return blocks([
    markup('Reductions use the feed as measured, never the nominal dose:'),
    bullets(told),
  ]);
}

function percentOf({ low, estimate, high }: SpikeRow['recovery']): SpikeRow['recovery'] {
  const percent = (fraction: number | null) => (fraction === null ? null : fraction * 100);
  return { low: percent(low), estimate: percent(estimate), high: percent(high) };
}
