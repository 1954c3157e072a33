import type { NotesInput } from '../notes-input.ts';
import { blocks, bullets, markup, type Piece, quoted, say } from '../piece.ts';

/** The methods in a few lines; the long form is in the documentation of the tool. */
export function methodsSection(input: NotesInput): Piece {
  const { nondetect_bound, feed, cross_lab } = input.bench.settings;
  return blocks([
    markup('## Methods in brief'),
    bullets([
      say`Results are intervals. Not detected lies between zero and the ${nondetect_bound} limit of the lab; detected and not quantified between its two limits. Half a limit never stands for a value.`,
      markup(
        'Reduction: one minus product over feed, by interval arithmetic; from one minus highest product over lowest feed to one minus lowest product over highest feed. Several occasions: ratio of arithmetic means, bound by bound, natural feeds before spiked ones.',
      ),
      say`Feed of a product: ${markup(feed.matching === 'event' ? 'of the same occasion' : 'of the same occasion, else those taken before and after it')}${markup(feed.matching === 'event' ? '' : ' within ')}${feed.matching === 'event' ? markup('') : quoted(feed.window)}${markup(cross_lab ? '; the two may come from different lab files.' : '; both from one lab file.')}`,
      markup(
        'Drain while producing: all drain over all clean water of the runs that count, with a volume per start where runs of different size tell it apart. Scenarios: every pour is played through the flush rules of the device. Volumes are pooled; ratios are never averaged.',
      ),
      markup(
        'A pour that stands alone: drain ratio plus fixed drain over pour volume. Same drain of two devices: difference of fixed drains over difference of ratios.',
      ),
      markup('Flow: all volume over all time.'),
      ...subjects(input),
      markup(
        'Lower bounds are rounded down and upper bounds up; nothing is rounded to complete removal. Every figure can be followed to file, line and column with `pourbench trace`.',
      ),
    ]),
    markup(
      'Formulas with their sources: `docs/methods.md` of the tool; the words used here: its `docs/notes.md`.',
    ),
  ]);
}

/** One line for each further subject that the bench holds. */
function subjects({ outcomes }: NotesInput): Piece[] {
  const lines: readonly (readonly [{ readonly rows: readonly unknown[] }, string])[] = [
    [
      outcomes.toldApartGroups,
      'Telling apart: products on feeds that two devices share, the confidence shared out over all pairs of the analyte; natural and spiked feeds apart.',
    ],
    [
      outcomes.claims,
      'Claims: the bound of the reduction or of the product against the figure claimed, inside the conditions of the claim; misses are held to a false-discovery rate over all claims.',
    ],
    [
      outcomes.minerals,
      'Minerals: gains and saturation indices by interval arithmetic over the limits of the true values.',
    ],
    [
      outcomes.idleRise,
      'After a pause: readings of one meter and scale; between two tested pauses a straight line in the length of the pause, never beyond them.',
    ],
    [outcomes.panel, 'Taste: exact binomial tests against guessing.'],
    [
      outcomes.costs,
      'Costs: purchase, parts by wear or bought whole, water, sewer and energy; what is not known is named and not counted. No currency is converted.',
    ],
  ];
  return lines.flatMap(([{ rows }, text]) => (rows.length === 0 ? [] : markup(text)));
}

/** The cautions that stand for the whole of the notes. */
export function cautionsSection(): Piece {
  return blocks([
    markup('## Cautions'),
    bullets([
      markup('A test before and after a device is no certification.'),
      markup('The results hold for this feed, these samples and these specimens.'),
      markup(
        'Nothing here is medical advice. A reference level is a level for supplies, with its jurisdiction and kind.',
      ),
      markup(
        'Water that is unsafe for its microbes needs proper disinfection; no result here shows that a device provides it.',
      ),
      markup(
        'Drain connections and electrical work follow local codes and are work for licensed trades.',
      ),
    ]),
  ]);
}
