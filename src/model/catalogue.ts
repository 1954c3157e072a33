import {
  AMOUNT_DIMENSIONS,
  amount,
  type Cells,
  type Column,
  choice,
  clockTime,
  dailyWindow,
  key,
  list,
  moment,
  money,
  number,
  positive,
  required,
  stopwatch,
  temperature,
  text,
  weekdays,
  yesNo,
} from './columns.ts';

/**
 * The one catalogue of bench files and their columns. The reader, `new`, the schemas and the docs
 * are all driven by it.
 */

const SHARE = { min: 0, max: 1, whole: false };
const COUNT = { min: 0, max: null, whole: true };
const AT_LEAST_ONE = { min: 1, max: null, whole: true };
const NOT_NEGATIVE = { min: 0, max: null, whole: false };

const deviceRef = required(key('the device, as in devices.csv', 'device-a'));
const variantRef = key('the variant; blank means standard', 'standard');
const noteColumn = text('anything worth keeping', 'second tap of the morning');

export const DEVICES = {
  device: required(key('a short code for the device, used in every other file', 'device-a')),
  name: required(text('the name to print', 'Device A')),
  form: required(
    choice(
      ['under-sink', 'countertop', 'pitcher', 'faucet-mount', 'inline'],
      'how it is installed',
    ),
  ),
  technology: required(
    choice(
      ['reverse-osmosis', 'carbon', 'ultrafiltration', 'ion-exchange', 'distillation', 'mixed'],
      'what does the main work',
    ),
  ),
  tank: yesNo('whether it stores clean water in a tank'),
  drain_line: required(yesNo('whether it sends water to the sewer; no means drain 0')),
  mineral_stage: yesNo('whether a stage adds minerals'),
  uv: yesNo('whether it has an ultraviolet lamp'),
  model: text('model code', 'A-1'),
  specimen: text('which specimen was tested (serial or own number)', 'specimen 1'),
  acquired: choice(['bought', 'lent', 'given'], 'how it was acquired'),
  interests: text('interests of the reviewer in it, or none', 'none'),
  price: money('purchase price', '389 USD'),
  price_date: moment('day the price was seen', '2026-07-01'),
  price_source: text('where the price was seen', 'shop receipt'),
  rated_flow: positive(['flow'], 'flow as advertised', '1.5 L/min'),
  rated_drain_ratio: number(
    NOT_NEGATIVE,
    'advertised drain per clean volume (0.5 means half a litre to drain per litre)',
    '0.5',
  ),
  rated_production: positive(['flow'], 'production as advertised', '1500 L/day'),
  tank_volume: positive(['volume'], 'volume of the tank as advertised', '12 L'),
  warranty: amount(['time'], 'warranty', '24 months'),
  note: noteColumn,
} as const;

export const VARIANTS = {
  device: deviceRef,
  variant: required(key('the name of the state', 'flush-off')),
  rules_off: list('flush rules that are off in it, separated by ;', 'idle-flush'),
  note: noteColumn,
} as const;

export const SAMPLES = {
  sample: required(key('the code on the bottle, or its number at the lab', 'S-01')),
  position: required(
    choice(['feed', 'stage', 'product', 'drain', 'blank'], 'where the water was taken'),
  ),
  device: key('the device; a feed sample without one serves every device of its event', 'device-a'),
  variant: variantRef,
  event: key('the sampling occasion that feed and product share', 'day-1'),
  kind: choice(['natural', 'spiked'], 'tap water as it is, or spiked; blank means natural'),
  of: key('when a duplicate: the sample it repeats', 'S-02'),
  taken_at: moment('when it was taken, local time', '2026-07-06T08:30'),
  throughput: amount(['volume'], 'volume the device had treated by then', '120 L'),
  run_first: amount(['volume'], 'volume run to waste before the bottle was filled', '2 L'),
  idle_before: amount(['time'], 'pause before that', '30 min'),
  status: choice(['valid', 'void'], 'blank means valid'),
  reason: text('why it is void', 'bottle broke'),
  replaces: key('the void sample it replaces', 'S-01'),
  note: noteColumn,
} as const;

export const BOTTLES = {
  sample: required(key('the sample, as in samples.csv', 'S-01')),
  lab: required(key('the lab file without its ending', 'lab-july')),
  lab_sample: required(key("the lab's number for this bottle", 'L-1001')),
  preservative: text('preservative in the bottle', 'nitric acid'),
  received_at: moment('when the lab received it', '2026-07-06T15:00'),
  receipt_temperature: temperature('temperature on receipt', '4 C'),
} as const;

