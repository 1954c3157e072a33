import type { LabResult, LetterMeaning } from '../model/index.ts';
import { notDetected, notQuantified, presence, range } from './lab-results/judge-limits.ts';
import { plainNumber } from './lab-results/judge-number.ts';
import { type LetterReader, lettersOf, SHARED_READER } from './lab-results/letter-meaning.ts';
import type {
  Figure,
  Judgement,
  JudgementFinding,
  ResultCells,
} from './lab-results/result-cells.ts';
import { isDoubtfulNotDetected } from './lab-results/result-words.ts';
import { meaningsOf, type RowMeaning } from './lab-results/row-meaning.ts';
import { type ResultText, readResultText, wordForm } from './result-text.ts';

export type { Judgement, JudgementFinding, ResultCells } from './lab-results/result-cells.ts';

/**
 * Sign, number, both limits, condition and qualifier letters, judged together.
 *
 * - below: `<x`, `ND`, U beside a number (the number then is the limit);
 * - a number below the reporting limit, or J beside one, is detected, not quantified;
 * - J beside a number at or above the reporting limit is an estimate;
 * - a zero for a chemical is no measurement: not detected where a limit is known, else asked;
 * - a letter that has two meanings is asked about until the file's list is named.
 *
 * A lone limit bounds what was not detected, whichever of the two it is.
 */
export function judgeResult(cells: ResultCells): Judgement {
  const findings: JudgementFinding[] = [];
  const text = readResultText(cells.result, cells.marks);
  const meaningOf = cells.meaningOf ?? SHARED_READER;
  const alone = lettersAlone(text, cells.result, meaningOf);
  const tail = readTail(text, cells.isUnit);
  const letters = [...alone, ...tail.letters, ...lettersOf(cells.qualifier)];
  const read: ResultText =
    alone.length > 0
      ? { kind: 'missing', reason: 'blank' }
      : tail.isStrange
        ? { kind: 'unreadable' }
        : text;
  const meaning = meaningsOf(cells, letters, meaningOf, findings);
  const result = meaning === null ? null : judge(read, meaning, letters, cells, findings);
  return { result, cellUnit: tail.unit, findings };
}

/** A cell that holds nothing but letters the file's list explains: `K`, `J;U`. */
function lettersAlone(text: ResultText, cell: string, meaningOf: LetterReader): string[] {
  if (text.kind !== 'unreadable') return [];
  const letters = lettersOf(cell);
  return letters.every((letter) => meaningOf(letter) !== null) ? letters : [];
}

interface Tail {
  readonly letters: readonly string[];
  readonly unit: string | null;
  /** True where something stands behind the figure that is neither unit nor letters. */
  readonly isStrange: boolean;
}

function readTail(text: ResultText, isUnit: (text: string) => boolean): Tail {
  const tail = 'tail' in text ? text.tail.trim() : '';
  if (tail === '') return { letters: [], unit: null, isStrange: false };
  if (isUnit(tail)) return { letters: [], unit: tail, isStrange: false };
  // A unit may be followed by letters: 5.0 mg/L J.
  const parts = /^(\S+)\s+(.+)$/.exec(tail);
  const [unit = '', behind = ''] = parts?.slice(1) ?? [];
  const hasUnit = parts !== null && isUnit(unit);
  const letters = lettersOf(hasUnit ? behind : tail);
  const isStrange = letters.some(isNoLetter);
  return { letters: isStrange ? [] : letters, unit: hasUnit ? unit : null, isStrange };
}

/**
 * A second figure, a power of ten or a remark behind a figure changes or questions it, so it is
 * never kept as a letter.
 */
function isNoLetter(text: string): boolean {
  if (/^\d+-\d+[A-Z]$/.test(text)) return false;
  return text.length > 6 || /^[-+<>=]?[\d.,]/.test(text) || /^(?:e[+-]?\d|[x×*]\s*10)/i.test(text);
}

function judge(
  text: ResultText,
  meaning: RowMeaning,
  letters: readonly string[],
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  const figure = (stated: number | null): Figure => ({
    mdl: cells.mdl,
    rl: cells.rl,
    stated,
    text: [cells.sign, cells.result, cells.condition ?? '']
      .map((part) => part.trim())
      .filter((part) => part !== '')
      .join(' '),
    qualifiers: letters,
    conversion: -1,
  });
  const { set, limitOf } = meaning;
  if (set.has('rejected')) return { ...figure(null), kind: 'missing', reason: 'rejected' };
  if (set.has('not-tested')) {
    const hasFigure = text.kind !== 'missing' && !letters.some((letter) => cells.result === letter);
    if (hasFigure && meaning.isCondition) return clash(cells, findings);
    return { ...figure(null), kind: 'missing', reason: 'not-tested' };
  }
  switch (text.kind) {
    case 'unreadable':
      return unreadable(cells, findings);
    case 'asked':
      return asked(cells, text.why, findings);
    case 'unclear-decimal':
      return unclearDecimal(cells, findings);
    case 'missing':
      return blank(text.reason, meaning, figure(null), findings);
    case 'below':
      if (set.has('above') || (set.has('between') && !set.has('below'))) {
        return clash(cells, findings);
      }
      return below(text.limit, text.of ?? limitOf, figure(text.limit), cells, findings);
    case 'above':
      if (meaning.saysBelow || set.has('between')) return clash(cells, findings);
      return above(text, figure(text.limit), cells, findings);
    case 'trace':
      if (meaning.saysBelow || set.has('above')) return clash(cells, findings);
      return notQuantified(figure(text.value), text.value, findings);
    case 'range':
      if (meaning.saysBelow || set.has('above')) return clash(cells, findings);
      return range(text.low, text.high, figure(null), findings);
    case 'absent':
    case 'present':
      // One letter says so only where presence is what is looked for.
      if (!cells.isCount && cells.result.trim().length === 1) return unreadable(cells, findings);
      return presence(text.kind === 'present', figure(null), cells, findings);
    case 'number':
      return number(text, meaning, figure(text.value), cells, findings);
    default:
      return text satisfies never;
  }
}

