import type { AnalyteComparison, ReductionSummary } from '../../compare/index.ts';
import type { AnalyteFacts } from './analyte-facts.ts';
import type { Subject } from './subjects.ts';

/** What can be said of the differences between the devices shown, on one analyte. */
export interface ShownComparison {
  readonly analyte: AnalyteFacts;
  readonly kind: 'natural' | 'spiked';
  /** Devices shown that share a feed of this kind, the one whose product holds least first. */
  readonly devices: readonly Subject[];
  /** Pairs that could be compared. */
  readonly pairs: number;
  readonly apart: number;
  /** Of the pairs told apart, those that rest on assumed uncertainty. */
  readonly apparent: number;
  readonly equivalent: number;
  /** The largest groups in which no two are told apart; a device may stand in several. */
  readonly groups: readonly (readonly Subject[])[];
}

/**
 * The comparisons of the bench, limited to the devices shown in the state that stands for them. All
 * devices and states of the bench enter the comparison itself, so that a filter changes no verdict.
 */
export function shownComparisons(
  comparisons: readonly AnalyteComparison[],
  analytes: readonly AnalyteFacts[],
): ShownComparison[] {
  return analytes.flatMap((analyte) =>
    comparisons
      .filter((each) => each.analyte.key === analyte.analyte.key)
      .flatMap((each) => shownOf(each, analyte)),
  );
}

function shownOf(comparison: AnalyteComparison, analyte: AnalyteFacts): ShownComparison[] {
  const subjects = analyte.devices.map(({ subject }) => subject);
  const subjectOf = (one: ReductionSummary): Subject | undefined =>
    subjects.find(({ key, variant }) => key === one.device && variant === one.variant);
  const pairs = comparison.pairs.filter(
    ({ a, b, verdict }) =>
      verdict !== 'not-comparable' && subjectOf(a) !== undefined && subjectOf(b) !== undefined,
  );
  if (pairs.length === 0) return [];
  const of = (wanted: (typeof pairs)[number]['verdict']) =>
    pairs.filter(({ verdict }) => verdict === wanted);
  const compared = comparison.devices.map((one) =>
    pairs.some(({ a, b }) => a === one || b === one) ? subjectOf(one) : undefined,
  );
  const groups = comparison.groups.map((group) => group.flatMap((at) => compared[at] ?? []));
  return [
    {
      analyte,
      kind: comparison.kind,
      devices: compared.flatMap((subject) => subject ?? []),
      pairs: pairs.length,
      apart: of('differ').length,
      apparent: of('differ').filter(({ firm }) => !firm).length,
      equivalent: of('equivalent').length,
      groups: largest(groups),
    },
  ];
}

/** Groups that lie in no other one. */
function largest(groups: readonly (readonly Subject[])[]): (readonly Subject[])[] {
  return groups.filter(
    (group, at) =>
      group.length > 0 &&
      !groups.some(
        (other, place) =>
          place !== at &&
          group.every((member) => other.includes(member)) &&
          (other.length > group.length || place < at),
      ),
  );
}

/** True for a measured figure without an interval. */
export function isBare({ low, high }: ReductionSummary): boolean {
  return low === high;
}

/** True where no event rests on assumed uncertainty alone. */
export function isFirm({ facts }: ReductionSummary): boolean {
  return facts.every(({ row }) => row.firm);
}
