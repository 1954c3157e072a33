import { type Finding, placeText, sortFindings } from '../findings/index.ts';
import type { View } from './view.ts';

/** All findings as a table, in reading order. */
export function findingsView(findings: readonly Finding[]): View {
  const count = findings.length;
  return {
    caption: `${count === 0 ? 'No' : count} finding${count === 1 ? '' : 's'} about the data`,
    columns: ['place', 'level', 'code', 'what was found', 'remedy'].map((head) => ({
      head,
      align: 'left',
    })),
    rows: sortFindings(findings).map((each) => [
      placeText(each.place),
      each.level,
      each.code,
      each.message,
      each.remedy,
    ]),
    legend: [],
  };
}