export const SPIKES = {
  event: required(key('the event whose feed was spiked', 'lead-spike')),
  analyte: required(text('what was added, by key, name or alias', 'lead')),
  dose: required(
    positive(
      AMOUNT_DIMENSIONS,
      'nominal dose: what was added to the feed, by calculation',
      '150 ug/L',
    ),
  ),
  note: noteColumn,
} as const;

export const TUBES = {
  sample: required(key('the sample, as in samples.csv', 'S-01')),
  analyte: required(text('the organism, by key, name or alias', 'E. coli')),
  volume: required(positive(['volume'], 'undiluted sample in each tube or well', '10 ml')),
  tubes: required(number(AT_LEAST_ONE, 'tubes or wells of this volume', '5')),
  positive: required(number(COUNT, 'how many of them grew', '3')),
  note: noteColumn,
} as const;

export const EXTRA_ANALYTES = {
  key: required(key('a kebab-case key, new or of an existing analyte', 'my-tracer')),
  name: text('the name to print; needed for a new analyte', 'My tracer'),
  cas: text('CAS registry number', '7439-93-2'),
  unit: text('the unit to report in; needed for a new analyte', 'ug/L'),
  aliases: list('other spellings the lab uses, separated by ; or |', 'tracer; tracer, total'),
} as const;

export const POURS = {
  device: deviceRef,
  variant: variantRef,
  run: required(key('which run; the readings of one run belong together', '1')),
  pour: text('number of the pour or reading within the run', '1'),
  volume: positive(['volume'], 'volume poured (or mass)', '500 ml'),
  mass: positive(['mass'], 'mass poured, in place of the volume', '498 g'),
  time: required(stopwatch('time it took', '42.5 s')),
  reading: choice(
    ['single', 'split', 'cumulative'],
    'single: a pour of its own; split: a part of one run; cumulative: total so far in the run',
  ),
  at: moment('when', '2026-07-06T09:00'),
  temperature: temperature('temperature of the clean water', '18 C'),
  pressure: amount(['pressure'], 'feed pressure while pouring', '50 psi'),
  after_idle: amount(['time'], 'pause before the pour', '30 min'),
  note: noteColumn,
} as const;

export const DRAIN_RUNS = {
  device: deviceRef,
  variant: variantRef,
  run: required(key('which run', '1')),
  clean: required(amount(['volume', 'mass'], 'clean water made in the run', '2 L')),
  drain: required(amount(['volume', 'mass'], 'water to drain in the run', '1.1 L')),
  collected_until: required(
    choice(
      ['tap-closed', 'shut-off', 'after-flush'],
      'when the bucket was taken away: the tap closed, the device shut off, or after a flush',
    ),
  ),
  starts: number(AT_LEAST_ONE, 'how often production started in the run', '1'),
  tank_before: amount(['volume', 'mass', 'pressure'], 'tank level or pressure before', '25 psi'),
  tank_after: amount(['volume', 'mass', 'pressure'], 'tank level or pressure after', '25 psi'),
  temperature: temperature('temperature of the feed', '18 C'),
  pressure: amount(['pressure'], 'feed pressure', '50 psi'),
  note: noteColumn,
} as const;

export const FLUSHES = {
  device: deviceRef,
  variant: variantRef,
  rule: required(key('the flush rule, as in flush-rules.csv', 'idle-flush')),
  volume: amount(['volume'], 'volume of the flush (or mass)', '900 ml'),
  mass: amount(['mass'], 'mass of the flush, in place of the volume', '898 g'),
  duration: stopwatch('how long it ran', '20 s'),
  at: moment('when', '2026-07-06T09:12'),
  note: noteColumn,
} as const;

