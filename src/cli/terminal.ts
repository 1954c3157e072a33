import { EXIT } from './exit-codes.ts';

type Environment = Readonly<Record<string, string | undefined>>;
type ColourFlag = 'auto' | 'always' | 'never';

/** Columns a table may take where the terminal does not say. */
const USUAL_WIDTH = 100;

/**
 * Whether a stream gets colour: the flag decides, then a non-empty NO_COLOR, then FORCE_COLOR
 * (`0` and `false` say no), then TERM=dumb, then whether the stream is a terminal.
 */
export function wantsColour(
  flag: ColourFlag,
  stream: { readonly isTTY?: boolean },
  environment: Environment,
): boolean {
  if (flag !== 'auto') return flag === 'always';
  const { NO_COLOR: no, FORCE_COLOR: force, TERM: terminal } = environment;
  if (no !== undefined && no !== '') return false;
  if (force !== undefined) return force !== '0' && force !== 'false';
  return terminal !== 'dumb' && stream.isTTY === true;
}

/** Columns for a table: COLUMNS where it is a positive integer, then the terminal, then 100. */
export function tableWidth(
  stream: { readonly columns?: number },
  environment: Environment,
): number {
  const { COLUMNS: told } = environment;
  const asked = Number(told);
  if (Number.isInteger(asked) && asked > 0) return asked;
  return stream.columns !== undefined && stream.columns > 0 ? stream.columns : USUAL_WIDTH;
}

/** Whether progress is shown: only to a person who watches, so never into a file or a robot. */
export function showsProgress(
  quiet: boolean,
  stream: { readonly isTTY?: boolean },
  environment: Environment,
): boolean {
  const { CI: robot = '' } = environment;
  return !quiet && stream.isTTY === true && (robot === '' || robot === 'false');
}

/** Data, for stdout only. */
export function writeData(text: string): void {
  process.stdout.write(text);
}

/** Everything that is not data. */
export function writeMessage(text: string): void {
  process.stderr.write(text);
}

/** Thrown where a call may be left because the user asked for it. */
export class Interruption extends Error {}

/**
 * Gives the process its ends: a closed pipe is a quiet 0, stdout that fails otherwise (a full disk)
 * 2, an error nobody caught 70, an interruption 130.
 *
 * An interruption takes effect at the next point at which the call asks for it, so never inside the
 * writing of a file; a second one at once.
 *
 * @param defectText words an error nobody caught
 * @returns the point: throws an Interruption when one is asked for
 */
export function guardProcess(defectText: (error: unknown) => string): () => void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(EXIT.done);
    writeMessage(
      `error output-unwritable: standard output cannot be written (${error.code})\n` +
        '  remedy: make room, or write to another place with --out\n',
    );
    process.exit(EXIT.refused);
  });
  // Messages nobody reads must not stop the data.
  process.stderr.on('error', () => {});
  process.on('uncaughtException', (error) => {
    writeMessage(defectText(error));
    process.exit(EXIT.defect);
  });
  let isInterrupted = false;
  process.on('SIGINT', () => {
    if (isInterrupted) process.exit(EXIT.interrupted);
    isInterrupted = true;
  });
  return () => {
    if (isInterrupted) throw new Interruption();
  };
}
