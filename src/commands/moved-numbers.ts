import { type Finding, finding, hasErrors } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import { compare } from './compare.ts';
import { reductions } from './reductions.ts';
import { waterUse } from './water-use.ts';

/**
 * Published numbers that differ between a bench and an earlier edition of it.
 *
 * A figure that is new or gone counts as moved too: whoever published it has to know.
 * @returns one finding for each row that moved; none when either bench has errors
 */
export function movedNumbers(bench: Bench, earlier: Bench): Finding[] {
  if (hasErrors(bench.findings)) return [];
  if (hasErrors(earlier.findings)) {
    return [
      finding(
        'edition-unreadable',
        'the earlier edition has errors, so no number can be compared',
        'run `pourbench check` on it and correct what it finds',
      ),
    ];
  }
  const now = numbersOf(bench);
  const before = numbersOf(earlier);
  return [...new Set([...before.keys(), ...now.keys()])].flatMap((key) => {
    const old = before.get(key);
    const current = now.get(key);
    if (old === current) return [];
    return finding(
      'number-moved',
      `${key}: ${old ?? 'not there'} before, ${current ?? 'not there'} now`,
      'log the correction, with its reason, before publishing the new edition',
    );
  });
}

/** Figures by a key that stays the same between editions. */
function numbersOf(bench: Bench): Map<string, string> {
  const numbers = new Map<string, string>();
  for (const row of rowsOf(bench)) {
    numbers.set(row.key, row.figures.map((figure) => figure ?? 'none').join(' / '));
  }
  return numbers;
}

function rowsOf(
  bench: Bench,
): { readonly key: string; readonly figures: readonly (number | string | null)[] }[] {
  const outcomes = reductions(bench).rows as readonly {
    device: string;
    variant: string;
    event: string;
    kind: string;
    analyte: string;
    outcome: string;
    reduction: {
      interval_low: number | null;
      estimate: number | null;
      interval_high: number | null;
    };
  }[];
  const measures = compare(bench).rows as readonly {
    measure: string;
    device: string;
    variant: string;
    outcome: string;
    low: number | null;
    estimate: number | null;
    high: number | null;
  }[];
  const use = waterUse(bench).rows as readonly {
    device: string;
    variant: string;
    scenario: string;
    clean_L_per_day: { estimate: number | null };
    flush_drain_L_per_day: { estimate: number | null };
  }[];
  return [
    ...outcomes.map((row) => ({
      key: `reduction of ${row.analyte} by ${row.device} (${row.variant}) at ${row.event}, ${row.kind}`,
      figures: [
        row.outcome,
        row.reduction.interval_low,
        row.reduction.estimate,
        row.reduction.interval_high,
      ],
    })),
    ...measures
      .filter((row) => !row.measure.startsWith('reduction.'))
      .map((row) => ({
        key: `${row.measure} of ${row.device} (${row.variant})`,
        figures: [row.outcome, row.low, row.estimate, row.high],
      })),
    ...use.map((row) => ({
      key: `water use of ${row.device} (${row.variant}) in ${row.scenario}`,
      figures: [row.clean_L_per_day.estimate, row.flush_drain_L_per_day.estimate],
    })),
  ];
}
