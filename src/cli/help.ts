import type { CommandEntry } from './command-entry.ts';
import { EXIT_MEANINGS } from './exit-codes.ts';
import { ALWAYS, OPTION_GROUPS, OPTION_TABLE, type OptionName } from './option-table.ts';

const WIDTH = 100;

const PURPOSE =
  'pourbench compares household drinking-water filtration devices: it reads the lab exports and ' +
  'bench logs of a test bench and gives bounded reductions, true water use, flow and review notes.';

const HELP = ['-h', '--help'];

/**
 * The help a call asks for, from the table alone and before any parser is loaded; null when it asks
 * for something else.
 *
 * Edge cases: `help` and `help <command>` ask for help; what follows `--` never does; help of a
 * command that is not in the table is null, so that the parser can say what is wrong.
 */
export function requestedHelp(
  argv: readonly string[],
  table: readonly CommandEntry[],
): string | null {
  const end = argv.indexOf('--');
  const words = end < 0 ? argv : argv.slice(0, end);
  const isAsked = words[0] === 'help';
  if (!isAsked && !words.some((word) => HELP.includes(word))) return null;
  const name = words.slice(isAsked ? 1 : 0).find((word) => !word.startsWith('-'));
  if (name === undefined) return programHelp(table);
  const entry = table.find((candidate) => candidate.name === name);
  return entry === undefined ? null : commandHelp(entry);
}

/** Help of the program: every command of the table, the options all share, the exit codes. */
function programHelp(table: readonly CommandEntry[]): string {
  return joinParts([
    wrap(PURPOSE, 0, WIDTH),
    'Usage: pourbench <command> [arguments] [options]',
    section(
      'Commands',
      table.map((entry) => [callForm(entry), entry.summary] as const),
    ),
    section('Options of every command', [
      ...ALWAYS.map((name) => optionPair(name)),
      ['-h, --help', 'show help; with a command, its own'],
      ['-V, --version', 'show the version'],
    ]),
    exitSection(),
    'More: pourbench <command> --help, and docs/commands.md in this package',
  ]);
}

/** Help of one command. */
function commandHelp(entry: CommandEntry): string {
  const groups = OPTION_GROUPS.map((group) =>
    section(
      `${group} options`,
      [...entry.options, ...ALWAYS]
        .filter((name) => OPTION_TABLE[name].group === group)
        .map((name) => optionPair(name)),
    ),
  );
  return joinParts([
    wrap(`${capitalised(entry.summary)}.`, 0, WIDTH),
    `Usage: pourbench ${callForm(entry)} [options]`,
    section(
      'Arguments',
      entry.args.map((arg) => [`<${arg.name}>`, arg.about] as const),
    ),
    ...groups,
    `Examples\n${entry.examples.map((example) => `  pourbench ${example}`).join('\n')}`,
    exitSection(),
    'More: docs/commands.md in this package',
  ]);
}

/** `trace <bench> <device> <measure>`, with the options that cannot be left out. */
function callForm(entry: CommandEntry): string {
  const required = entry.options
    .filter((name) => OPTION_TABLE[name].required === true)
    .map((name) => OPTION_TABLE[name].flags.replace(/, --[a-z-]+/, ''));
  return [entry.name, ...entry.args.map((arg) => `<${arg.name}>`), ...required].join(' ');
}

function optionPair(name: OptionName): readonly [string, string] {
  const { flags, about, standard } = OPTION_TABLE[name];
  return [flags, standard === undefined ? about : `${about} (default: ${standard})`];
}

function exitSection(): string {
  return section(
    'Exit codes',
    EXIT_MEANINGS.map(([code, when]) => [String(code), when] as const),
  );
}

/** A heading and two columns; empty without pairs. */
function section(heading: string, pairs: readonly (readonly [string, string])[]): string {
  if (pairs.length === 0) return '';
  const left = Math.max(...pairs.map(([term]) => term.length)) + 4;
  const lines = pairs.map(
    ([term, about]) => `  ${term.padEnd(left - 2)}${wrap(about, left, WIDTH - left)}`,
  );
  return `${heading}\n${lines.join('\n')}`;
}

/** Breaks a text at spaces; every line but the first starts with the indent. */
function wrap(text: string, indent: number, width: number): string {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else {
      lines.push(word);
    }
  }
  return lines.join(`\n${' '.repeat(indent)}`);
}

function joinParts(parts: readonly string[]): string {
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
