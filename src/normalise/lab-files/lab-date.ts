/** Which part of a numeric date comes first. */
export type DateOrder = 'day-first' | 'month-first' | 'year-first';

export type LabDate =
  | { readonly kind: 'date'; readonly iso: string }
  | { readonly kind: 'unclear' }
  | { readonly kind: 'impossible' }
  | { readonly kind: 'none' };

const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ]\s*(.*))?$/;
const YEAR_LAST = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?:[T ,]\s*(.*))?$/;
const MONTH_NAME =
  /^(?:(\d{1,2})[- ]([a-z]{3,9})\.?[- ,]*(\d{4}|\d{2})|([a-z]{3,9})\.? (\d{1,2}),? (\d{4}))(?:[T ]\s*(.*))?$/i;
/** A time of another zone than the place of sampling is not the local time. */
const OFFSET = /(?:Z|[+-]\d\d:?\d\d)$/;
const EPOCH_MS = /^1\d{12}$/;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * A date of a lab export as local ISO 8601, with the time of day where the cell holds one.
 *
 * Day or month first is never guessed: with `order` null, `03/04/2026` is unclear, while
 * `03/25/2026` and `07/07/2026` have one reading. A midnight that only dresses a date
 * (`2016-03-01T00:00:00Z`, `12/31/2024 12:00:00 AM`) is dropped, and so is a time with an offset from
 * universal time, which is not the local one; epoch milliseconds are taken as universal time.
 */
export function readLabDate(cell: string, order: DateOrder | null): LabDate {
  const text = cell.replace(/\s+/g, ' ').trim();
  const first = YEAR_FIRST.exec(text);
  if (first !== null) return dateOf(first[1], first[2], first[3], first[4]);
  const named = MONTH_NAME.exec(text);
  if (named !== null) {
    const month = MONTHS.indexOf((named[2] ?? named[4] ?? '').slice(0, 3).toLowerCase()) + 1;
    if (month === 0) return { kind: 'none' };
    return dateOf(named[3] ?? named[6], String(month), named[1] ?? named[5], named[7]);
  }
  if (EPOCH_MS.test(text)) {
    const iso = new Date(Number(text)).toISOString().slice(0, 16);
    return { kind: 'date', iso };
  }
  const last = YEAR_LAST.exec(text);
  if (last === null) return { kind: 'none' };
  const [, a = '', b = '', year, time] = last;
  const proven = provenOrder(a, b) ?? order;
  if (proven === null && a !== b) return { kind: 'unclear' };
  return proven === 'day-first' ? dateOf(year, b, a, time) : dateOf(year, a, b, time);
}

/** The order a single date proves, by a part above 12; null where it proves none. */
export function orderEvidence(cell: string): DateOrder | null {
  const match = YEAR_LAST.exec(cell.trim());
  return match === null ? null : provenOrder(match[1] ?? '', match[2] ?? '');
}

function provenOrder(a: string, b: string): DateOrder | null {
  if (Number(a) > 12 && Number(b) <= 12) return 'day-first';
  return Number(b) > 12 && Number(a) <= 12 ? 'month-first' : null;
}

function dateOf(
  yearText: string | undefined,
  monthText: string | undefined,
  dayText: string | undefined,
  timeText: string | undefined,
): LabDate {
  const short = Number(yearText);
  const year = short < 100 ? short + (short < 70 ? 2000 : 1900) : short;
  const [month, day] = [Number(monthText), Number(dayText)];
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return { kind: 'impossible' };
  const iso = `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
  const time = timeText === undefined || OFFSET.test(timeText) ? null : readLabTime(timeText);
  return { kind: 'date', iso: time === null || time === '00:00' ? iso : `${iso}T${time}` };
}

const CLOCK = /^(\d{1,2})[:h.](\d{2})(?::(\d{2})(?:\.\d+)?)?\s*(am|pm)?$/i;

/** A time of day as `hh:mm`; null where the cell holds none. `1436` and `8` lost their colon. */
export function readLabTime(cell: string): string | null {
  const text = cell.trim();
  const clock = CLOCK.exec(text);
  if (clock !== null) {
    const half = clock[4]?.toLowerCase();
    const hour = (Number(clock[1]) % (half === undefined ? 24 : 12)) + (half === 'pm' ? 12 : 0);
    return Number(clock[1]) < 25 && Number(clock[2]) < 60 ? `${two(hour)}:${clock[2]}` : null;
  }
  if (!/^\d{1,4}$/.test(text)) return null;
  const [hour, minute] = [Math.floor(Number(text) / 100), Number(text) % 100];
  return hour < 24 && minute < 60 ? `${two(hour)}:${two(minute)}` : null;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
