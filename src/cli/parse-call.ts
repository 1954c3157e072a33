import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import type { CallOptions } from '../commands/command.ts';
import type { CommandEntry } from './command-entry.ts';
import { ALWAYS, longFlag, OPTION_TABLE, type OptionName, SHARED } from './option-table.ts';
import { inOurWords } from './usage-error.ts';

/** A call of a command, parsed. */
export interface ParsedCall {
  readonly entry: CommandEntry;
  readonly args: readonly string[];
  readonly options: CallOptions;
  readonly print: PrintOptions;
  /** Flags that were given and have no bearing on the command. */
  readonly idle: readonly string[];
}

/** What the edge itself needs to know. */
export interface PrintOptions {
  readonly format: 'table' | 'csv' | 'json' | 'md';
  /** File for the data; null: standard output. */
  readonly out: string | null;
  readonly failOn: 'warning' | 'note' | null;
  readonly color: 'auto' | 'always' | 'never';
  readonly quiet: boolean;
}

const SEED_LIMIT = 4294967295;

/**
 * Parses the arguments of a call.
 * @throws {UsageError} an unknown command or option, a wrong value, a wrong number of arguments
 */
export function parseCall(argv: readonly string[], table: readonly CommandEntry[]): ParsedCall {
  let parsed: ParsedCall | null = null;
  const program = quietCommand('pourbench');
  for (const entry of table) {
    const command = quietCommand(entry.name);
    for (const arg of entry.args) command.argument(`<${arg.name}>`, arg.about);
    for (const name of optionsOf(entry)) command.addOption(commanderOption(name, entry));
    command.option('-h, --help');
    command.action(() => {
      parsed = toCall(entry, command);
    });
    program.addCommand(command);
  }
  try {
    program.parse(withoutHelp(argv), { from: 'user' });
  } catch (error) {
    throw error instanceof CommanderError ? inOurWords(error, argv, table) : error;
  }
  if (parsed === null) throw new Error('the parser neither called a command nor refused');
  return parsed;
}

/** A command that prints nothing and throws instead of exiting. */
function quietCommand(name: string): Command {
  return new Command(name)
    .exitOverride()
    .helpOption(false)
    .helpCommand(false)
    .configureOutput({ writeOut: () => {}, writeErr: () => {} });
}

/** Those that bear on the command, those every command has, and the shared rest. */
function optionsOf(entry: CommandEntry): OptionName[] {
  const own = [...entry.options, ...ALWAYS];
  const flags = new Set(own.map(longFlag));
  return [...own, ...SHARED.filter((name) => !flags.has(longFlag(name)))];
}

function commanderOption(name: OptionName, entry: CommandEntry): Option {
  const { flags, about, choices, repeatable, required, integer, excludes } = OPTION_TABLE[name];
  const option = new Option(flags, about);
  if (choices !== undefined) option.choices(choices);
  if (integer === true) option.argParser(parseInteger);
  if (repeatable === true) {
    option.argParser((value: string, before: string[] | undefined) => [...(before ?? []), value]);
  }
  if (required === true) option.makeOptionMandatory();
  if (excludes !== undefined) option.conflicts([...excludes]);
  if (!entry.options.includes(name) && !ALWAYS.includes(name)) option.hideHelp();
  return option;
}

function parseInteger(text: string): number {
  const value = Number(text);
  if (!/^\d+$/.test(text) || value > SEED_LIMIT) {
    throw new InvalidArgumentError(`it takes an integer from 0 to ${SEED_LIMIT}`);
  }
  return value;
}

/** A call for help comes here only when its command is unknown, which is what is then said. */
function withoutHelp(argv: readonly string[]): string[] {
  const words = argv[0] === 'help' ? argv.slice(1) : argv;
  const end = words.includes('--') ? words.indexOf('--') : words.length;
  return words.filter((word, at) => at > end || (word !== '-h' && word !== '--help'));
}

interface RawOptions {
  device?: string[];
  variant?: string[];
  analyte?: string[];
  scenario?: string[];
  pour?: string[];
  poursPerDay?: string[];
  randomPours?: boolean;
  sweep?: string[];
  seed?: number;
  draws?: number;
  curve?: boolean;
  breakEven?: boolean;
  regions?: boolean;
  inputs?: boolean;
  sums?: boolean;
  filterLife?: boolean;
  log10?: boolean;
  spikes?: boolean;
  toldApart?: boolean;
  groups?: boolean;
  margin?: string;
  idleRise?: boolean;
  above?: string;
  feed?: string;
  feedSample?: string;
  throughput?: string;
  plan?: boolean;
  packages?: boolean;
  prices?: string;
  wanted?: string[];
  power?: string;
  tellers?: string;
  budget?: string;
  events?: number;
  replicates?: number;
  writeLayouts?: boolean;
  against?: string;
  out?: string;
  force?: boolean;
  format?: PrintOptions['format'];
  failOn?: 'warning' | 'note';
  color?: PrintOptions['color'];
  quiet?: boolean;
}

function toCall(entry: CommandEntry, command: Command): ParsedCall {
  const raw = command.opts<RawOptions>();
  const writesFolder = entry.options.includes('folder');
  const pours = raw.pour ?? [];
  const poursPerDay = raw.poursPerDay ?? [];
  const regions = raw.regions === true;
  const hasSizes = pours.length > 0 || poursPerDay.length > 0;
  return {
    entry,
    args: command.args,
    options: {
      devices: raw.device ?? [],
      variants: raw.variant ?? [],
      analytes: raw.analyte ?? [],
      scenarios: raw.scenario ?? [],
      seed: raw.seed ?? null,
      draws: raw.draws ?? null,
      pours,
      poursPerDay,
      randomPours: raw.randomPours === true,
      sweeps: raw.sweep ?? [],
      curve: raw.curve === true || (hasSizes && !regions),
      regions,
      inputs: raw.inputs === true,
      breakEven: raw.breakEven === true,
      sums: raw.sums === true,
      filterLife: raw.filterLife === true,
      log10: raw.log10 === true,
      spikes: raw.spikes === true,
      toldApart: raw.toldApart === true,
      groups: raw.groups === true,
      margin: raw.margin ?? null,
      idleRise: raw.idleRise === true || raw.above !== undefined,
      above: raw.above ?? null,
      feed: raw.feed ?? null,
      feedSample: raw.feedSample ?? null,
      throughput: raw.throughput ?? null,
      plan: raw.plan === true || raw.power !== undefined,
      packages: raw.packages === true || raw.events !== undefined || raw.replicates !== undefined,
      prices: raw.prices ?? null,
      wanted: raw.wanted ?? [],
      power: raw.power ?? null,
      tellers: raw.tellers ?? null,
      budget: raw.budget ?? null,
      events: raw.events ?? null,
      replicates: raw.replicates ?? null,
      writeLayouts: raw.writeLayouts === true,
      against: raw.against ?? null,
      folder: writesFolder ? (raw.out ?? null) : null,
      force: raw.force === true,
    },
    print: {
      format: raw.format ?? 'table',
      out: writesFolder ? null : (raw.out ?? null),
      failOn: raw.failOn ?? null,
      color: raw.color ?? 'auto',
      quiet: raw.quiet === true,
    },
    idle: command.options
      .filter((option) => option.hidden && command.getOptionValue(option.attributeName()) != null)
      .map((option) => option.long ?? option.flags),
  };
}
