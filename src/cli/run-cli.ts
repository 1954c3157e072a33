import { answer } from './answer.ts';
import type { CommandEntry } from './command-entry.ts';
import { type ParsedCall, parseCall } from './parse-call.ts';
import { defectText, tellFailure } from './tell-failure.ts';
import { guardProcess, wantsColour } from './terminal.ts';

/**
 * Runs one call from its arguments to its exit code, which is set and never forced: what was
 * written is allowed to arrive.
 *
 * @param argv the arguments after the program's name; calls for help are answered before
 * @param table the commands there are
 */
export async function runCli(
  argv: readonly string[],
  table: readonly CommandEntry[],
): Promise<void> {
  const debug = argv.includes('--debug');
  const letInterruptionIn = guardProcess((error) => defectText(error, debug));
  const { colourStyle } = await import('../report/style.ts');
  const styleFor = (flag: ParsedCall['print']['color']) =>
    colourStyle(wantsColour(flag, process.stderr, process.env) ? 1 : 0);
  let style = await styleFor('auto');
  try {
    const call = parseCall(argv, table);
    style = await styleFor(call.print.color);
    process.exitCode = await answer(call, style, letInterruptionIn);
  } catch (error) {
    process.exitCode = await tellFailure(error, debug, style);
  }
}
