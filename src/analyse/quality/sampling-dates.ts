import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace } from '../../model/index.ts';
import { isUsable, type SampleResults } from './sample-results.ts';

const DAY_S = 86_400;

/** A lab enters dates by hand; one day off is no other sample. */
const DAYS_APART = 1;

/**
 * Days of sampling as the lab prints them against samples.csv: a report of another round, or a bottle
 * number used before.
 */
export function samplingDateFindings(view: SampleResults): Finding[] {
  return view.table.files.flatMap((file) =>
    [...file.collected].flatMap(([sample, printed]) => {
      const row = view.samples[sample];
      const taken = row?.values.taken_at ?? null;
      const day = dayOf(printed);
      if (row === undefined || taken === null || day === null || !isUsable(row)) return [];
      const apart = Math.abs(Math.floor(taken.seconds / DAY_S) - day);
      if (apart <= DAYS_APART) return [];
      return finding(
        'sampling-date-differs',
        `${file.path} says this sample was taken on ${printed.slice(0, 10)}, ${apart} days off`,
        'correct taken_at, or ask the lab for the report of this sample',
        cellPlace(row, 'taken_at'),
      );
    }),
  );
}

/** Days since 1970 of an ISO date; null for other text. */
function dayOf(iso: string): number | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso) ?? [];
  if (year === undefined || month === undefined || day === undefined) return null;
  return Date.UTC(Number(year), Number(month) - 1, Number(day)) / (1000 * DAY_S);
}
