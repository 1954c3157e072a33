import { type Finding, finding, type Place } from '../../findings/index.ts';
import type { AnalyteIndex } from '../../reference/index.ts';
import type { LayoutPlan } from './layout-plan.ts';
import { wideColumns } from './wide-columns.ts';

/** What a reader should know of a layout that was concluded and is certain. */
export function layoutRemarks(plan: LayoutPlan, analytes: AnalyteIndex, at: Place): Finding[] {
  switch (plan.shape) {
    case 'analytes-across':
      return unreadColumns(plan, analytes, at);
    case 'long':
      return bareResults(plan, at);
    default:
      return [];
  }
}

function unreadColumns(plan: LayoutPlan, analytes: AnalyteIndex, at: Place): Finding[] {
  const { unread } = wideColumns(plan.header, null, analytes);
  if (unread.length === 0) return [];
  const names = unread.map((column) => `"${plan.header[column] ?? ''}"`).join(', ');
  return [
    finding(
      'layout-proposed',
      `${unread.length} columns are neither analytes nor a role and were not read: ${names}`,
      'none needed if none of them holds results; else name it in the sidecar',
      at,
    ),
  ];
}

/** Figures without any sign, limit or letter beside them may be less than they look. */
function bareResults(plan: LayoutPlan, at: Place): Finding[] {
  const { sign, mdl, rl, limit, qualifier, condition } = plan.columns;
  const beside = [sign, mdl, rl, limit, qualifier, condition];
  if (beside.some((column) => column !== undefined)) return [];
  return [
    finding(
      'layout-proposed',
      'no column of signs, limits or qualifiers stands beside the results',
      'ask the lab for an export with its limits; without them a non-detect has no bound',
      at,
    ),
  ];
}
