import { BenchError } from '../findings/index.ts';
import type { Bench, PriceList } from '../model/index.ts';
import { readMoney, readQuantity } from '../normalise/index.ts';
import type { Analyte } from '../reference/index.ts';
import { reductionOf } from './read-claims.ts';

/** A reduction that is to be shown. */
export interface Wanted {
  readonly analyte: Analyte;
  readonly fraction: number;
}

/**
 * A wanted reduction as it is written: `lead=99 %`, `e-coli=4 log`.
 * @throws {BenchError} option-unknown, analyte-unknown, or the problem of the figure
 */
export function readWanted(bench: Bench, text: string): Wanted {
  const equals = text.lastIndexOf('=');
  const where = `--wanted "${text}"`;
  if (equals < 1) {
    throw new BenchError(
      'option-unknown',
      `${where} is no analyte and reduction`,
      'write <analyte>=<reduction>, such as "lead=99 %"',
    );
  }
  const name = text.slice(0, equals).trim();
  const known = bench.analytes.byKey(name);
  const reading = known === undefined ? bench.analytes.resolve(name, null) : null;
  const analyte = known ?? (reading?.kind === 'found' ? reading.analyte : null);
  if (analyte === null) {
    const near = reading?.kind === 'unknown' ? reading.suggestions : [];
    throw new BenchError(
      'analyte-unknown',
      `${where}: "${name}" is not one known analyte`,
      near.length === 0
        ? 'write its key, see `pourbench lookup`'
        : `did you mean ${near.map((word) => `"${word}"`).join(' or ')}?`,
    );
  }
  return { analyte, fraction: reductionText(text.slice(equals + 1).trim(), where) };
}

function reductionText(text: string, where: string): number {
  const reading = readQuantity(text, {
    dimensions: ['ratio', 'log-reduction'],
    headerUnit: null,
    measures: null,
    isStopwatch: false,
  });
  if ('problem' in reading) {
    throw new BenchError(
      reading.problem,
      `${where}: ${reading.message}`,
      'write a reduction above 0 and below 100 %, such as 99 %, or 2 log',
    );
  }
  const [part, ...others] = reading.value.parts;
  const target =
    part === undefined || others.length > 0 ? `"${text}" is not one figure` : reductionOf(part);
  if (typeof target === 'string' || target.fraction >= 1) {
    const message = typeof target === 'string' ? target : 'complete removal cannot be shown';
    throw new BenchError(
      'number-outside',
      `${where}: ${message}`,
      'write a reduction above 0 and below 100 %, such as 99 %',
    );
  }
  return target.fraction;
}

/**
 * A share as it is written, `5 %` or `0.05`, above 0 and below 1.
 * @throws {BenchError} number-outside
 */
export function readShare(text: string, option: string): number {
  const percent = /^(.*?)\s*%$/.exec(text.trim());
  const digits = percent?.[1] ?? text.trim();
  const share = Number(digits) / (percent === null ? 1 : 100);
  if (!/^\d+(?:\.\d+)?$/.test(digits) || !(share > 0 && share < 1)) {
    throw new BenchError(
      'number-outside',
      `${option}: "${text}" is no share above 0 and below 100 %`,
      'write it in percent, such as "5 %"',
    );
  }
  return share;
}

/**
 * A budget as it is written, in the currency of the price list.
 * @throws {BenchError} argument-missing without a price list, currency-mixed, or the problem of the text
 */
export function readBudget(text: string, prices: PriceList | null): number {
  if (prices === null) {
    throw new BenchError(
      'argument-missing',
      '--budget needs the prices of laboratories',
      'name a price list with --prices <file>',
    );
  }
  const reading = readMoney(text.trim(), null);
  if ('problem' in reading) {
    throw new BenchError(reading.problem, `--budget: ${reading.message}`, reading.remedy);
  }
  const { amount, currency } = reading.value;
  if (prices.currency !== null && currency !== prices.currency) {
    throw new BenchError(
      'currency-mixed',
      `--budget is in ${currency} and the price list in ${prices.currency}`,
      `write it in ${prices.currency}: nothing is converted`,
    );
  }
  return amount;
}

/**
 * A count of events or samples, from 1.
 * @throws {BenchError} number-outside
 */
export function readCount(count: number | null, option: string): number {
  if (count !== null && (count < 1 || count > 1000)) {
    throw new BenchError(
      'number-outside',
      `${option}: ${count} is outside 1 to 1000`,
      'write a whole number from 1 to 1000',
    );
  }
  return count ?? 1;
}
