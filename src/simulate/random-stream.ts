import { refuseInput } from './check-number.ts';

/** A source of random numbers that gives the same numbers for the same seed on every machine. */
export interface RandomStream {
  /** A whole number from 0 to 2^32 − 1. */
  readonly nextUint32: () => number;
  /** A multiple of 2^-53, from 0 up to but not including 1. */
  readonly nextFraction: () => number;
}

/** One step of the counter of splitmix64: 2^64 over the golden ratio, made odd (exact). */
const GOLDEN_STEP = 0x9e3779b97f4a7c15n;

/** Four 32-bit words, not all 0. */
type Words = readonly [number, number, number, number];

/**
 * A random stream for a seed and a stream number.
 *
 * Generator xoshiro128**, seeded by splitmix64. Streams of one seed are independent for any
 * practical purpose, so that each group of pours can have its own.
 * @param seed a whole number; negative ones are as good as any
 * @param stream a whole number
 * @throws {BenchError} simulation-input when either is not a safe whole number
 * Source: Blackman and Vigna, Scrambled linear pseudorandom number generators, ACM Transactions on
 *   Mathematical Software 47 (2021), article 36 (xoshiro128**); Steele, Lea and Flood, Fast
 *   splittable pseudorandom number generators, OOPSLA 2014, figure 17 with the mixing constants of
 *   Stafford's variant 13 (splitmix64).
 * @example randomStream(1).nextFraction() === randomStream(1).nextFraction() // true
 */
export function randomStream(seed: number, stream = 0): RandomStream {
  for (const [name, value] of Object.entries({ seed, stream })) {
    if (!Number.isSafeInteger(value)) {
      refuseInput(`${name} is ${String(value)}`, `give ${name} as a whole number`);
    }
  }
  // The stream number is mixed in after one splitmix64 output: added to the seed it would only
  // shift the counter, and neighbouring streams would overlap.
  const nextKey = splitMix64(BigInt(seed));
  const next = splitMix64(nextKey() ^ BigInt.asUintN(64, BigInt(stream)));
  const first = next();
  const second = next();
  const low = (word: bigint) => Number(word & 0xffffffffn);
  const high = (word: bigint) => Number(word >> 32n);
  return xoshiro128([low(first), high(first), low(second), high(second)]);
}

/** The splitmix64 generator: 64-bit outputs from any 64-bit start. */
export function splitMix64(start: bigint): () => bigint {
  let counter = BigInt.asUintN(64, start);
  return () => {
    counter = BigInt.asUintN(64, counter + GOLDEN_STEP);
    let word = counter;
    word = BigInt.asUintN(64, (word ^ (word >> 30n)) * 0xbf58476d1ce4e5b9n);
    word = BigInt.asUintN(64, (word ^ (word >> 27n)) * 0x94d049bb133111ebn);
    return word ^ (word >> 31n);
  };
}

/** The xoshiro128** generator: 32-bit outputs from four words, and fractions of two outputs each. */
export function xoshiro128(words: Words): RandomStream {
  const state = Int32Array.from(words);
  return {
    nextUint32: () => {
      const b = state[1] as number;
      const output = scrambled(b);
      const c = (state[2] as number) ^ (state[0] as number);
      const d = (state[3] as number) ^ b;
      state[1] = b ^ c;
      state[0] = (state[0] as number) ^ d;
      state[2] = c ^ (b << 9);
      state[3] = rotateLeft(d, 11);
      return output;
    },
    // Two steps in one, with the words in between kept out of memory: this is where the time of
    // drawing a year goes.
    nextFraction: () => {
      let a = state[0] as number;
      let b = state[1] as number;
      let c = (state[2] as number) ^ a;
      let d = (state[3] as number) ^ b;
      const upper = scrambled(b) >>> 5;
      a ^= d;
      const b2 = b ^ c;
      c = c ^ (b << 9) ^ a;
      d = rotateLeft(d, 11) ^ b2;
      b = b2;
      const lower = scrambled(b) >>> 6;
      state[0] = a ^ d;
      state[1] = b ^ c;
      state[2] = c ^ (b << 9);
      state[3] = rotateLeft(d, 11);
      return (upper * 67_108_864 + lower) / 9_007_199_254_740_992;
    },
  };
}

function scrambled(word: number): number {
  return Math.imul(rotateLeft(Math.imul(word, 5), 7), 9) >>> 0;
}

function rotateLeft(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}
