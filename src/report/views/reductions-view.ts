import type { ReductionFact } from '../../analyse/index.ts';
import type { ReductionRow } from '../../model/index.ts';
import type { View } from '../view.ts';
import {
  isNoRejection,
  levelsText,
  reductionText,
  STAGE_LEGEND,
  sideText,
} from './reduction-words.ts';

const LEGEND = [
  'In brackets the interval at the confidence of the bench; bounds are widened by the uncertainty.',
  'A rise is "apparent" where the uncertainty is assumed: retest before publishing.',
  '≥ at least; < not detected, bounded by the limit of the lab; "a to b" detected, not quantified.',
  'Levels of supplies, as published; the JSON and CSV formats name each one.',
  'A before/after test of these samples on this feed and this specimen; no certification.',
];

/** One table for each device and variant: every analyte at every event. */
export function reductionViews(facts: readonly ReductionFact[]): View[] {
  const groups = new Map<string, ReductionFact[]>();
  for (const fact of facts) {
    const key = `${fact.row.device}\t${fact.row.variant}`;
    const group = groups.get(key) ?? [];
    group.push(fact);
    groups.set(key, group);
  }
  return [...groups.values()].map(reductionView);
}

function reductionView(facts: readonly ReductionFact[]): View {
  const hasLevels = facts.some((fact) => fact.row.reference_levels.length > 0);
  return {
    caption: caption(facts),
    columns: [
      { head: 'Analyte', align: 'left' },
      { head: 'Event', align: 'left' },
      { head: 'Unit', align: 'left' },
      { head: 'Feed', align: 'right' },
      { head: 'Product', align: 'right' },
      { head: 'Reduction', align: 'right' },
      ...(hasLevels ? [{ head: 'Product against reference levels', align: 'left' } as const] : []),
    ],
    rows: facts.map(({ row, analyte }) => [
      analyte.name,
      row.kind === 'spiked' ? `${row.event} (spiked)` : row.event,
      row.unit,
      sideText(row.feed),
      sideText(row.product),
      isNoRejection(row) ? `${reductionText(row)}, not rejection` : reductionText(row),
      ...(hasLevels ? [levelsText(row)] : []),
    ]),
    legend: facts.some(({ row }) => isNoRejection(row)) ? [...LEGEND, STAGE_LEGEND] : LEGEND,
  };
}

const WORDS: readonly (readonly [ReductionRow['outcome'], string])[] = [
  ['measured', 'measured'],
  ['at-least', 'bounded from below'],
  ['between', 'between bounds'],
  ['not-shown', 'no reduction shown'],
  ['rise', 'rises'],
  ['untestable', 'feed too low to show'],
  ['untested', 'not tested'],
];

function caption(facts: readonly ReductionFact[]): string {
  const first = facts[0]?.row;
  const counts = WORDS.flatMap(([outcome, words]) => {
    const count = facts.filter(({ row }) => row.outcome === outcome).length;
    return count === 0 ? [] : `${count} ${words}`;
  });
  const variant = first === undefined || first.variant === 'standard' ? '' : ` (${first.variant})`;
  return `${first?.device ?? ''}${variant}: ${facts.length} pairs of feed and product; ${counts.join(', ')}`;
}
