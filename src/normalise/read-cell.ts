import { closestWord } from '../findings/index.ts';
import type { CellKind, Money } from '../model/index.ts';
import type { Measures, Unit } from '../reference/index.ts';
import { type CellProblem, type CellReading, problem } from './cell-problem.ts';
import { readWallTime, readWeekdays, readWindow } from './clock-text.ts';
import { readDecimal } from './decimal.ts';
import { readQuantity } from './quantity-text.ts';

export interface CellContext {
  readonly headerUnit: Unit | null;
  readonly headerCurrency: string | null;
  readonly measures: Measures | null;
}

/** A cell that is not blank, read as its column wants it. */
export function readCell(kind: CellKind, cell: string, context: CellContext): CellReading<unknown> {
  const text = cell.trim();
  switch (kind.type) {
    case 'text':
    case 'key':
      return { value: text };
    case 'list':
      return { value: text.split(/[;|]/).flatMap((word) => word.trim() || []) };
    case 'choice':
      return readChoice(text, kind.words);
    case 'quantity':
      return withFloor(
        readQuantity(text, {
          dimensions: kind.dimensions,
          headerUnit: context.headerUnit,
          measures: context.measures,
          isStopwatch: kind.isStopwatch,
        }),
        kind.min,
      );
    case 'number':
      return readNumber(text, kind);
    case 'money':
      return readMoney(text, context.headerCurrency);
    case 'time':
      return readWallTime(text, kind.needsClock);
    case 'window':
      return readWindow(text, kind.mayWrap);
    case 'weekdays':
      return readWeekdays(text);
    default:
      return kind satisfies never;
  }
}

function readChoice(text: string, words: readonly string[]): CellReading<string> {
  const word = text.toLowerCase();
  if (words.includes(word)) return { value: word };
  const near = closestWord(word, words);
  return problem(
    'choice-unknown',
    `"${text}" is not one of the words this column takes`,
    `${near === null ? '' : `did you mean "${near}"? `}write one of: ${words.join(', ')}`,
  );
}

function withFloor<T extends { readonly value: number; readonly text: string }>(
  reading: CellReading<T>,
  floor: 'positive' | 'not-negative' | 'any',
): CellReading<T> {
  if ('problem' in reading || floor === 'any') return reading;
  const { value, text } = reading.value;
  if (value < 0) {
    return problem('quantity-negative', `"${text}" is below zero`, 'correct the figure');
  }
  if (floor === 'positive' && value === 0) {
    return problem(
      'quantity-zero',
      `"${text}" is zero, and this figure has to be above zero`,
      'correct the figure, or remove the row when nothing was measured',
    );
  }
  return reading;
}

function readNumber(
  text: string,
  kind: Extract<CellKind, { type: 'number' }>,
): CellReading<number> {
  const reading = readDecimal(text);
  if (reading.kind === 'unclear') {
    return problem(
      'decimal-unclear',
      `"${text}" could be read with a decimal or a grouping comma`,
      'write the number with a decimal point and without grouping',
    );
  }
  if (reading.kind === 'none') {
    const isRatio = /^\d+(?:\.\d+)?\s*:\s*\d+(?:\.\d+)?$/.test(text);
    return problem(
      'number-unreadable',
      `"${text}" is not a number`,
      isRatio
        ? 'write one number, drain per clean volume: 3 where 3 L go to drain for each clean litre'
        : 'write digits with a decimal point, without a unit',
    );
  }
  const { value } = reading;
  const tooLow = kind.min !== null && value < kind.min;
  const tooHigh = kind.max !== null && value > kind.max;
  if (tooLow || tooHigh || (kind.whole && !Number.isInteger(value))) {
    const range = `${kind.min === null ? '' : ` from ${kind.min}`}${kind.max === null ? '' : ` to ${kind.max}`}`;
    return problem(
      'number-outside',
      `"${text}" is outside what this column takes`,
      `write a ${kind.whole ? 'whole ' : ''}number${range}`,
    );
  }
  return { value };
}

const AMOUNT_FIRST = /^([\d.,]+)\s*([A-Z]{3})$/;
const CODE_FIRST = /^([A-Z]{3})\s*([\d.,]+)$/;

/** An amount with its currency: `38 USD`; the currency may stand in the header instead. */
export function readMoney(text: string, headerCurrency: string | null): CellReading<Money> {
  const first = AMOUNT_FIRST.exec(text);
  const second = CODE_FIRST.exec(text);
  const written = first?.[2] ?? second?.[1] ?? null;
  const number = first?.[1] ?? second?.[2] ?? text;
  const reading = readDecimal(number);
  if (reading.kind === 'unclear') {
    return problem(
      'decimal-unclear',
      `"${text}" could be read with a decimal or a grouping comma`,
      'write the amount with a decimal point and without grouping, such as 1299 USD',
    );
  }
  if (reading.kind === 'none') return moneyUnreadable(text);
  const currency = written ?? headerCurrency;
  if (currency === null) {
    return problem(
      'currency-missing',
      `"${text}" names no currency`,
      'write the ISO 4217 code behind the amount, such as 38 USD, or in the header: price (USD)',
    );
  }
  if (headerCurrency !== null && currency !== headerCurrency) {
    return problem(
      'unit-clash',
      `"${text}" is in ${currency} and the header says ${headerCurrency}`,
      'keep one of the two currencies',
    );
  }
  if (reading.value < 0) {
    return problem('quantity-negative', `"${text}" is below zero`, 'correct the amount');
  }
  return { value: { amount: reading.value, currency, text } };
}

function moneyUnreadable(text: string): CellProblem {
  return /[$€£¥]/.test(text)
    ? problem(
        'currency-missing',
        `"${text}" uses a sign that several currencies share`,
        'write the ISO 4217 code, such as 38 USD',
      )
    : problem(
        'number-unreadable',
        `"${text}" is not an amount of money`,
        'write the amount and the currency code, such as 38 USD',
      );
}
