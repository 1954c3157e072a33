import type { CommandResult } from '../commands/command.ts';
import type { Finding, Level } from '../findings/index.ts';

/** The only place that knows exit codes. */
export const EXIT = { done: 0, flagged: 1, refused: 2, defect: 70, interrupted: 130 } as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Every exit code and when it is given, as help prints them. */
export const EXIT_MEANINGS: readonly (readonly [ExitCode, string])[] = [
  [EXIT.done, 'done'],
  [EXIT.flagged, 'done, but a finding reached --fail-on, or --against found a number moved'],
  [EXIT.refused, 'the call is wrong, or the data hold an error'],
  [EXIT.defect, 'a defect of the tool'],
  [EXIT.interrupted, 'interrupted'],
];

/** Ranks levels: true when the first is as grave as the second or graver. */
export type AtLeast = (level: Level, floor: Level) => boolean;

/**
 * The exit code of a call that ran to its end. An error in the data outweighs everything else.
 *
 * @param failOn the level from which a finding makes the call exit with 1; null: none does
 */
export function exitCodeOf(
  findings: readonly Finding[],
  end: CommandResult['end'],
  failOn: Level | null,
  atLeast: AtLeast,
): ExitCode {
  if (findings.some((item) => atLeast(item.level, 'error'))) return EXIT.refused;
  if (end === 'moved') return EXIT.flagged;
  if (failOn !== null && findings.some((item) => atLeast(item.level, failOn))) return EXIT.flagged;
  return EXIT.done;
}
