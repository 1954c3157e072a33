import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace } from '../../model/index.ts';
import { groupedBy } from './grouped-by.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { firstNames } from './short-number.ts';

/** One printed figure in so many analytes, in each of them in so many samples, is no coincidence. */
const ANALYTES = 4;
const SAMPLES = 3;

/** An analyte whose quantified figures so often equal its limit was given the limit. */
const AT_LIMIT = 3;

/** Samples that share fewer quantified figures can be alike by chance. */
const FIGURES = 8;

/** Figures that say nothing about a sample when they repeat. */
const PHYSICAL = 'physical';

/**
 * Figures that repeat where they should not: one constant over analytes and samples, a limit printed
 * as a value, and a sample that repeats another sample's figures throughout.
 */
export function repeatedValueFindings(view: SampleResults): Finding[] {
  const printed = printedFigures(view);
  const constant = constants(view, printed);
  return [
    ...constant.findings,
    ...limitsAsValues(view, printed, constant.analytes),
    ...copiedSamples(view),
  ];
}

/** One figure of one analyte in one lab file, as it was printed, and how often. */
interface Printed {
  readonly file: number;
  readonly analyte: number;
  readonly text: string;
  readonly isLimit: boolean;
  readonly count: number;
  /** Index of the first result. */
  readonly first: number;
}

/**
 * Quantified figures by file, analyte and printed text. Rows with the same texts share one result, so
 * that the rows are counted in integers and only distinct results cost an object.
 */
function printedFigures(view: SampleResults): Printed[] {
  const { table } = view;
  const counts = new Int32Array(table.distinct.length);
  const firsts = new Int32Array(table.distinct.length).fill(-1);
  for (let index = 0; index < table.length; index += 1) {
    const result = table.result[index] ?? 0;
    counts[result] = (counts[result] ?? 0) + 1;
    if ((firsts[result] ?? -1) === -1) firsts[result] = index;
  }
  return table.distinct.flatMap((result, at) => {
    const first = firsts[at] ?? -1;
    if (first === -1 || result.kind !== 'quantified') return [];
    if (view.analyte(first).group === PHYSICAL) return [];
    return {
      file: table.file[first] ?? -1,
      analyte: table.analyte[first] ?? -1,
      text: result.text,
      isLimit: result.rl !== null && result.rl > 0 && result.value === result.rl,
      count: counts[at] ?? 0,
      first,
    };
  });
}

function constants(
  view: SampleResults,
  printed: readonly Printed[],
): { readonly findings: Finding[]; readonly analytes: ReadonlySet<string> } {
  const analytes = new Set<string>();
  const byText = groupedBy(
    printed.filter(({ count }) => count >= SAMPLES),
    ({ file, text }) => `${file}\t${text}`,
  );
  const findings = [...byText.values()].flatMap((often) => {
    const keys = new Set(often.map(({ analyte }) => analyte));
    if (keys.size < ANALYTES) return [];
    for (const { file, analyte } of often) analytes.add(`${file}\t${analyte}`);
    const total = often.reduce((sum, { count }) => sum + count, 0);
    const earliest = Math.min(...often.map(({ first }) => first));
    return finding(
      'result-repeats-constant',
      `"${view.result(earliest).text}" stands for ${total} results of ${keys.size} analytes ` +
        `(${firstNames(often.map(({ first }) => view.analyte(first).name))}): it may be a limit ` +
        'printed as a value',
      'ask the lab what it prints for not detected, and name that in the layout of the file',
      view.place(earliest),
    );
  });
  return { findings, analytes };
}

function limitsAsValues(
  view: SampleResults,
  printed: readonly Printed[],
  constant: ReadonlySet<string>,
): Finding[] {
  const byAnalyte = groupedBy(printed, ({ file, analyte }) => `${file}\t${analyte}`);
  return [...byAnalyte].flatMap(([key, figures]) => {
    const sum = (of: readonly Printed[]) => of.reduce((all, { count }) => all + count, 0);
    const atLimit = figures.filter(({ isLimit }) => isLimit);
    const first = atLimit[0]?.first;
    const often = sum(atLimit);
    const all = sum(figures);
    if (first === undefined || constant.has(key) || often < AT_LIMIT || 2 * often < all) return [];
    return finding(
      'result-equals-limit',
      `${often} of ${all} figures of ${view.analyte(first).name} equal its reporting limit ` +
        'exactly: the limit may stand for not detected',
      'ask the lab what it prints for not detected, and name that in the layout of the file',
      view.place(first),
    );
  });
}

/** A report that repeats an older one, or a sample entered twice. */
function copiedSamples(view: SampleResults): Finding[] {
  const marks = view.table.distinct.map(({ text }) => markOf(text));
  const first = new Map<number, number>();
  return view.samples.flatMap((row, sample) => {
    if (!isUsable(row)) return [];
    let mark = 0;
    let quantified = 0;
    for (const index of view.of(sample)) {
      const analyte = view.table.analyte[index] ?? 0;
      mark = Math.imul(mark ^ (marks[view.table.result[index] ?? 0] ?? 0) ^ analyte, 0x01000193);
      if (view.result(index).kind === 'quantified') quantified += 1;
    }
    if (quantified < FIGURES) return [];
    const earlier = first.get(mark);
    if (earlier === undefined) first.set(mark, sample);
    if (earlier === undefined || !isCopy(view, earlier, sample)) return [];
    return finding(
      'sample-repeats-another',
      `all ${view.of(sample).length} results equal those of ${view.sampleName(earlier)}: an older ` +
        'report, or one bottle entered twice',
      'ask the lab for the report of this sample, and compare sampling dates',
      cellPlace(row, 'sample'),
    );
  });
}

/** Texts that differ nearly always have different marks; equal marks are looked at again. */
function markOf(text: string): number {
  let mark = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) {
    mark = Math.imul(mark ^ text.charCodeAt(at), 0x01000193);
  }
  return mark;
}

function isCopy(view: SampleResults, earlier: number, later: number): boolean {
  const [a, b] = [view.of(earlier), view.of(later)];
  return (
    a.length === b.length &&
    a.every((index, at) => {
      const other = b[at] ?? -1;
      const isSameAnalyte = view.table.analyte[index] === view.table.analyte[other];
      return isSameAnalyte && view.result(index).text === view.result(other).text;
    })
  );
}
