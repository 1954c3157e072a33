import type { FindingCode } from '../findings/index.ts';
import type { LabResult } from '../model/index.ts';
import { type ResultText, readResultText } from './result-text.ts';

/** The cells of a lab row that together make one result, limits already as numbers. */
export interface ResultCells {
  readonly result: string;
  readonly sign: string;
  readonly qualifier: string;
  readonly mdl: number | null;
  readonly rl: number | null;
  /** Counts of organisms: a zero is a real count, less than one in the volume examined. */
  readonly isCount: boolean;
  /** Tells whether a text behind a number is a unit rather than letters. */
  readonly isUnit: (text: string) => boolean;
}

export interface Judgement {
  /** In the unit of the lab; null when the cells cannot be read. */
  readonly result: LabResult | null;
  /** A unit written inside the result cell. */
  readonly cellUnit: string | null;
  readonly findings: readonly JudgementFinding[];
}

export interface JudgementFinding {
  readonly code: FindingCode;
  readonly message: string;
  readonly remedy: string;
}

/**
 * Sign, number, both limits and qualifier letters, judged together.
 *
 * - below: `<x`, `ND`, U beside a number (the number then is the limit);
 * - a number below the reporting limit, or J beside one, is detected, not quantified;
 * - J beside a number at or above the reporting limit is an estimate;
 * - a zero for a chemical is no measurement: not detected where a limit is known, else asked.
 *
 * A lone limit bounds what was not detected, whichever of the two it is.
 */
export function judgeResult(cells: ResultCells): Judgement {
  const text = readResultText(cells.result);
  const tail = readTail(text, cells.isUnit);
  const letters = [...tail.letters, ...lettersOf(cells.qualifier)];
  const findings: JudgementFinding[] = [];
  const sign = readSign(cells.sign, findings);
  const judged = judge(text, sign, letters, cells, findings);
  return { result: judged, cellUnit: tail.unit, findings };
}

type Sign = 'below' | 'above' | 'equal' | 'trace';

const SIGNS: ReadonlyMap<string, Sign> = new Map([
  ['', 'equal'],
  ['=', 'equal'],
  ['<', 'below'],
  ['<=', 'below'],
  ['nd', 'below'],
  ['u', 'below'],
  ['lt', 'below'],
  ['>', 'above'],
  ['>=', 'above'],
  ['gt', 'above'],
  ['tr', 'trace'],
  ['trace', 'trace'],
]);

function readSign(cell: string, findings: JudgementFinding[]): Sign | null {
  const sign = SIGNS.get(cell.normalize('NFKC').trim().toLowerCase());
  if (sign === undefined) {
    findings.push({
      code: 'result-unreadable',
      message: `the sign "${cell.trim()}" is not known`,
      remedy: 'ask the lab what it means; <, =, > and ND are read',
    });
    return null;
  }
  return sign;
}

function readTail(
  text: ResultText,
  isUnit: (text: string) => boolean,
): { readonly letters: readonly string[]; readonly unit: string | null } {
  const tail = 'tail' in text ? text.tail.trim() : '';
  if (tail === '') return { letters: [], unit: null };
  if (isUnit(tail)) return { letters: [], unit: tail };
  return { letters: lettersOf(tail), unit: null };
}

function lettersOf(text: string): string[] {
  return text.split(/[\s,;|]+/).filter((letter) => letter !== '');
}

/** Letters whose meaning changes the interval. All others are kept beside it. */
const BELOW = new Set(['U', 'UJ', 'UU', 'ND']);
const ESTIMATED = new Set(['J', 'J+', 'J-', 'EST']);
const REJECTED = new Set(['R', 'UR']);
const ASKED = new Set(['E']);

function judge(
  text: ResultText,
  sign: Sign | null,
  letters: readonly string[],
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  if (sign === null) return null;
  const upper = letters.map((letter) => letter.toUpperCase());
  const figure = (stated: number | null) => ({
    mdl: cells.mdl,
    rl: cells.rl,
    stated,
    text: [cells.sign.trim(), cells.result.trim()].filter((part) => part !== '').join(' '),
    qualifiers: letters,
    conversion: -1,
  });
  if (upper.some((letter) => REJECTED.has(letter))) {
    return { ...figure(null), kind: 'missing', reason: 'rejected' };
  }
  if (upper.some((letter) => ASKED.has(letter))) {
    findings.push({
      code: 'result-unreadable',
      message: 'the letter E means above the calibrated range in some labs and estimated in others',
      remedy: 'ask the lab, and correct the row by what it says',
    });
    return null;
  }
  switch (text.kind) {
    case 'unreadable':
      return unreadable(cells, findings);
    case 'unclear-decimal':
      findings.push({
        code: 'decimal-unclear',
        message: `"${cells.result.trim()}" could be read with a decimal or a grouping comma`,
        remedy: 'ask the lab for an export with decimal points and no grouping',
      });
      return null;
    case 'missing':
      // A sign column may say all there is: ND beside a blank value.
      return sign === 'below' && text.reason === 'blank'
        ? notDetected(figure(null), null, cells, findings)
        : { ...figure(null), kind: 'missing', reason: text.reason };
    case 'below':
      if (sign === 'above' || sign === 'trace') return clash(cells, findings);
      return notDetected(figure(text.limit), text.limit, cells, findings);
    case 'above':
      if (sign === 'below' || sign === 'trace') return clash(cells, findings);
      return { ...figure(text.limit), kind: 'aboveRange', limit: text.limit };
    case 'trace':
      return sign === 'equal' || sign === 'trace'
        ? notQuantified(figure(null), null, cells, findings)
        : clash(cells, findings);
    case 'absent':
      return { ...figure(1), rl: 1, mdl: null, kind: 'notDetected' };
    case 'present':
      return { ...figure(1), kind: 'aboveRange', limit: 1 };
    case 'number':
      return number(text, sign, upper, figure(text.value), cells, findings);
    default:
      return text satisfies never;
  }
}