export const FLUSH_RULES = {
  device: deviceRef,
  rule: required(key('a short name for the rule', 'idle-flush')),
  trigger: required(
    choice(
      ['idle', 'interval', 'start', 'produced', 'power-on', 'dump'],
      'idle: after a pause; interval: every so often; start: at the start of a pour; ' +
        'produced: after so much clean water; power-on; dump: empties a reservoir every so often',
    ),
  ),
  after: positive(['time', 'volume'], 'the time or volume that triggers it', '10 min'),
  volume: amount(['volume'], 'volume of one flush; blank: the mean of flushes.csv', '900 ml'),
  water: choice(['feed', 'clean'], 'which water it spends; blank means feed'),
  drain_fraction: number(SHARE, 'share that goes to drain; blank means 1, 0 recirculates', '1'),
  repeat: yesNo('whether an idle flush repeats while the pause lasts; blank means no'),
  anchor: choice(
    ['pour', 'power-on', 'last-flush'],
    'what the time counts from: idle: pour (default) or power-on; ' +
      'interval: power-on (default) or last-flush',
  ),
  min_interval: positive(['time'], 'dropped when any flush ran less than this ago', '15 min'),
  quiet: dailyWindow(true, 'hours in which it does not run', '22:00-07:00'),
  quiet_mode: choice(['skip', 'defer'], 'in quiet hours: skip it (default) or run it at their end'),
  switchable: yesNo('whether the user can switch it off'),
  source: text('how it is known: measured, manual', 'measured'),
} as const;

export const TANKS = {
  device: deviceRef,
  shell: positive(['volume'], 'volume of the empty shell', '14 L'),
  precharge: amount(['pressure'], 'air pressure in the empty tank', '7 psi'),
  feed_pressure: positive(['pressure'], 'feed pressure', '60 psi'),
  stop: positive(['pressure'], 'tank pressure at which it stops filling', '40 psi'),
  restart: amount(['pressure'], 'tank pressure at which it starts again', '33 psi'),
  permeate_flow: positive(['flow'], 'clean flow into an open tank', '0.2 L/min'),
  reject_flow: amount(['flow'], 'drain flow while filling', '0.6 L/min'),
} as const;

export const IDLE_TDS = {
  device: deviceRef,
  variant: variantRef,
  idle: required(amount(['time'], 'pause before the first water', '8 h')),
  drawn: required(amount(['volume'], 'volume drawn at this reading', '100 ml')),
  reading: choice(
    ['single', 'cumulative'],
    'single: volume of this portion; cumulative: total drawn since the pause',
  ),
  tds: required(amount(['mass-concentration', 'meter-tds'], 'the reading', '38 ppm')),
  meter: text('which meter', 'meter 1'),
  scale: text('scale of the meter: nacl, 442 or its factor', 'nacl'),
  feed_tds: amount(['mass-concentration', 'meter-tds'], 'feed by the same meter', '412 ppm'),
  temperature: temperature('temperature of the water', '18 C'),
  at: moment('when', '2026-07-06T07:00'),
} as const;

export const SCENARIOS = {
  scenario: required(key('the pattern this row belongs to', 'family')),
  weekdays: required(weekdays('daily, weekdays, weekends, or a list such as mon,wed', 'daily')),
  window: required(
    dailyWindow(false, 'time of day; across midnight takes two rows', '07:00-09:00'),
  ),
  pours_per_day: required(number(NOT_NEGATIVE, 'pours in this window on such a day', '4')),
  volume_each: required(positive(['volume'], 'volume of each pour', '250 ml')),
  spread: choice(
    ['even', 'random', 'together'],
    'even over the window (default), at random times, or back to back from its start',
  ),
} as const;

export const USAGE = {
  at: required(clockTime('when the pour began', '2026-07-06T07:10')),
  volume: amount(['volume'], 'volume poured; blank for power-on and end', '250 ml'),
  what: choice(['pour', 'power-on', 'end'], 'blank means pour'),
} as const;

export const ENERGY = {
  device: deviceRef,
  variant: variantRef,
  state: required(choice(['standby', 'producing', 'flushing'], 'what the device was doing')),
  power: required(amount(['power'], 'power drawn', '2.1 W')),
} as const;

export const PARTS = {
  device: deviceRef,
  part: required(text('the replacement part', 'carbon block')),
  price: required(money('price of one', '38 USD')),
  lasts: positive(['time'], 'time it lasts', '6 months'),
  capacity: positive(['volume'], 'volume it treats', '2000 L'),
  count: number(AT_LEAST_ONE, 'how many are changed together; blank means 1', '1'),
} as const;

export const CLAIMS = {
  device: deviceRef,
  claim: required(text('the claim, word for word', 'reduces lead by 98 %')),
  analyte: text('the analyte it is about', 'lead'),
  comparator: choice(['at-least', 'at-most-level', 'up-to'], 'what kind of claim'),
  value: text('the figure with its unit or %', '98 %'),
  evidence: required(choice(['certified', 'tested', 'stated'], 'what stands behind it')),
  standard: text('standard or protocol', 'NSF/ANSI 53'),
  capacity: positive(['volume'], 'volume over which it is claimed', '2000 L'),
  source: text('where it was read', 'box'),
  seen_at: moment('when it was read', '2026-07-01'),
} as const;

