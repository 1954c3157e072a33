import type { PriceList, TestPackageRow } from '../../model/index.ts';
import type { View } from '../view.ts';
import {
  labText,
  levelText,
  moneyText,
  type NameOf,
  targetText,
  unansweredText,
} from './next-test-words.ts';

/** What the choice says of itself. */
export interface PackageChoice {
  readonly samples: number;
  readonly cover: {
    readonly cost: number;
    readonly method: 'exact' | 'heuristic';
    readonly costAtLeast: number;
    readonly answered: readonly number[];
    readonly answeredAtMost: number;
  };
}

/** The packages to buy, and the questions they leave open. */
export function testPackagesViews(
  rows: readonly TestPackageRow[],
  choice: PackageChoice | null,
  prices: PriceList | null,
  budget: number | null,
  words: { readonly nameOf: NameOf; readonly unitOf: NameOf },
): View[] {
  if (choice === null) {
    return [
      {
        caption: 'No packages are chosen: a price list is missing (--prices <file>)',
        columns: [],
        rows: [],
        legend: [],
      },
    ];
  }
  const chosen = rows.filter(({ lab }) => lab !== null);
  const open = rows.filter(({ lab }) => lab === null);
  return [
    {
      caption: caption(chosen.length, open.length, choice, prices, budget),
      columns: [
        { head: 'Lab, package', align: 'left' },
        { head: 'A sample', align: 'right' },
        { head: 'Samples', align: 'right' },
        { head: 'Cost', align: 'right' },
        { head: 'Answers', align: 'left' },
      ],
      rows: chosen.map((row) => [
        labText(row),
        moneyText(row.price, row.currency),
        String(row.samples),
        moneyText(row.cost, row.currency),
        answersText(row, words),
      ]),
      legend: [
        methodText(choice, prices, budget),
        'A package answers a question where a product that is not detected would show it on this feed.',
        'Prices are those of the list: no shipping, no preservatives, no time.',
      ],
    },
    ...(open.length === 0
      ? []
      : [
          {
            caption:
              open.length === 1
                ? 'One question stays without an answer'
                : `${open.length} questions stay without an answer`,
            columns: [
              { head: 'Question', align: 'left' as const },
              { head: 'Because', align: 'left' as const },
              { head: 'Feed that would do', align: 'right' as const },
            ],
            rows: open.map((row) => [
              answersText(row, words),
              unansweredText(row),
              feedText(row, words.unitOf),
            ]),
            legend: ['Feed that would do: at the best limit on offer; see --plan for each.'],
          },
        ]),
  ];
}

function caption(
  packages: number,
  open: number,
  { cover }: PackageChoice,
  prices: PriceList | null,
  budget: number | null,
): string {
  const cost = moneyText(cover.cost, prices?.currency ?? null);
  const answered = `${cover.answered.length} of ${cover.answered.length + open} questions`;
  if (packages === 0) return `No package answers any of ${open} questions`;
  const within = budget === null ? '' : ' within the budget';
  const name = packages === 1 ? 'One package answers' : `${packages} packages answer`;
  return `${name} ${answered}${within}, for ${cost}`;
}

function methodText(
  { cover }: PackageChoice,
  prices: PriceList | null,
  budget: number | null,
): string {
  if (cover.method === 'exact') {
    return budget === null
      ? 'Exact: no cheaper choice answers as many questions.'
      : 'Exact: no choice within the budget answers more.';
  }
  return budget === null
    ? `Heuristic: a cheaper choice may exist; none costs less than ${moneyText(cover.costAtLeast, prices?.currency ?? null)}.`
    : `Heuristic: another choice within the budget may answer more, at most ${cover.answeredAtMost}.`;
}

function answersText(
  { answers }: TestPackageRow,
  { nameOf, unitOf }: { readonly nameOf: NameOf; readonly unitOf: NameOf },
): string {
  return answers
    .map(({ analyte, target }) => `${nameOf(analyte)} ${targetText(target, unitOf(analyte))}`)
    .join('; ');
}

function feedText({ feed_needed, answers }: TestPackageRow, unitOf: NameOf): string {
  const [first] = answers;
  if (feed_needed === null || first === undefined) return '';
  return `${levelText(feed_needed)} ${unitOf(first.analyte)}`;
}
