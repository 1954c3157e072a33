import { join } from 'node:path';
import type { CallIo, CommandResult } from '../commands/command.ts';
import type { Outcome } from '../report/outcome.ts';
import type { Style } from '../report/style.ts';
import { type ExitCode, exitCodeOf } from './exit-codes.ts';
import { packageVersion } from './package-version.ts';
import type { ParsedCall } from './parse-call.ts';
import { showsProgress, tableWidth, wantsColour, writeData, writeMessage } from './terminal.ts';

/** Clears the line on which progress stands. */
const CLEAR_LINE = '\r\u001b[K';

/**
 * Runs a parsed call and prints what it gave: data to stdout or into the file of `--out`, the rest
 * to stderr. No data are printed when the findings hold an error, unless they are the data.
 */
export async function answer(
  call: ParsedCall,
  messages: Style,
  letInterruptionIn: () => void,
): Promise<ExitCode> {
  const { print } = call;
  for (const flag of print.quiet ? [] : call.idle) {
    writeMessage(`${flag} has no bearing on ${call.entry.name}\n`);
  }
  const version = packageVersion();
  const result = await runCommand(call, version, letInterruptionIn);
  const { atLeast, hasErrors } = await import('../findings/index.ts');
  const { outcome } = result;
  const areData = outcome?.schema === 'findings/1';
  const written = [...result.written];
  if (outcome !== null && (areData || !hasErrors(result.findings))) {
    const text = await dataText(outcome, call, version);
    if (print.out === null) {
      writeData(text);
    } else {
      const { writeFile } = await import('../report/write-output.ts');
      await writeFile(print.out, text, inputPaths(outcome, call));
      written.push(print.out);
    }
  }
  if (!areData) await tellFindings(result.findings, print.quiet, messages);
  if (!print.quiet) for (const path of written) writeMessage(`wrote ${path}\n`);
  return exitCodeOf(result.findings, result.end, print.failOn, atLeast);
}

async function runCommand(
  call: ParsedCall,
  version: string,
  letInterruptionIn: () => void,
): Promise<CommandResult> {
  const command = await call.entry.load();
  const shown = showsProgress(call.print.quiet, process.stderr, process.env);
  const io: CallIo = {
    progress: (text) => {
      if (shown) writeMessage(`${CLEAR_LINE}${text}`);
      return turnOfLoop().then(letInterruptionIn);
    },
  };
  try {
    await turnOfLoop();
    letInterruptionIn();
    const result = await command.run({ args: call.args, options: call.options, io, version });
    await turnOfLoop();
    letInterruptionIn();
    return result;
  } finally {
    if (shown) writeMessage(CLEAR_LINE);
  }
}

/** Signals are heard between two turns of the event loop only. */
function turnOfLoop(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}

/** The files the outcome rests on, which `--out` must not replace. */
function inputPaths(outcome: Outcome, call: ParsedCall): string[] {
  return call.args.flatMap((folder) => outcome.inputs.map((input) => join(folder, input.path)));
}

/** The data in the asked format. A file is never coloured: nobody asks what it is shown on. */
async function dataText(outcome: Outcome, call: ParsedCall, version: string): Promise<string> {
  const { color, format, out } = call.print;
  const { render } = await import('../report/render.ts');
  const { colourStyle } = await import('../report/style.ts');
  const isColoured = out === null && wantsColour(color, process.stdout, process.env);
  return render(outcome, format, {
    width: tableWidth(process.stdout, process.env),
    style: await colourStyle(isColoured ? 1 : 0),
    version,
  });
}

async function tellFindings(
  findings: CommandResult['findings'],
  quiet: boolean,
  style: Style,
): Promise<void> {
  const told = quiet ? findings.filter((item) => item.level === 'error') : findings;
  if (told.length === 0) return;
  const { findingsText } = await import('../report/findings-text.ts');
  writeMessage(findingsText(told, { style }));
}
