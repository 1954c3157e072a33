import { BenchError } from '../findings/index.ts';
import { refuseInput } from './check-number.ts';
import type { PourSeries, Pours } from './drain-device.ts';

/**
 * The pours as two columns of doubles, so that the event loop always reads the same kind of list.
 *
 * @throws {BenchError} simulation-input when the lists differ in length
 */
export function pourColumns(pours: Pours): PourSeries {
  const { atS, volumeL } = pours;
  if (atS.length !== volumeL.length) {
    refuseInput(
      `the pours have ${atS.length} times and ${volumeL.length} volumes`,
      'give every pour one time and one volume',
    );
  }
  return { atS: doubles(atS), volumeL: doubles(volumeL) };
}

/** What is not a number becomes NaN, and is refused by the checks of the event loop. */
function doubles(list: ArrayLike<number>): Float64Array {
  if (list instanceof Float64Array) return list;
  return Float64Array.from({ length: list.length }, (_, index) => {
    const value: unknown = list[index];
    return typeof value === 'number' ? value : Number.NaN;
  });
}

/** Reports a pour whose time or volume is not a finite number from 0 upward. */
export function refusePour(index: number, atS: number, volumeL: number): never {
  refuseInput(
    `pour at index ${index} starts at ${atS} s and holds ${volumeL} L`,
    'give times and volumes as finite numbers from 0 upward',
  );
}

/** Reports a pour that starts before the one listed ahead of it. */
export function refuseOrder(index: number, atS: number, previousAtS: number): never {
  throw new BenchError(
    'pours-unordered',
    `pour at index ${index} starts at ${atS} s, before the pour listed ahead of it (${previousAtS} s)`,
    'list the pours in order of time',
  );
}

/** Reports a pour that starts while the one before it still runs. */
export function refuseOverlap(index: number, atS: number, previousEndS: number): never {
  throw new BenchError(
    'pours-overlap',
    `pour at index ${index} starts at ${atS} s, before the earlier one ends (${previousEndS} s)`,
    'correct the time, the volume or the clean flow',
  );
}