/** A number under whatever sign, condition and letters stand beside it. */
function number(
  text: Extract<ResultText, { kind: 'number' }>,
  meaning: RowMeaning,
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  const { value } = text;
  const { set, saysBelow } = meaning;
  if (saysBelow && set.has('above')) return clash(cells, findings);
  if (set.has('above')) return { ...figure, kind: 'aboveRange', limit: value };
  const mayBeBetween = set.has('between') || set.has('estimated');
  const isBetween =
    cells.mdl !== null && cells.rl !== null && cells.mdl < value && value < cells.rl;
  if (saysBelow && value > 0) {
    // Some labs write ND or U beside a real estimate between the limits, and mark it J.
    if (mayBeBetween && isBetween) return notQuantified(figure, value, findings);
    return below(value, meaning.limitOf, figure, cells, findings);
  }
  if (saysBelow && value === 0 && !cells.isCount) {
    return below(null, meaning.limitOf, { ...figure, stated: null }, cells, findings);
  }
  if (set.has('between') && value > 0) return notQuantified(figure, value, findings);
  const marks: ReadonlySet<LetterMeaning> = text.isApproximate
    ? new Set<LetterMeaning>([...set, 'doubtful'])
    : set;
  return plainNumber(value, text.plusMinus, marks, figure, cells, findings);
}

function blank(
  reason: Extract<ResultText, { kind: 'missing' }>['reason'],
  meaning: RowMeaning,
  figure: Figure,
  findings: JudgementFinding[],
): LabResult | null {
  const { set, saysBelow, limitOf } = meaning;
  const speaks = reason === 'blank' || reason === 'not-tested';
  if (speaks && saysBelow) return notDetected(figure, null, limitOf, findings);
  if (speaks && (set.has('between') || (set.has('estimated') && reason === 'blank'))) {
    return notQuantified(figure, null, findings);
  }
  if (speaks && set.has('above')) {
    findings.push({
      code: 'result-limit-missing',
      message: `"${figure.text}" is above the range and the export does not say which`,
      remedy: 'ask the lab for the upper end of its range',
    });
    return null;
  }
  return { ...figure, kind: 'missing', reason };
}

function below(
  limit: number | null,
  of: RowMeaning['limitOf'],
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  const word = wordForm(cells.result.trim());
  if (limit === null && isDoubtfulNotDetected(word) && cells.marks?.decimal === ',') {
    if (cells.notDetected === undefined || cells.notDetected === null) {
      return asked(cells, 'not detected in some languages and not determined in others', findings);
    }
  }
  if (limit === null && cells.notDetected === 'not-tested') {
    return { ...figure, kind: 'missing', reason: 'not-tested' };
  }
  const stated = limit === null && of === null ? (cells.notDetected ?? null) : of;
  return notDetected(figure, limit, stated === 'not-tested' ? null : stated, findings);
}

function above(
  text: Extract<ResultText, { kind: 'above' }>,
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  if (text.limit !== null) return { ...figure, kind: 'aboveRange', limit: text.limit };
  if (text.isUncountable && cells.isCount) {
    return { ...figure, kind: 'aboveRange', limit: cells.countableMaximum ?? 1 };
  }
  return unreadable(cells, findings);
}

function unreadable(cells: ResultCells, findings: JudgementFinding[]): null {
  const cell = cells.result.trim();
  findings.push(
    cells.isUnit(cell)
      ? {
          code: 'row-shifted',
          message: `the result cell holds the unit "${cell}"; the row may be shifted by a column`,
          remedy: 'compare the row with the report of the lab and ask for the export again',
        }
      : {
          code: 'result-unreadable',
          message: `"${cell}" is not a lab result`,
          remedy: 'ask the lab what it means',
        },
  );
  return null;
}

function asked(cells: ResultCells, why: string, findings: JudgementFinding[]): null {
  findings.push({
    code: 'result-unreadable',
    message: `"${cells.result.trim()}" is ${why}`,
    remedy: 'ask the lab what it means, and say so in the sidecar where it can be said there',
  });
  return null;
}

function unclearDecimal(cells: ResultCells, findings: JudgementFinding[]): null {
  findings.push({
    code: 'decimal-unclear',
    message: `"${cells.result.trim()}" could be read with a decimal or a grouping comma or point`,
    remedy: 'name decimal_mark in the sidecar, or ask the lab for plain decimal points',
  });
  return null;
}

function clash(cells: ResultCells, findings: JudgementFinding[]): null {
  const said = [cells.sign, cells.condition ?? '', cells.qualifier]
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .join(' ');
  findings.push({
    code: 'result-sign-clash',
    message: `"${said}" and the result "${cells.result.trim()}" disagree`,
    remedy: 'ask the lab which of the two holds',
  });
  return null;
}