export const PANEL = {
  device: deviceRef,
  against: required(key('the other device, or feed', 'device-b')),
  test: required(choice(['triangle', 'duo-trio', 'paired'], 'form of the test')),
  attribute: text('what was asked', 'chlorine taste'),
  assessors: required(number(AT_LEAST_ONE, 'how many answers were given', '24')),
  correct: required(number(COUNT, 'how many were correct', '15')),
  note: noteColumn,
} as const;

export const OBSERVATIONS = {
  device: deviceRef,
  topic: required(text('what it is about', 'noise')),
  severity: choice(['note', 'minor', 'major'], 'blank means note'),
  text: required(text('what was seen', 'hums while flushing')),
  at: moment('when', '2026-07-06'),
} as const;

/** How a file of the catalogue is found in a bench folder. */
export interface FileSpec {
  /** Path relative to the bench; `usage/*.csv` stands for every file of that folder. */
  readonly path: string;
  readonly required: boolean;
  readonly row: string;
  readonly columns: Readonly<Record<string, Column<unknown>>>;
  /** Columns of which exactly one must hold a value. */
  readonly eitherOf: readonly (readonly [string, string])[];
  /** Comments (lines starting with #) are allowed in bench files, not in recordings. */
  readonly comments: boolean;
}

const plain = { required: false, eitherOf: [], comments: true } as const;

export const FILES = {
  devices: { ...plain, path: 'devices.csv', required: true, row: 'a device', columns: DEVICES },
  variants: { ...plain, path: 'variants.csv', row: 'a switchable state', columns: VARIANTS },
  samples: { ...plain, path: 'samples.csv', row: 'a sample', columns: SAMPLES },
  bottles: { ...plain, path: 'bottles.csv', row: 'a bottle', columns: BOTTLES },
  spikes: {
    ...plain,
    path: 'spikes.csv',
    row: 'the dose of one analyte in a spiked feed',
    columns: SPIKES,
  },
  tubes: {
    ...plain,
    path: 'tubes.csv',
    row: 'the tubes of one volume of a most probable number',
    columns: TUBES,
  },
  analytes: {
    ...plain,
    path: 'analytes.csv',
    row: 'an extra analyte or alias',
    columns: EXTRA_ANALYTES,
  },
  pours: {
    ...plain,
    path: 'pours.csv',
    row: 'a timed pour',
    columns: POURS,
    eitherOf: [['volume', 'mass']],
  },
  drainRuns: {
    ...plain,
    path: 'drain-runs.csv',
    row: 'a measured production run',
    columns: DRAIN_RUNS,
  },
  flushes: {
    ...plain,
    path: 'flushes.csv',
    row: 'a measured flush',
    columns: FLUSHES,
    eitherOf: [['volume', 'mass']],
  },
  flushRules: {
    ...plain,
    path: 'flush-rules.csv',
    row: 'a rule the device follows',
    columns: FLUSH_RULES,
  },
  tanks: { ...plain, path: 'tanks.csv', row: 'a storage tank', columns: TANKS },
  idleTds: {
    ...plain,
    path: 'idle-tds.csv',
    row: 'a TDS reading after a pause',
    columns: IDLE_TDS,
  },
  scenarios: { ...plain, path: 'scenarios.csv', row: 'a group of pours', columns: SCENARIOS },
  usage: {
    ...plain,
    path: 'usage/*.csv',
    row: 'a recorded pour; the file name is the scenario',
    columns: USAGE,
    comments: false,
  },
  energy: { ...plain, path: 'energy.csv', row: 'a power figure', columns: ENERGY },
  parts: { ...plain, path: 'parts.csv', row: 'a replacement part', columns: PARTS },
  claims: { ...plain, path: 'claims.csv', row: 'a claim about a device', columns: CLAIMS },
  panel: { ...plain, path: 'panel.csv', row: 'a sensory test', columns: PANEL },
  observations: {
    ...plain,
    path: 'observations.csv',
    row: 'something seen',
    columns: OBSERVATIONS,
  },
} as const satisfies Readonly<Record<string, FileSpec>>;

export type FileName = keyof typeof FILES;

/** The values of one row of a bench file. */
export type CellsOf<F extends FileName> = Cells<(typeof FILES)[F]['columns']>;
