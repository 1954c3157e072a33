import type { CommanderError } from 'commander';
import type { FindingCode } from '../findings/index.ts';
import type { CommandEntry } from './command-entry.ts';

/** The call is wrong: what is wrong with it and what to do. Printed like a finding. */
export class UsageError extends Error {
  readonly code: FindingCode;
  readonly remedy: string;

  constructor(code: FindingCode, message: string, remedy: string) {
    super(message);
    this.name = 'UsageError';
    this.code = code;
    this.remedy = remedy;
  }
}

const CODES: Readonly<Record<string, FindingCode>> = {
  'commander.help': 'argument-missing',
  'commander.missingArgument': 'argument-missing',
  'commander.missingMandatoryOptionValue': 'argument-missing',
  'commander.optionMissingArgument': 'argument-missing',
  'commander.conflictingOption': 'option-clash',
};

/**
 * What the parser refused, as a wrong call: its message in our words, and as remedy its guess at
 * what was meant, the values there are, or where to read on.
 *
 * @param argv the arguments of the call, for the help that fits
 */
export function inOurWords(
  error: CommanderError,
  argv: readonly string[],
  table: readonly CommandEntry[],
): UsageError {
  const code = CODES[error.code] ?? 'option-unknown';
  const help = helpFor(argv, table);
  if (error.code === 'commander.help') {
    return new UsageError(code, 'no command is given', `name one; see ${help}`);
  }
  const [what = '', meant = ''] = error.message.replace(/^error: /, '').split('\n');
  const value = /^option '(.+)' argument '(.*)' is invalid\. (.+?)\.?$/.exec(what);
  if (value !== null) {
    const [, flags = '', given = '', takes = ''] = value;
    const allowed = takes.replace('Allowed choices are', 'write one of');
    return new UsageError(code, `"${given}" is not a value of ${flags}`, allowed);
  }
  const guess = /Did you mean (.+)\?\)$/.exec(meant)?.[1];
  const isEarly = error.code === 'commander.unknownOption' && argv[0]?.startsWith('-') === true;
  const advice = guess === undefined ? '' : `did you mean ${guess}? `;
  const order = isEarly ? 'options stand behind the command; ' : '';
  return new UsageError(code, what.replace(/\.$/, ''), `${order}${advice}see ${help}`);
}

function helpFor(argv: readonly string[], table: readonly CommandEntry[]): string {
  const first = argv.find((word) => !word.startsWith('-'));
  const entry = table.find((candidate) => candidate.name === first);
  return entry === undefined ? 'pourbench --help' : `pourbench ${entry.name} --help`;
}
