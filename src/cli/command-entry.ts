import type { CommandModule } from '../commands/command.ts';
import type { OptionName } from './option-table.ts';

/** Everything the command line knows of a command: parsing, help and tests follow from it. */
export interface CommandEntry {
  readonly name: string;
  /** All of them required, in their order. */
  readonly args: readonly CommandArgument[];
  /** One sentence, without a final full stop. */
  readonly summary: string;
  /** The options that bear on it, besides those every command has. */
  readonly options: readonly OptionName[];
  /** Calls that run on `samples/`, each without the leading `pourbench `. */
  readonly examples: readonly [string, string];
  /** Loads the command; called only when it is run. */
  readonly load: () => Promise<CommandModule>;
}

interface CommandArgument {
  readonly name: string;
  readonly about: string;
}
