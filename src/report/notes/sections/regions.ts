import { hasCurve } from '../../../analyse/index.ts';
import { type DrainRegionRow, STANDARD } from '../../../model/index.ts';
import { pour, spreadFigure } from '../figures.ts';
import type { NotesChart } from '../notes-chart.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { FORMS, stateNames } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** One field of regions: of all devices, or of those of one form. */
export interface RegionField {
  /** Null for all devices. */
  readonly form: string | null;
  /** `under-sink devices`, or `devices` for all. */
  readonly who: string;
  readonly rows: readonly DrainRegionRow[];
}

/**
 * The fields that have something to compare: that of all devices, then that of each form with
 * several devices where there are several forms.
 */
export function regionFields(input: NotesInput): RegionField[] {
  const { regions, regionsByForm } = input.outcomes;
  const rivals = (form: string | null): number =>
    new Set(
      input.curves.flatMap((curve) => {
        const { device, form: own } = curve.drain.device.values;
        return hasCurve(curve) && (form === null || own === form) ? device : [];
      }),
    ).size;
  const all = { form: null, who: 'devices', rows: regions.rows as readonly DrainRegionRow[] };
  const fields = [
    all,
    ...regionsByForm.map(({ form, outcome }) => ({
      form,
      who: FORMS[form],
      rows: outcome.rows as readonly DrainRegionRow[],
    })),
  ];
  return fields.filter(
    ({ form, rows }) =>
      rivals(form) > 1 && rows.length > 0 && (form === null || !isSame(rows, all.rows)),
  );
}

/** True where the same devices drain least in every cell: said already. */
function isSame(rows: readonly DrainRegionRow[], others: readonly DrainRegionRow[]): boolean {
  return rows.every(({ device, variant }, i) => {
    const other = others[i];
    return other !== undefined && other.device === device && other.variant === variant;
  });
}

/** Which device drains least at which pour size and number of pours a day. */
export function regionsPart(input: NotesInput, charts: readonly NotesChart[]): Piece {
  const fields = regionFields(input);
  if (fields.length === 0) return NOTHING;
  return blocks([
    markup('### Which drains least where'),
    ...fields.flatMap((field) => [
      regionsSummary(input, field),
      ...charts
        .filter(({ section }) => section === `regions${field.form ?? ''}`)
        .map(({ image }) => image),
      regionsTable(input, field),
    ]),
    markup(
      '“Or”: not told apart from these. Lowest drain says nothing of what a device reduces, and nothing of its cost.',
    ),
  ]);
}

function contenders(rows: readonly DrainRegionRow[]): Set<string> {
  return new Set(rows.map(({ device, variant }) => JSON.stringify([device, variant])));
}

function regionsSummary(input: NotesInput, { rows, who }: RegionField): Piece {
  const name = stateNames(input.bench);
  const told = [...contenders(rows)].flatMap((key) => {
    const own = rows.filter(({ device, variant }) => JSON.stringify([device, variant]) === key);
    const [first] = own;
    if (first === undefined) return [];
    const firm = own.filter(({ told_apart }) => told_apart === true).length;
    const label = name(first.device, first.variant);
    return say`${label} in ${count(`${label}.cells`, own.length)} of ${count('cells', rows.length)} (told apart from every other in ${count(`${label}.firm`, firm)})`;
  });
  return say`Among ${markup(who)} with a drain line, of tanks those whose refills are described, with even pours from morning to evening, lowest by estimate: ${listed(told)}.`;
}

function regionsTable(input: NotesInput, { rows, who }: RegionField): Piece {
  const name = stateNames(input.bench);
  const sizes = [...new Set(rows.map(({ pour_mL }) => pour_mL))];
  const counts = [...new Set(rows.map(({ pours_per_day }) => pours_per_day))];
  const labels = new Map(
    input.curves.map(({ drain: { device, variant } }) => {
      const key = device.values.device;
      return [variant === STANDARD ? key : `${key} (${variant})`, name(key, variant)];
    }),
  );
  return tablePiece({
    caption: markup(
      `Lowest drain among ${who}, by pour size and pours a day, litres per litre of clean water`,
    ),
    columns: [
      right('Pour'),
      ...counts.map((perDay) => left(say`${count('per-day', perDay)} a day`)),
    ],
    rows: sizes.map((size) => [
      pour('size', size),
      ...counts.map((perDay) => {
        const row = rows.find((each) => each.pour_mL === size && each.pours_per_day === perDay);
        if (row === undefined) return NOTHING;
        const key = `${size}.${perDay}`;
        const others = row.not_told_apart_from;
        const more =
          others.length === 0
            ? NOTHING
            : say`, or ${joined(
                others.map((code) => quoted(labels.get(code) ?? code)),
                ', ',
              )}`;
        return say`${name(row.device, row.variant)} ${spreadFigure(key, row.total_drain_ratio, 'L/L')}${more}`;
      }),
    ]),
  });
}
