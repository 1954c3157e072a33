import type { LetterMeaning } from '../../model/index.ts';
import { wordForm } from '../result-text.ts';
import { type LetterReader, lettersOf } from './letter-meaning.ts';
import type { JudgementFinding, ResultCells } from './result-cells.ts';
import { CONDITION_NOTES, type LimitKind, RESULT_WORDS } from './result-words.ts';

/** What sign, condition and letters together say about the figure of a row. */
export interface RowMeaning {
  readonly set: ReadonlySet<LetterMeaning>;
  /** Not detected, whoever says so. */
  readonly saysBelow: boolean;
  /** The limit such a statement names. */
  readonly limitOf: LimitKind | null;
  /** True where the condition column says something. */
  readonly isCondition: boolean;
}

const SIGNS: ReadonlyMap<string, LetterMeaning | 'equal'> = new Map([
  ['', 'equal'],
  ['=', 'equal'],
  ['==', 'equal'],
  ['~', 'doubtful'],
  ['<', 'below'],
  ['<=', 'below'],
  ['≤', 'below'],
  ['lt', 'below'],
  ['>', 'above'],
  ['>=', 'above'],
  ['≥', 'above'],
  ['gt', 'above'],
]);

/** @returns null where a sign or a letter has to be asked about; the findings then say so */
export function meaningsOf(
  cells: ResultCells,
  letters: readonly string[],
  meaningOf: LetterReader,
  findings: JudgementFinding[],
): RowMeaning | null {
  const set = new Set<LetterMeaning>();
  const sign = readSign(cells.sign, meaningOf, findings);
  if (sign === null) return null;
  for (const meaning of sign) set.add(meaning);
  const condition = readCondition(cells.condition ?? '', findings);
  if (condition === null) return null;
  if (condition !== 'none') set.add(condition);
  const asked: string[] = [];
  for (const letter of letters) {
    const meaning = meaningOf(letter);
    if (meaning === 'ask') asked.push(letter);
    else if (meaning === null) findings.push(letterUnknown(letter));
    else set.add(meaning);
  }
  const saysBelow = [...set].some((meaning) => meaning.startsWith('below'));
  const [first] = asked;
  // What was not detected or is rejected stays so, whatever B or K beside it means.
  if (first !== undefined && !saysBelow && !set.has('rejected')) {
    findings.push(letterAsked(first));
    return null;
  }
  const limitOf = set.has('below-reporting')
    ? 'reporting'
    : set.has('below-detection')
      ? 'detection'
      : null;
  if (saysBelow) set.add('below');
  return { set, saysBelow, limitOf, isCondition: condition !== 'none' };
}

function readSign(
  cell: string,
  meaningOf: LetterReader,
  findings: JudgementFinding[],
): readonly LetterMeaning[] | null {
  const word = wordForm(cell.normalize('NFKC').trim());
  const sign = SIGNS.get(word);
  if (sign !== undefined) return sign === 'equal' ? [] : [sign];
  const meaning = wordMeaning(word);
  if (meaning !== null) return [meaning];
  const letters = lettersOf(cell).map((letter) => meaningOf(letter));
  if (letters.length > 0 && letters.every((each) => each !== null && each !== 'ask')) {
    return letters.filter((each) => each !== null);
  }
  findings.push({
    code: 'result-unreadable',
    message: `the sign "${cell.trim()}" is not known`,
    remedy:
      'ask the lab what it means; <, =, > and ND are read, letters by the list of the sidecar',
  });
  return null;
}

function readCondition(cell: string, findings: JudgementFinding[]): LetterMeaning | 'none' | null {
  const word = wordForm(cell.normalize('NFKC').replace(/\s+/g, ' ').trim());
  if (word === '' || word === 'na' || word === 'n/a') return 'none';
  if (CONDITION_NOTES.has(word)) return 'doubtful';
  const meaning = wordMeaning(word);
  if (meaning !== null) return meaning;
  findings.push({
    code: 'result-unreadable',
    message: `the condition "${cell.trim()}" is not known`,
    remedy: 'ask the lab what it means',
    subject: word,
  });
  return null;
}

/** A word of a sign or condition column as what it does to the figure beside it. */
function wordMeaning(word: string): LetterMeaning | null {
  const meaning = RESULT_WORDS.get(word);
  switch (meaning?.kind) {
    case 'below':
      return meaning.of === null ? 'below' : `below-${meaning.of}`;
    case 'trace':
      return 'between';
    case 'above':
      return 'above';
    case 'missing':
      return meaning.reason === 'rejected' ? 'rejected' : 'not-tested';
    default:
      return null;
  }
}

function letterAsked(letter: string): JudgementFinding {
  return {
    code: 'result-unreadable',
    message: `the letter ${letter} has different meanings in different labs`,
    remedy:
      'name the list in force (qualifier_list) or the meaning of the letter (letters) in the sidecar',
    subject: letter.toUpperCase(),
  };
}

function letterUnknown(letter: string): JudgementFinding {
  return {
    code: 'result-qualifier-unknown',
    message: `the meaning of "${letter}" is not stated; it is kept beside the figure`,
    remedy: 'name its meaning in the sidecar (letters), or the list in force (qualifier_list)',
    subject: letter.toUpperCase(),
  };
}
