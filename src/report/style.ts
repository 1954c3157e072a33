import type { Level } from '../findings/index.ts';

/** How text is set off on a terminal. Colour never carries meaning alone. */
export interface Style {
  strong(text: string): string;
  faint(text: string): string;
  level(level: Level, text: string): string;
}

const same = (text: string): string => text;

/** No colour at all: what files and pipes get. */
export const PLAIN_STYLE: Style = { strong: same, faint: same, level: (_, text) => text };

/**
 * A style in colour.
 *
 * @param depth what the terminal can show, decided by the caller: 0 none, 1 sixteen colours,
 *   2 two hundred and fifty-six, 3 all. The environment is never looked at here.
 */
export async function colourStyle(depth: 0 | 1 | 2 | 3): Promise<Style> {
  if (depth === 0) return PLAIN_STYLE;
  const { Chalk } = await import('chalk');
  const chalk = new Chalk({ level: depth });
  const ofLevel = { error: chalk.red, warning: chalk.yellow, note: chalk.cyan } as const;
  return {
    strong: (text) => chalk.bold(text),
    faint: (text) => chalk.dim(text),
    level: (level, text) => ofLevel[level](text),
  };
}
