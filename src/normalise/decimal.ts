/** What a written number may turn out to be. */
export type DecimalReading =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'unclear' }
  | { readonly kind: 'none' };

const PLAIN = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;
const DECIMAL_COMMA = /^[+-]?\d*,\d+$/;
const GROUPED = /^[+-]?\d{1,3}(?:,\d{3})+\.\d+$/;

/**
 * A number in a bench file: a decimal point, or a decimal comma where it can be nothing else.
 *
 * `1,250` could be one and a quarter or twelve hundred and fifty, so it is `unclear`; `4,25` and
 * `1,299.00` have one reading only.
 */
export function readDecimal(text: string): DecimalReading {
  if (PLAIN.test(text)) return finite(Number(text));
  if (GROUPED.test(text)) return finite(Number(text.replaceAll(',', '')));
  if (DECIMAL_COMMA.test(text)) {
    // A leading zero proves a decimal comma: no number is grouped as 0,125.
    const [whole = '', decimals = ''] = text.replace(/^[+-]/, '').split(',');
    if (decimals.length === 3 && whole !== '' && whole !== '0') return { kind: 'unclear' };
    return finite(Number(text.replace(',', '.')));
  }
  return { kind: 'none' };
}

function finite(value: number): DecimalReading {
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'none' };
}
