import { BenchError } from '../../findings/index.ts';

/**
 * What a kernel gives, or null where it refuses these results: all equal, or a figure of zero. Those
 * are properties of the data, and other methods still have something to say.
 */
export function whereUsable<T>(compute: () => T | null): T | null {
  try {
    return compute();
  } catch (error) {
    if (error instanceof BenchError) return null;
    throw error;
  }
}
