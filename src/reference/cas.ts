/** What a cell that should hold a CAS registry number holds. */
export type CasReading =
  | { readonly kind: 'cas'; readonly cas: string }
  | { readonly kind: 'none' }
  | {
      readonly kind: 'problem';
      readonly problem: 'form' | 'check-digit' | 'date';
      readonly message: string;
      readonly remedy: string;
    };

const FORM = /^(?:cas(?:rn)?[ :#]*)?0*(\d{2,7})-(\d{2})-(\d)$/i;
const ABSENT = /^(?:|-+|n\/?a|none|null)$/i;
const DATE =
  /^(?:\d{1,2}[/.]\d{1,2}[/.]\d{2,4}|\d{4}-\d{2}-\d{2}(?:[ T].*)?|\d{1,2}-[a-z]{3}-\d{2,4})$/i;

/**
 * Reads a CAS registry number: leading zeros and a `CAS` in front are dropped, dashes of any kind
 * accepted. A number is never repaired.
 *
 * Spreadsheets turn numbers such as 6804-07-5 into dates; such a cell is told apart from other text.
 * Edge cases: blank, `N/A` and a dash mean that no number is given.
 * @example readCas('0007439-92-1') // { kind: 'cas', cas: '7439-92-1' }
 * @example readCas('7/5/04') // problem 'date'
 */
export function readCas(text: string): CasReading {
  const tidy = text
    .trim()
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\s*-\s*/g, '-');
  if (ABSENT.test(tidy)) return { kind: 'none' };
  const match = FORM.exec(tidy);
  if (match === null) {
    return DATE.test(tidy)
      ? problem(
          'date',
          `"${text}" is a date where a CAS number should stand`,
          'a spreadsheet may have changed the number: copy it again from the report, as text',
        )
      : problem(
          'form',
          `"${text}" is not a CAS number`,
          'write it as digits, two digits and a check digit: 7439-92-1',
        );
  }
  const [, first = '', second = '', check = ''] = match;
  const cas = `${first}-${second}-${check}`;
  const expected = casCheckDigit(first + second);
  return expected === Number(check)
    ? { kind: 'cas', cas }
    : problem(
        'check-digit',
        `CAS number ${cas} fails its check digit, which should be ${expected}`,
        'compare the number with the report of the laboratory',
      );
}

/**
 * The check digit of a CAS number: the digits before it, weighted 1, 2, 3 … from the right, summed,
 * modulo 10.
 *
 * @param digits the digits before the check digit, without dashes
 * Source: CAS, Check Digit Verification of CAS Registry Numbers.
 * @example casCheckDigit('773218') // 5, as in water, 7732-18-5
 */
export function casCheckDigit(digits: string): number {
  let sum = 0;
  for (let i = 0; i < digits.length; i += 1) {
    sum += Number(digits[digits.length - 1 - i]) * (i + 1);
  }
  return sum % 10;
}

function problem(
  kind: 'form' | 'check-digit' | 'date',
  message: string,
  remedy: string,
): CasReading {
  return { kind: 'problem', problem: kind, message, remedy };
}
