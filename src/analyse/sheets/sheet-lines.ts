import { type Bench, FLUSH_OFF, type SheetRow } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { analyseBy } from './analyse-by.ts';
import { bottleLines } from './bottle-kit.ts';
import { type DeviceState, type PlannedSample, sampleCodes } from './sample-codes.ts';
import { samplingOrder } from './sampling-order.ts';

const BLANK: Omit<SheetRow, 'sheet' | 'order'> = {
  event: null,
  sample: null,
  proposed: false,
  position: null,
  of: null,
  device: null,
  variant: null,
  rule: null,
  run_first: null,
  idle_before: null,
  taken_at: null,
  bottle: null,
  preservative: null,
  container: null,
  kit_read: null,
  analytes: [],
  warmest_C: null,
  holding_time: null,
  holding_rule: null,
  holding_read: null,
  holding_hours: null,
  analyse_by: null,
  write: [],
};

const NOT_KNOWN = 'no holding time known: ask the lab';

/** Repeats that give a mean and a scatter. */
const REPEATS = 3;

/** Cells named as the columns of the file they are copied into. */
const POUR_CELLS = ['run', 'pour', 'volume', 'time', 'temperature', 'pressure', 'after_idle'];
const DRAIN_CELLS = ['run', 'clean', 'drain', 'collected_until', 'starts', 'temperature'];
const FLUSH_CELLS = ['volume', 'duration', 'at'];
const IDLE_CELLS = ['idle', 'drawn', 'tds', 'meter', 'feed_tds', 'temperature', 'at'];
const CUSTODY_CELLS = ['name', 'date', 'time', 'signature'];

/**
 * All lines of all sheets.
 *
 * Bottles are those of the analytes the lab files of the bench name; without lab files, of every
 * analyte known. Deadlines count from `taken_at`.
 * @param states devices in the states that are to be tested
 * @param keeps limits the lines of samples; order and codes do not depend on it
 */
export function computeSheets(
  bench: Bench,
  states: readonly DeviceState[],
  seed: number,
  keeps: (device: string, variant: string) => boolean,
): SheetRow[] {
  const planned = samplingOrder(sampleCodes(bench, states, seed), seed);
  const isKept = ({ device, variant }: PlannedSample): boolean =>
    device === null || variant === null || keeps(device, variant);
  const numbered = numberedByEvent(planned).filter(({ sample }) => isKept(sample));
  const own = states.filter(({ device, variant }) => keeps(device, variant));
  const known = bench.results.analytes;
  const analytes = known.length > 0 ? known : bench.analytes.analytes;
  return [
    ...numbered.map(({ sample, order }) => samplingLine(sample, order)),
    ...bottleSheet(
      numbered.map(({ sample }) => sample),
      analytes,
    ),
    ...custody(numbered.map(({ sample }) => sample)),
    ...benchForms(bench, own),
  ];
}

function numberedByEvent(samples: readonly PlannedSample[]) {
  const counts = new Map<string | null, number>();
  return samples.map((sample) => {
    const order = (counts.get(sample.event) ?? 0) + 1;
    counts.set(sample.event, order);
    return { sample, order };
  });
}

function ofSample(sample: PlannedSample): Omit<SheetRow, 'sheet' | 'order'> {
  return {
    ...BLANK,
    event: sample.event,
    sample: sample.sample,
    proposed: sample.proposed,
    position: sample.position,
    of: sample.of,
    device: sample.device,
    variant: sample.variant,
    taken_at: sample.takenAt?.text ?? null,
  };
}

function samplingLine(sample: PlannedSample, order: number): SheetRow {
  return {
    ...ofSample(sample),
    sheet: 'sampling',
    order,
    run_first: sample.runFirst,
    idle_before: sample.idleBefore,
    write: [
      ...(sample.runFirst === null ? ['run_first'] : []),
      ...(sample.idleBefore === null ? ['idle_before'] : []),
      ...(sample.takenAt === null ? ['taken_at'] : []),
    ],
  };
}

function bottleSheet(samples: readonly PlannedSample[], analytes: readonly Analyte[]): SheetRow[] {
  const lines = bottleLines(analytes);
  return samples.flatMap((sample) =>
    lines.map(
      (line, at): SheetRow => ({
        ...ofSample(sample),
        sheet: 'bottles',
        order: at + 1,
        bottle: line.bottle,
        preservative: line.preservative,
        container: line.container,
        kit_read: line.time === null ? null : line.verified,
        analytes: line.analytes.map(({ key }) => key),
        warmest_C: line.time?.warmestC ?? null,
        holding_time: line.time?.words ?? NOT_KNOWN,
        holding_rule: line.time?.rule ?? null,
        holding_read: line.time?.verified ?? null,
        holding_hours: line.time?.hours ?? null,
        analyse_by: line.time === null ? null : analyseBy(sample.takenAt, line.time.hours),
      }),
    ),
  );
}

/** Every hand-over of the bottles of an event: sampler, carrier, lab. */
function custody(samples: readonly PlannedSample[]): SheetRow[] {
  const events = [...new Set(samples.map(({ event }) => event))];
  const steps = ['relinquished', 'received', 'relinquished', 'received'];
  return events.flatMap((event) =>
    steps.map(
      (position, at): SheetRow => ({
        ...BLANK,
        sheet: 'custody',
        order: at + 1,
        event,
        position,
        write: CUSTODY_CELLS,
      }),
    ),
  );
}

function benchForms(bench: Bench, states: readonly DeviceState[]): SheetRow[] {
  const rules = states.flatMap(({ device, variant }) =>
    bench.tables.flushRules.flatMap(({ values }) =>
      values.device === device && !isOff(bench, { device, variant }, values)
        ? { device, variant, rule: values.rule }
        : [],
    ),
  );
  const drained = states.filter(({ device }) =>
    bench.tables.devices.some(
      ({ values }) => values.device === device && values.drain_line === 'yes',
    ),
  );
  return [
    ...form('pours', states, POUR_CELLS),
    ...form('drain-runs', drained, DRAIN_CELLS),
    ...form('flushes', rules, FLUSH_CELLS),
    ...form('idle-tds', states, IDLE_CELLS),
  ];
}

function isOff(
  bench: Bench,
  { device, variant }: DeviceState,
  rule: { readonly rule: string; readonly switchable: string | null },
): boolean {
  const named = bench.tables.variants.find(
    ({ values }) => values.device === device && values.variant === variant,
  );
  if (named !== undefined) return (named.values.rules_off ?? []).includes(rule.rule);
  return variant === FLUSH_OFF && rule.switchable === 'yes';
}

function form(
  sheet: SheetRow['sheet'],
  subjects: readonly (DeviceState & { readonly rule?: string })[],
  write: readonly string[],
): SheetRow[] {
  return subjects
    .flatMap((subject) => Array.from({ length: REPEATS }, () => subject))
    .map((subject, at) => ({
      ...BLANK,
      sheet,
      order: at + 1,
      device: subject.device,
      variant: subject.variant,
      rule: subject.rule ?? null,
      write: [...write],
    }));
}
