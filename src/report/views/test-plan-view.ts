import type { TestPlanRow } from '../../model/index.ts';
import { lowerBoundText } from '../format-percent.ts';
import type { View } from '../view.ts';
import {
  labText,
  levelText,
  type NameOf,
  percentText,
  replicatesText,
  targetText,
} from './next-test-words.ts';
import { sideText } from './reduction-words.ts';

interface Plan {
  readonly margin: { readonly kind: 'points' | 'ratio'; readonly value: number };
  readonly power: number;
  readonly confidence: number;
}

const CAUTION =
  'A plan for these limits and this feed; the lab may report other limits on the day. No medical advice.';

/** What a feed can show at each limit, what it takes to show more, and the replicates. */
export function testPlanViews(rows: readonly TestPlanRow[], plan: Plan, nameOf: NameOf): View[] {
  const isAsked = rows.some(({ target }) => target.kind !== 'any');
  return [showableView(rows, nameOf), ...(isAsked ? [replicatesView(rows, plan, nameOf)] : [])];
}

function showableView(rows: readonly TestPlanRow[], nameOf: NameOf): View {
  const shown = rows.filter(({ shows_target }) => shows_target).length;
  return {
    caption:
      rows.length === 0
        ? 'No question to plan for: no claim, nothing wanted, nothing found in the feed'
        : `This feed can show what is asked at ${shown} of ${rows.length} limits`,
    columns: [
      { head: 'Analyte', align: 'left' },
      { head: 'To be shown', align: 'left' },
      { head: 'Lab, package', align: 'left' },
      { head: 'Unit', align: 'left' },
      { head: 'Limit', align: 'right' },
      { head: 'Feed', align: 'right' },
      { head: 'It can show', align: 'right' },
      { head: 'Feed needed', align: 'right' },
      { head: 'Spike by', align: 'right' },
    ],
    rows: rows.map((row) => [
      nameOf(row.analyte),
      targetText(row.target, row.unit),
      labText(row),
      row.unit,
      levelText(row.limit),
      sideText(row.feed),
      showable(row.largest_reduction.printed),
      row.feed_needed.printed === null ? 'none' : levelText(row.feed_needed.printed),
      row.spike === null ? 'none' : levelText(row.spike),
    ]),
    legend: [
      'It can show: the largest reduction that would be printed, if the product is not detected: 1 - L/(b (1 - k u)), rounded down. Without any uncertainty it is 1 - L/b; JSON and CSV hold both.',
      'Feed needed: smallest feed whose printed lower bound reaches what is asked; "none": no feed does at this uncertainty.',
      CAUTION,
    ],
  };
}

function replicatesView(rows: readonly TestPlanRow[], plan: Plan, nameOf: NameOf): View {
  const asked = rows.filter(({ target }) => target.kind !== 'any');
  const pairs = asked[0]?.replicates.pairs ?? 0;
  return {
    caption: `Product samples of each device that tell two devices apart by ${marginText(plan)}`,
    columns: [
      { head: 'Analyte', align: 'left' },
      { head: 'Better device', align: 'left' },
      { head: 'Lab, package', align: 'left' },
      { head: 'Unit', align: 'left' },
      { head: 'Feed', align: 'right' },
      { head: 'Two devices', align: 'right' },
      { head: `All ${pairs} pairs`, align: 'right' },
    ],
    rows: asked.map((row) => [
      nameOf(row.analyte),
      targetText(row.target, row.unit),
      labText(row),
      row.unit,
      row.replicates.feed === null ? 'none' : levelText(row.replicates.feed),
      replicatesText(row, 'pair'),
      replicatesText(row, 'all_pairs'),
    ]),
    legend: [
      `Chance ${percentText(plan.power)} at a confidence of ${percentText(plan.confidence)}, two-sample t test, the better device at what is asked.`,
      'Feed: as it is where it can show what is asked, else as needed. "stated": a lab\'s own uncertainty is shared by its results, so more samples do not help.',
      CAUTION,
    ],
  };
}

function marginText({ margin: { kind, value } }: Plan): string {
  return kind === 'points'
    ? `${percentText(value)} of the feed`
    : `a factor of ${levelText(value)} in the product`;
}

function showable(reduction: number | null): string {
  return reduction === null ? 'none' : lowerBoundText(reduction);
}
