import { type Finding, finding } from '../../findings/index.ts';
import { levelsOf, type ReferenceLevel } from '../../reference/index.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** Goals and advice, often below what any lab can see. */
const GOALS = /MCLG|MRDLG|PHG|advisory|objective|indicator/;

/**
 * Products not detected or not quantified whose reporting limit lies above a reference level they
 * are compared with: the result cannot show that the water meets it. Told once per analyte and level.
 */
export function limitFindings(view: SampleResults): Finding[] {
  const jurisdictions = view.bench.settings.reference_levels ?? [];
  if (jurisdictions.length === 0) return [];
  const levels = view.table.analytes.map((analyte) =>
    levelsOf(analyte, jurisdictions).filter(isLimit),
  );
  const told = new Set<ReferenceLevel>();
  return view.samples.flatMap((row, sample) => {
    if (row.values.position !== 'product' || !isUsable(row)) return [];
    return [...view.of(sample)].flatMap((index) => {
      const own = levels[view.table.analyte[index] ?? -1] ?? [];
      const { kind } = view.result(index);
      if (own.length === 0 || (kind !== 'notDetected' && kind !== 'notQuantified')) return [];
      const high = view.interval(index)?.high ?? 0;
      return own.flatMap((level) => {
        if (high <= (level.canonicalValue ?? Infinity) || told.has(level)) return [];
        told.add(level);
        return limitAbove(view, index, high, level);
      });
    });
  });
}

/** A current upper limit above zero. */
function isLimit(level: ReferenceLevel): boolean {
  return level.plain && !GOALS.test(level.kind) && (level.canonicalValue ?? 0) > 0;
}

function limitAbove(
  view: SampleResults,
  index: number,
  high: number,
  level: ReferenceLevel,
): Finding {
  const { name, unit } = view.analyte(index);
  return finding(
    'limit-above-level',
    `${name} is only known to be at most ${shortNumber(high)} ${unit}, above the ` +
      `${level.jurisdiction} ${level.kind} of ${shortNumber(level.canonicalValue ?? 0)}`,
    'ask the lab for a method with a lower limit where this level matters',
    view.place(index),
  );
}
