import type { CallIo } from './command.ts';

/** How often progress is told, ms. */
const EVERY_MS = 250;

/** Time that has to pass before the time left can be guessed, ms. */
const FIRST_GUESS_MS = 1000;

/** Part of the work that has to be done before it, as the first step takes what all others share. */
const FIRST_GUESS_DONE = 0.04;

/** Runs steps of work to their end, telling how far they are and about how long they still take. */
export async function toldProgress<Step extends { readonly done: number }, Result>(
  io: CallIo,
  what: string,
  steps: Generator<Step, Result>,
): Promise<Result> {
  const began = performance.now();
  let told = began;
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    const now = performance.now();
    if (now - told < EVERY_MS) continue;
    told = now;
    const { done } = step.value;
    const spent = now - began;
    const left =
      spent < FIRST_GUESS_MS || done < FIRST_GUESS_DONE
        ? ''
        : `, about ${Math.ceil((spent * (1 - done)) / done / 1000)} s left`;
    await io.progress(`${what}: ${Math.floor(done * 100)} %${left}`);
  }
}

/** The same without anybody watching. */
export function untold<Result>(steps: Generator<unknown, Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
