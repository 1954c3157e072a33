import type { Margin } from '../compare/index.ts';
import { BenchError } from '../findings/index.ts';

const POINTS = /^(\d+(?:\.\d+)?)\s*%$/;
const FACTOR = /^(?:x\s*(\d+(?:\.\d+)?)|(\d+(?:\.\d+)?)\s*x)$/i;

/**
 * A margin of equivalence as it is written on the command line: `5 %` is five points of the reduction,
 * `1.5x` a factor between what two devices let through.
 * @throws {BenchError} option-unknown
 * @example readMargin('5%') // { kind: 'points', value: 0.05 }
 */
export function readMargin(text: string): Margin {
  const points = Number(POINTS.exec(text.trim())?.[1] ?? Number.NaN) / 100;
  if (points > 0 && points < 1) return { kind: 'points', value: points };
  const [, before, after] = FACTOR.exec(text.trim()) ?? [];
  const factor = Number(before ?? after ?? Number.NaN);
  if (factor > 1 && Number.isFinite(factor)) return { kind: 'ratio', value: factor };
  throw new BenchError(
    'option-unknown',
    `--margin: "${text}" is no margin`,
    'write points of the reduction between 0 and 100, such as "5 %", or a factor above 1 between ' +
      'what passes, such as "1.5x"',
  );
}
