import type { BenchError, Finding } from '../findings/index.ts';
import type { Style } from '../report/style.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { Interruption, writeMessage } from './terminal.ts';
import { UsageError } from './usage-error.ts';

/**
 * Says why a call failed. What the user can mend is printed like a finding; anything else is a
 * defect of the tool, told in one line. Where in the tool it was raised is shown on demand only.
 */
export async function tellFailure(error: unknown, debug: boolean, style: Style): Promise<ExitCode> {
  if (error instanceof Interruption) return EXIT.interrupted;
  const { BenchError, finding } = await import('../findings/index.ts');
  const told =
    error instanceof BenchError
      ? carriedFindings(error)
      : error instanceof UsageError
        ? [finding(error.code, error.message, error.remedy)]
        : null;
  if (told === null) {
    writeMessage(defectText(error, debug));
    return EXIT.defect;
  }
  const { findingsText, findingText } = await import('../report/findings-text.ts');
  const [only, ...others] = told;
  writeMessage(
    only !== undefined && others.length === 0
      ? `${findingText(only, style)}\n`
      : findingsText(told, { limit: null, style }),
  );
  if (debug) writeMessage(stackOf(error));
  return EXIT.refused;
}

/** An error may stand for several findings, all of which the user has to see at once. */
function carriedFindings(error: BenchError & { findings?: readonly Finding[] }) {
  return error.findings ?? [error.finding];
}

/** One line on a defect of the tool, and the stack when asked for. */
export function defectText(error: unknown, debug: boolean): string {
  const message = (error instanceof Error ? error.message : String(error)).replace(/\s+/g, ' ');
  const line = `pourbench: a defect of the tool, please report it with the call: ${message}\n`;
  return debug ? line + stackOf(error) : line;
}

function stackOf(error: unknown): string {
  if (!(error instanceof Error)) return '';
  const cause = error.cause === undefined ? '' : `caused by ${stackOf(error.cause)}`;
  return `${error.stack ?? error.message}\n${cause}`;
}
