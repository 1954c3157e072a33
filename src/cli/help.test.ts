import { describe, expect, it } from 'vitest';
import type { CommandEntry } from './command-entry.ts';
import { COMMAND_TABLE } from './command-table.ts';
import { requestedHelp } from './help.ts';
import { ALWAYS, longFlag, OPTION_TABLE, type OptionName, SHARED } from './option-table.ts';

const TABLE: readonly CommandEntry[] = [
  {
    name: 'weigh',
    args: [{ name: 'bottle', about: 'what is weighed' }],
    summary: 'weigh a bottle',
    options: ['folder', 'seed'],
    examples: ['weigh a', 'weigh b'],
    load: () => Promise.reject(new Error('help loads no command')),
  },
];

describe('a call for help', () => {
  it('is seen anywhere before --, and nowhere else', () => {
    for (const call of ['--help', '-h', 'help', '--quiet -h']) {
      expect(requestedHelp(call.split(' '), TABLE)).toContain('Usage: pourbench <command>');
    }
    for (const call of ['weigh --help', 'help weigh', 'weigh x -h', '-h weigh']) {
      expect(requestedHelp(call.split(' '), TABLE)).toContain('Usage: pourbench weigh <bottle>');
    }
    for (const call of ['', 'weigh', 'weigh help', 'weigh -- --help', '--version']) {
      expect(requestedHelp(call.split(' '), TABLE)).toBeNull();
    }
  });

  it('about a command that does not exist is left to the parser, which can say so', () => {
    expect(requestedHelp(['wiegh', '--help'], TABLE)).toBeNull();
  });

  it('shows a required option in the usage, and defaults with the options', () => {
    const help = requestedHelp(['weigh', '--help'], TABLE);
    expect(help).toContain('Usage: pourbench weigh <bottle> -o <folder> [options]\n');
    expect(help).toContain('(default: the seed of bench.json)');
    expect(help).toContain('(default: auto)');
    expect(help).not.toContain('Input options');
  });
});

describe('the table of commands', () => {
  it('names each command once, and each summary is a sentence without its full stop', () => {
    const names = COMMAND_TABLE.map((entry) => entry.name);
    expect(new Set(names).size).toBe(names.length);
    for (const { summary } of COMMAND_TABLE) expect(summary).toMatch(/^[a-z].*[^.]$/);
  });

  it('gives each command two different examples of itself', () => {
    for (const { name, examples } of COMMAND_TABLE) {
      for (const example of examples) expect(example.startsWith(`${name} `)).toBe(true);
      expect(examples[0]).not.toBe(examples[1]);
    }
  });

  it('gives no command one flag with two meanings', () => {
    for (const { options } of COMMAND_TABLE) {
      const flags = [...options, ...ALWAYS].map(longFlag);
      expect(new Set(flags).size).toBe(flags.length);
    }
  });

  it('uses every option there is', () => {
    const used = new Set<OptionName>([...ALWAYS, ...SHARED]);
    for (const { options } of COMMAND_TABLE) for (const name of options) used.add(name);
    expect([...used].sort()).toEqual(Object.keys(OPTION_TABLE).sort());
  });
});
