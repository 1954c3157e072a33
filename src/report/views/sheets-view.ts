import type { SheetRow } from '../../model/index.ts';
import type { View } from '../view.ts';

/** Room for handwriting. */
const ROOM = '______';

const MANY = 4;

/** One table a sheet; sheets without a line are left out. */
export function sheetViews(rows: readonly SheetRow[], seed: number): View[] {
  const of = (sheet: SheetRow['sheet']) => rows.filter((row) => row.sheet === sheet);
  return [
    sampling(of('sampling'), seed),
    kit(of('bottles')),
    bottles(of('bottles')),
    custody(of('custody')),
    form(of('pours'), 'Timed pours, tap wide open'),
    form(of('drain-runs'), 'Clean water and drain of one run, in two vessels'),
    form(of('flushes'), 'Flushes caught in a vessel'),
    form(of('idle-tds'), 'TDS of the first water after a pause'),
  ].filter((view) => view.rows.length > 0);
}

function sampling(rows: readonly SheetRow[], seed: number): View {
  const cell = (row: SheetRow, name: string, text: string | null): string =>
    row.write.includes(name) ? ROOM : (text ?? '');
  return {
    caption: `${rows.length} samples in the order in which to take them`,
    columns: columns(['Event', 'Order', 'Sample', 'Water', 'Run first', 'Idle before', 'Taken at']),
    rows: rows.map((row) => [
      row.event ?? '',
      String(row.order),
      row.sample ?? '',
      water(row),
      cell(row, 'run_first', row.run_first),
      cell(row, 'idle_before', row.idle_before),
      cell(row, 'taken_at', row.taken_at),
    ]),
    legend: [
      `The feed comes first, the rest in random order, drawn with seed ${seed}.`,
      ...(rows.some((row) => row.proposed)
        ? ['The codes are proposals: copy them into samples.csv, or write your own.']
        : []),
    ],
  };
}

function water({ position, device, variant, of }: SheetRow): string {
  const state = device === null ? '' : ` of ${device}, ${variant ?? ''}`;
  return `${position ?? ''}${state}${of === null ? '' : `, duplicate of ${of}`}`;
}

/** Bottles of the kit, once for all samples. */
function kit(rows: readonly SheetRow[]): View {
  const first = rows.filter((row) => row.sample === rows[0]?.sample);
  return {
    caption: 'Kit of each sample: bottles, what goes in first, and the rule',
    columns: columns(['Bottle', 'Of', 'Preservative', 'For', 'Within', 'Rule']),
    rows: first.map((row) => [
      row.bottle ?? '',
      row.container ?? '',
      `${row.preservative ?? ''}${mark(row.kit_read)}`,
      firstOf(row.analytes),
      row.holding_time ?? '',
      `${row.holding_rule ?? ''}${mark(row.holding_read)}`,
    ]),
    legend: [
      'Within: longest time from sampling to the start of the analysis; of a drinking-water rule where there is one, else 40 CFR 136.3 table II.',
      '* not read in the rule but in tables that laboratories publish; ** from memory.',
      "The lab's own kit and deadlines go before these.",
      'Metals that were not acidified can be acidified in the lab; ask it how soon they have to arrive.',
    ],
  };
}

function bottles(rows: readonly SheetRow[]): View {
  return {
    caption: 'Bottles of each sample, and the latest time of analysis',
    columns: columns(['Sample', 'Bottle', 'For', 'Keep', 'Within', 'Analyse by']),
    rows: rows.map((row) => [
      row.sample ?? '',
      row.bottle ?? '',
      firstOf(row.analytes),
      row.warmest_C === null ? '' : `at most ${row.warmest_C} °C`,
      row.holding_time ?? '',
      row.analyse_by ?? ROOM,
    ]),
    legend: ['Analyse by: local time of the sampling clock; six months are 182.6 days.'],
  };
}

/** How far a rule was read; no mark for what was seen. */
function mark(read: SheetRow['holding_read']): string {
  return read === 'memory' ? ' **' : read === 'laboratories' ? ' *' : '';
}

function firstOf(names: readonly string[]): string {
  const rest = names.length - MANY;
  const first = names.slice(0, MANY).join(', ');
  return rest > 0 ? `${first} and ${rest} more` : first;
}

function custody(rows: readonly SheetRow[]): View {
  return {
    caption: 'Custody: who had the bottles, and when',
    columns: columns(['Event', 'Step', ...(rows[0]?.write ?? [])]),
    rows: rows.map((row) => [row.event ?? '', row.position ?? '', ...row.write.map(() => ROOM)]),
    legend: ['One line for each hand-over; whoever hands over and whoever receives both sign.'],
  };
}

/** Heads are the columns of the bench file, so that the sheet can be typed up as it is. */
function form(rows: readonly SheetRow[], caption: string): View {
  const hasRule = rows.some((row) => row.rule !== null);
  return {
    caption,
    columns: columns([
      'device',
      'variant',
      ...(hasRule ? ['rule'] : []),
      ...(rows[0]?.write ?? []),
    ]),
    rows: rows.map((row) => [
      row.device ?? '',
      row.variant ?? '',
      ...(hasRule ? [row.rule ?? ''] : []),
      ...row.write.map(() => ROOM),
    ]),
    legend: [
      `Copy into ${rows[0]?.sheet ?? ''}.csv under the same heads; every quantity with its unit.`,
    ],
  };
}

function columns(heads: readonly string[]): View['columns'] {
  return heads.map((head) => ({ head, align: head === 'Order' ? 'right' : 'left' }));
}
