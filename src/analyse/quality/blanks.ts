import { type Finding, finding } from '../../findings/index.ts';
import type { LabResult } from '../../model/index.ts';
import { groupedBy } from './grouped-by.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { firstNames, shortNumber } from './short-number.ts';

/** Found in laboratories whatever the sample; they count up to twice as far. */
const LABORATORY_CONTAMINANTS = new Set([
  'acetone',
  '2-butanone',
  'dichloromethane',
  'toluene',
  'di-2-ethylhexyl-phthalate',
]);

/**
 * What a blank held, against the samples it stands for: those of its event, or of its lab file where
 * it names no event.
 *
 * A result below `blank_factor` times the blank (twice that for contaminants of laboratories) may be
 * the blank's.
 */
export function blankFindings(view: SampleResults): Finding[] {
  const events = groupedBy(
    view.samples.flatMap((row, sample) =>
      row.values.position !== 'blank' && isUsable(row) ? { sample, event: row.values.event } : [],
    ),
    ({ event }) => event ?? '',
  );
  const all = [...events.values()].flat();
  return view.samples.flatMap((row, blank) => {
    if (row.values.position !== 'blank' || !isUsable(row)) return [];
    const { event } = row.values;
    const meant = (event === null ? all : (events.get(event) ?? [])).map(({ sample }) => sample);
    return [...view.of(blank)].flatMap((index) => {
      const { group } = view.analyte(index);
      const amount = detectedAmount(view.result(index));
      return amount === null || group === 'physical' ? [] : told(view, meant, index, amount);
    });
  });
}

/** What was seen: the figure, or the most a figure between the limits can be; null for none. */
function detectedAmount(result: LabResult): number | null {
  if (result.kind === 'quantified') return result.value;
  if (result.kind === 'aboveRange') return result.limit;
  return result.kind === 'notQuantified' ? (result.stated ?? result.rl) : null;
}

function told(
  view: SampleResults,
  meant: readonly number[],
  index: number,
  amount: number,
): Finding {
  const analyte = view.analyte(index);
  const own = view.bench.settings.quality.blank_factor;
  const factor = LABORATORY_CONTAMINANTS.has(analyte.key) ? 2 * own : own;
  const touched = touchedSamples(view, meant, index, factor * amount);
  const held = `the blank holds ${analyte.name}, ${shortNumber(amount)} ${analyte.unit}`;
  if (touched.length === 0) {
    return finding(
      'blank-detection',
      `${held}; every result of it is clear of that`,
      'none needed; say in the notes that the blank was not empty',
      view.place(index),
    );
  }
  return finding(
    'blank-contaminated',
    `${held}; results below ${shortNumber(factor * amount)} ${analyte.unit} may come from there: ` +
      firstNames(touched),
    'take new samples and a new blank, or leave the analyte out for these samples',
    view.place(index),
  );
}

function touchedSamples(
  view: SampleResults,
  meant: readonly number[],
  index: number,
  bound: number,
): string[] {
  const { analyte, file } = view.table;
  return meant.flatMap((sample) => {
    const found = view.find(sample, analyte[index] ?? -1, file[index] ?? null);
    const amount = found === -1 ? null : detectedAmount(view.result(found));
    return amount !== null && amount < bound ? view.sampleName(sample) : [];
  });
}
