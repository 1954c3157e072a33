// Takes: the arguments of the process. Gives: data on stdout, messages on stderr, an exit code.
// Never reads a bench and never computes a figure: commands are loaded when they are called.
// Imports commander statically, and everything else of the tool on demand.
import { COMMAND_TABLE } from './command-table.ts';
import { requestedHelp } from './help.ts';

const argv = process.argv.slice(2);
const quick = requestedHelp(argv, COMMAND_TABLE) ?? (await requestedVersion());
if (quick === null) {
  const { runCli } = await import('./run-cli.ts');
  await runCli(argv, COMMAND_TABLE);
} else {
  // A reader that has gone away is not a failure.
  process.stdout.on('error', () => {});
  process.stdout.write(quick);
}

async function requestedVersion(): Promise<string | null> {
  if (argv[0] !== '-V' && argv[0] !== '--version') return null;
  const { packageVersion } = await import('./package-version.ts');
  return `${packageVersion()}\n`;
}
