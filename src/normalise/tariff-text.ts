import type { Tariff } from '../model/index.ts';
import type { Measures } from '../reference/index.ts';
import { type CellReading, problem } from './cell-problem.ts';
import { readDecimal } from './decimal.ts';
import { readQuantity } from './quantity-text.ts';

/** Joules in a kilowatt-hour, exact. */
const J_PER_KWH = 3_600_000;

const AMOUNT_FIRST = /^([\d.,]+)\s*([A-Z]{3})\s*(?:\/|per\s)\s*(.+)$/;
const CODE_FIRST = /^([A-Z]{3})\s*([\d.,]+)\s*(?:\/|per\s)\s*(.+)$/;

/**
 * A tariff the way a bill says it: `2.20 USD/m3`, `8.37 USD per 1000 gal`, `0.16 USD/kWh`.
 *
 * @param per what the price is for
 * @param measures whose gallons the bench uses; without it such words are asked about
 * @returns the price per litre or kilowatt-hour, or what is wrong with the text
 * @example readTariff('2.20 USD/m3', 'volume', null) // 0.0022 USD per litre
 */
export function readTariff(
  text: string,
  per: 'volume' | 'energy',
  measures: Measures | null,
): CellReading<Tariff> {
  const trimmed = text.trim();
  const first = AMOUNT_FIRST.exec(trimmed);
  const second = CODE_FIRST.exec(trimmed);
  const number = first?.[1] ?? second?.[2];
  const currency = first?.[2] ?? second?.[1];
  const unit = first?.[3] ?? second?.[3];
  const example = per === 'volume' ? '2.20 USD/m3' : '0.16 USD/kWh';
  if (number === undefined || currency === undefined || unit === undefined) {
    return problem(
      'tariff-unreadable',
      `"${trimmed}" is not an amount, a currency code and what it is for`,
      `write it like ${example}`,
    );
  }
  const amount = readDecimal(number);
  if (amount.kind !== 'number') {
    return problem(
      'tariff-unreadable',
      `"${number}" is not a clear amount`,
      `write it with a decimal point and without grouping, like ${example}`,
    );
  }
  const quantity = readQuantity(/^\d/.test(unit) ? unit : `1 ${unit}`, {
    dimensions: [per],
    headerUnit: null,
    measures,
    isStopwatch: false,
  });
  if ('problem' in quantity) return quantity;
  const size = quantity.value.value / (per === 'energy' ? J_PER_KWH : 1);
  if (!(size > 0)) {
    return problem(
      'tariff-unreadable',
      `"${unit}" is nothing to price`,
      `write it like ${example}`,
    );
  }
  return { value: { amount: amount.value / size, currency, text: trimmed } };
}
