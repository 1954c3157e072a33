/** The headings under which help lists options, in their order. */
export const OPTION_GROUPS = ['Input', 'Method', 'Output'] as const;

interface OptionEntry {
  /** Short and long flag with a placeholder that names the kind or unit of the value. */
  readonly flags: string;
  readonly group: (typeof OPTION_GROUPS)[number];
  readonly about: string;
  readonly choices?: readonly string[];
  /** The value in force when the option is not given; help shows it. */
  readonly standard?: string;
  readonly repeatable?: boolean;
  readonly required?: boolean;
  /** The value is an integer from 0 to 4294967295. */
  readonly integer?: boolean;
  /** Options that mean the opposite. */
  readonly excludes?: readonly string[];
}

/**
 * Every option of every command: a flag has one meaning, wherever it is given. The exceptions
 * are `--out`, a file for data and a folder for notes, and `--feed`, which other-feed cannot do without.
 */
const OPTIONS = {
  device: {
    flags: '--device <id>',
    group: 'Input',
    about: 'only this device; repeatable',
    repeatable: true,
  },
  variant: {
    flags: '--variant <id>',
    group: 'Input',
    about: 'only devices in this state of their settings; repeatable',
    repeatable: true,
  },
  analyte: {
    flags: '--analyte <name>',
    group: 'Input',
    about: 'only this analyte, by key, name, alias or CAS number; repeatable',
    repeatable: true,
  },
  scenario: {
    flags: '--scenario <id>',
    group: 'Input',
    about: 'only this usage scenario; repeatable',
    repeatable: true,
  },
  against: {
    flags: '--against <old-bench>',
    group: 'Input',
    about: 'compare every published number with this earlier edition',
  },
  feed: {
    flags: '--feed <file>',
    group: 'Input',
    about: 'analysis of the other feed, in any layout of a lab export; required',
    required: true,
  },
  plannedFeed: {
    flags: '--feed <file>',
    group: 'Input',
    about:
      'analysis of the feed to plan for, in any layout of a lab export (default: that of the bench)',
  },
  feedSample: {
    flags: '--feed-sample <name>',
    group: 'Input',
    about: 'sample of the feed file, where it holds several',
  },
  throughput: {
    flags: '--throughput <volume>',
    group: 'Input',
    about: 'volume the devices have treated, such as "300 L" (default: any that was tested)',
  },
  prices: {
    flags: '--prices <file>',
    group: 'Input',
    about: 'price list of laboratories: lab, package, price, analyte, limit',
  },
  seed: {
    flags: '--seed <integer>',
    group: 'Method',
    about: 'seed of everything drawn at random (default: the seed of bench.json)',
    integer: true,
  },
  draws: {
    flags: '--draws <integer>',
    group: 'Method',
    about:
      'draws behind each range, 0 for none (default: water_use.draws of bench.json, else 1000)',
    integer: true,
  },
  curve: {
    flags: '--curve',
    group: 'Method',
    about: 'give the total drain ratio against the size of one isolated pour',
    excludes: ['breakEven', 'regions', 'inputs', 'sweep'],
  },
  breakEven: {
    flags: '--break-even',
    group: 'Method',
    about: 'give the pour size at which two devices drain the same',
    excludes: ['curve', 'regions', 'inputs', 'sweep', 'pour', 'poursPerDay'],
  },
  regions: {
    flags: '--regions',
    group: 'Method',
    about: 'give the device that drains least, by pour size and pours a day',
    excludes: ['curve', 'breakEven', 'inputs', 'sweep'],
  },
  inputs: {
    flags: '--inputs',
    group: 'Method',
    about: 'give the inputs with their uncertainty, and which of them a range owes most to',
    excludes: ['curve', 'breakEven', 'regions', 'sweep', 'pour', 'poursPerDay'],
  },
  sweep: {
    flags: '--sweep <input=values>',
    group: 'Method',
    about:
      'set an input to other values, such as "flush.idle-flush.volume=0.2..1.5 L x 8" or ' +
      '"pour=250 ml, 1 L"; twice for every pair',
    repeatable: true,
    excludes: ['curve', 'breakEven', 'regions', 'inputs', 'pour', 'poursPerDay'],
  },
  sums: {
    flags: '--sums',
    group: 'Method',
    about: 'give sums such as total trihalomethanes, over the same members on both sides',
    excludes: ['filterLife', 'log10', 'spikes'],
  },
  filterLife: {
    flags: '--filter-life',
    group: 'Method',
    about: 'give reductions along the volume treated, against claims and reference levels',
    excludes: ['sums', 'log10', 'spikes'],
  },
  log10: {
    flags: '--log10',
    group: 'Method',
    about: 'give log10 reductions of organisms, with the chance of counting',
    excludes: ['sums', 'filterLife', 'spikes'],
  },
  spikes: {
    flags: '--spikes',
    group: 'Method',
    about: 'give the nominal dose of spiked feeds beside the feed as measured',
    excludes: ['sums', 'filterLife', 'log10'],
  },
  toldApart: {
    flags: '--told-apart',
    group: 'Method',
    about: 'give which devices differ, pair by pair, or are equivalent, or are not told apart',
    excludes: ['groups'],
  },
  groups: {
    flags: '--groups',
    group: 'Method',
    about: 'give the groups of devices that are not told apart',
    excludes: ['toldApart', 'margin'],
  },
  margin: {
    flags: '--margin <points-or-factor>',
    group: 'Method',
    about:
      'the difference of two devices that counts: "5 %" is points of the reduction, "1.5x" a factor ' +
      'between what passes (default: equivalence_margin of bench.json)',
    excludes: ['groups', 'packages'],
  },
  pour: {
    flags: '--pour <volume>',
    group: 'Method',
    about: 'a pour size, such as "250 ml"; repeatable, implies --curve unless --regions',
    repeatable: true,
    excludes: ['breakEven', 'inputs', 'sweep'],
  },
  poursPerDay: {
    flags: '--pours-per-day <count>',
    group: 'Method',
    about: 'so many pours every day; repeatable, implies --curve unless --regions',
    repeatable: true,
    excludes: ['breakEven', 'inputs', 'sweep'],
  },
  randomPours: {
    flags: '--random-pours',
    group: 'Method',
    about: 'let the pours of --pours-per-day or --regions come at random instead of evenly',
    excludes: ['breakEven', 'inputs', 'sweep'],
  },
  idleRise: {
    flags: '--idle-rise',
    group: 'Method',
    about: 'give the TDS of the first water after a pause, and of the water of each scenario',
  },
  above: {
    flags: '--above <tds>',
    group: 'Method',
    about: 'count the water above this reading, such as "50 ppm"; implies --idle-rise',
  },
  plan: {
    flags: '--plan',
    group: 'Method',
    about: 'give what a feed can show at a limit, the feed it needs, and the replicates',
    excludes: ['packages'],
  },
  packages: {
    flags: '--packages',
    group: 'Method',
    about: 'give the cheapest lab packages that answer the questions',
    excludes: ['plan'],
  },
  wanted: {
    flags: '--wanted <analyte=reduction>',
    group: 'Method',
    about: 'a reduction to be shown, such as "lead=99 %"; repeatable (default: the claims)',
    repeatable: true,
  },
  power: {
    flags: '--power <share>',
    group: 'Method',
    about:
      'chance of telling the margin, or of a panel telling the waters apart (default: 80 %); ' +
      'next-tests: implies --plan',
    excludes: ['packages'],
  },
  tellers: {
    flags: '--tellers <share>',
    group: 'Method',
    about: 'share of people who tell two waters apart that a panel should find (default: 30 %)',
  },
  budget: {
    flags: '--budget <money>',
    group: 'Method',
    about: 'spend no more than this, such as "500 USD"',
    excludes: ['plan', 'power'],
  },
  events: {
    flags: '--events <integer>',
    group: 'Method',
    about: 'sampling events to pay for (default: 1); implies --packages',
    excludes: ['plan', 'margin', 'power'],
    integer: true,
  },
  replicates: {
    flags: '--replicates <integer>',
    group: 'Method',
    about: 'product samples of each device at each event (default: 1); implies --packages',
    excludes: ['plan', 'margin', 'power'],
    integer: true,
  },
  writeLayouts: {
    flags: '--write-layouts',
    group: 'Output',
    about: 'write beside each lab file how it was read, as lab/NAME.layout.json',
  },
  format: {
    flags: '--format <format>',
    group: 'Output',
    about: 'form of the data: table, csv, json or md',
    choices: ['table', 'csv', 'json', 'md'],
    standard: 'table',
  },
  out: {
    flags: '-o, --out <file>',
    group: 'Output',
    about: 'write the data to this file, whole or not at all (default: standard output)',
  },
  folder: {
    flags: '-o, --out <folder>',
    group: 'Output',
    about: 'folder to write, whole or not at all; required',
    required: true,
  },
  force: {
    flags: '--force',
    group: 'Output',
    about: 'write even where the folder holds files this tool did not write',
  },
  failOn: {
    flags: '--fail-on <level>',
    group: 'Output',
    about: 'exit with 1 when a finding is a warning, or a note, or graver (default: never)',
    choices: ['warning', 'note'],
  },
  color: {
    flags: '--color <when>',
    group: 'Output',
    about: 'colour: auto, always or never',
    choices: ['auto', 'always', 'never'],
    standard: 'auto',
  },
  quiet: {
    flags: '--quiet',
    group: 'Output',
    about: 'say nothing on standard error but errors',
  },
  debug: {
    flags: '--debug',
    group: 'Output',
    about: 'show where in the tool an error was raised',
  },
} as const satisfies Readonly<Record<string, OptionEntry>>;

export type OptionName = keyof typeof OPTIONS;

export const OPTION_TABLE: Readonly<Record<OptionName, OptionEntry>> = OPTIONS;

/** Every command has these and help always lists them. */
export const ALWAYS: readonly OptionName[] = ['failOn', 'color', 'quiet', 'debug'];

/**
 * Every command takes these, so that one set of options can be handed to all commands; where one
 * has no bearing, help leaves it out and the call says so.
 */
export const SHARED: readonly OptionName[] = [
  'device',
  'variant',
  'analyte',
  'scenario',
  'seed',
  'format',
  'out',
];

/** `--break-even` of `breakEven`, `--out` of `folder`. */
export function longFlag(name: OptionName): string {
  return /--[a-z-]+/.exec(OPTION_TABLE[name].flags)?.[0] ?? '';
}