type Figure = Omit<Extract<LabResult, { kind: 'notDetected' }>, 'kind'>;

function number(
  text: Extract<ResultText, { kind: 'number' }>,
  sign: Sign,
  letters: readonly string[],
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  const { value } = text;
  if (value < 0) {
    findings.push({
      code: 'result-unreadable',
      message: `"${cells.result.trim()}" is below zero`,
      remedy: 'ask the lab for the limit; a concentration is not negative',
    });
    return null;
  }
  if (sign === 'above') return { ...figure, kind: 'aboveRange', limit: value };
  if (sign === 'trace') return notQuantified(figure, value, cells, findings);
  const saysBelow = sign === 'below' || letters.some((letter) => BELOW.has(letter));
  if (saysBelow && value > 0) return notDetected(figure, value, cells, findings);
  if (value === 0) return zero(saysBelow, figure, cells, findings);
  const isEstimate = letters.some((letter) => ESTIMATED.has(letter));
  if (cells.rl !== null && value < cells.rl) {
    return notQuantified(figure, value, cells, findings);
  }
  if (isEstimate && cells.rl === null) {
    findings.push({
      code: 'result-limit-missing',
      message: `"${figure.text}" is marked J and the lab gives no reporting limit`,
      remedy: 'ask the lab for the reporting limit; it bounds a result that was not quantified',
    });
    return null;
  }
  if (isEstimate) {
    findings.push({
      code: 'result-estimated',
      message: `"${figure.text}" is marked as estimated although it is above the reporting limit`,
      remedy: 'ask the lab why; a retest makes the figure firm',
    });
  }
  return { ...figure, kind: 'quantified', value, standardUncertainty: null, isEstimate };
}

/** A zero is a real count of organisms and no measurement of a chemical. */
function zero(
  saysBelow: boolean,
  figure: Figure,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  if (cells.isCount) {
    return { ...figure, kind: 'notDetected', rl: cells.rl ?? 1 };
  }
  if (!saysBelow && (cells.rl !== null || cells.mdl !== null)) {
    findings.push({
      code: 'result-zero',
      message: `the lab reports "${figure.text}" for a chemical; it was taken as not detected`,
      remedy: 'ask the lab whether zero stands for not detected',
    });
  }
  return notDetected({ ...figure, stated: null }, null, cells, findings);
}

/**
 * A number behind `<` is one of the two limits: the one it equals, else the one that is missing.
 */
function notDetected(
  figure: Figure,
  stated: number | null,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  let { mdl, rl } = cells;
  if (stated !== null && stated !== mdl && stated !== rl) {
    if (rl === null) {
      rl = stated;
    } else if (stated > rl) {
      findings.push({
        code: 'result-limit-order',
        message: `"${figure.text}" is a higher limit than the reporting limit ${rl} beside it`,
        remedy: 'ask the lab whether the sample was diluted; the higher limit was used',
      });
      rl = stated;
    } else if (mdl === null || stated > mdl) {
      mdl = stated;
    }
  }
  if (mdl === null && rl === null) {
    findings.push({
      code: 'result-limit-missing',
      message: `"${figure.text}" comes without a limit`,
      remedy: 'ask the lab for its detection and reporting limit of this analyte',
    });
    return null;
  }
  return { ...figure, mdl, rl, kind: 'notDetected' };
}

function notQuantified(
  figure: Figure,
  value: number | null,
  cells: ResultCells,
  findings: JudgementFinding[],
): LabResult | null {
  if (cells.rl === null) {
    findings.push({
      code: 'result-limit-missing',
      message: `"${figure.text}" was detected and not quantified, and no reporting limit is given`,
      remedy: 'ask the lab for the reporting limit; it is the upper bound of such a result',
    });
    return null;
  }
  if (value !== null && cells.mdl !== null && value < cells.mdl) {
    findings.push({
      code: 'result-limit-order',
      message: `"${figure.text}" lies below the detection limit ${cells.mdl} beside it`,
      remedy: 'ask the lab; the result was taken as anything up to the reporting limit',
    });
    return { ...figure, mdl: null, kind: 'notQuantified' };
  }
  return { ...figure, kind: 'notQuantified' };
}

function unreadable(cells: ResultCells, findings: JudgementFinding[]): null {
  findings.push({
    code: 'result-unreadable',
    message: `"${cells.result.trim()}" is not a lab result`,
    remedy: 'ask the lab what it means',
  });
  return null;
}

function clash(cells: ResultCells, findings: JudgementFinding[]): null {
  findings.push({
    code: 'result-sign-clash',
    message: `the sign "${cells.sign.trim()}" and the result "${cells.result.trim()}" disagree`,
    remedy: 'ask the lab which of the two holds',
  });
  return null;
}
