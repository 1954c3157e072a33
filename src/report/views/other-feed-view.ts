import type { OtherFeedFact } from '../../analyse/other-feed/index.ts';
import {
  type OtherFeedAssumption,
  type OtherFeedRefusal,
  type OtherFeedRow,
  REFUSALS,
  STANDARD,
} from '../../model/index.ts';
import { atMostDigits } from '../format-number.ts';
import { volumeText } from '../format-quantity.ts';
import type { View } from '../view.ts';
import {
  boundsText,
  otherFeedText,
  passageText,
  REFUSAL_WORDS,
  rangeText,
} from './other-feed-words.ts';
import { levelsText } from './reduction-words.ts';

/** The other feed, for the caption and the legend. */
export interface StatedFeed {
  readonly sample: string;
  readonly file: string;
  readonly ph: number | null;
  readonly solids: readonly {
    readonly key: string;
    readonly value: number;
    readonly unit: string;
  }[];
  /** Volume the devices have treated; null where none was asked for. */
  readonly throughputL: number | null;
}

const READING = [
  'Product: this feed with its uncertainty times what passes, over all events that tested it; ends round outward. Where this feed was not detected, its limit times the most that passes.',
  'Where neither lab nor duplicates state an uncertainty it is assumed; "firm" of the JSON and CSV formats says where.',
  'It scales what was measured on these specimens with other feeds: no measurement of this feed and no certification. Test the product on this feed before relying on it.',
  'Levels of supplies, as published. No medical advice: water that is unsafe for its organisms needs proper disinfection, whatever a table says.',
];

/** What is bounded, device by device; then what is refused, by reason. */
export function otherFeedViews(facts: readonly OtherFeedFact[], feed: StatedFeed): View[] {
  const groups = new Map<string, OtherFeedFact[]>();
  for (const fact of facts) {
    const name = stateName(fact.row);
    const group = groups.get(name) ?? [];
    groups.set(name, group);
    group.push(fact);
  }
  const bounded = [...groups].flatMap(([name, group]) => {
    const own = group.filter(({ row }) => row.outcome === 'bounded');
    return own.length === 0 ? [] : [boundedView(name, own, group.length)];
  });
  const refused = refusedView(groups);
  return [summaryView(groups, feed), ...bounded, ...(refused.rows.length === 0 ? [] : [refused])];
}

function stateName({ device, variant }: OtherFeedRow): string {
  return variant === STANDARD ? device : `${device} (${variant})`;
}

type Groups = ReadonlyMap<string, readonly OtherFeedFact[]>;

function summaryView(groups: Groups, feed: StatedFeed): View {
  const all = [...groups.values()].flat();
  const count = all.filter(({ row }) => row.outcome === 'bounded').length;
  return {
    caption: `Feed "${feed.sample}" of ${feed.file}: the product is bounded in ${count} of ${all.length} pairs of device and analyte${count === all.length ? '' : '; the others are refused'}`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Bounded', align: 'right' },
      { head: 'Refused', align: 'right' },
      { head: 'Why refused', align: 'left' },
    ],
    rows: [...groups].map(([name, group]) => {
      const refused = group.filter(({ row }) => row.outcome === 'refused');
      return [
        name,
        String(group.length - refused.length),
        String(refused.length),
        REFUSALS.flatMap((reason) => {
          const times = refused.filter(({ row }) => row.reason === reason).length;
          return times === 0 ? [] : [`${times} ${REFUSAL_WORDS[reason]}`];
        }).join('; '),
      ];
    }),
    legend: [conditionsText(feed), ...READING],
  };
}

function conditionsText({ ph, solids, throughputL }: StatedFeed): string {
  const stated = [
    ph === null ? 'no pH' : `pH ${atMostDigits(ph, 4)}`,
    ...(solids.length === 0
      ? ['no dissolved solids']
      : solids.map(
          ({ key, value, unit }) => `${key.replaceAll('-', ' ')} ${atMostDigits(value, 4)} ${unit}`,
        )),
  ].join(', ');
  const state =
    throughputL === null
      ? 'No volume treated is asked for: bounds hold for the volumes that were tested.'
      : `Asked for are devices that have treated ${volumeText(throughputL)}.`;
  return `The feed states ${stated}. ${state}`;
}

function boundedView(name: string, facts: readonly OtherFeedFact[], of: number): View {
  const hasLevels = facts.some(({ row }) => row.reference_levels.length > 0);
  return {
    caption: `${name}: product with this feed, bounded for ${facts.length} of ${of} analytes`,
    columns: [
      { head: 'Analyte', align: 'left' },
      { head: 'Unit', align: 'left' },
      { head: 'This feed', align: 'right' },
      { head: 'Tested feeds', align: 'right' },
      { head: 'Tested after, L', align: 'right' },
      { head: 'Passes', align: 'right' },
      { head: 'Product', align: 'right' },
      ...(hasLevels ? [{ head: 'Product against reference levels', align: 'left' } as const] : []),
    ],
    rows: facts.map(({ row, analyte }) => [
      `${analyte.name}${marksOf(row)}`,
      row.unit,
      otherFeedText(row.feed),
      rangeText(row.tested.feed),
      rangeText(row.tested.throughput_L),
      passageText(row.passage),
      boundsText(row.product.low, row.product.high),
      ...(hasLevels ? [levelsText(row)] : []),
    ]),
    legend: [
      'Scaled from tests with other feeds; no measurement of this one, no certification.',
      ...MARKS.flatMap(([name, mark, words]) =>
        facts.some(({ row }) => row.assumptions.includes(name)) ? `${mark}: ${words}.` : [],
      ),
    ],
  };
}

/** Letters for what a bound assumes beyond the results; explained below the table. */
const MARKS: readonly (readonly [OtherFeedAssumption, string, string])[] = [
  [
    'monotone',
    'm',
    'this feed may lie below the tested ones; it is taken that less in the feed gives no more in the product',
  ],
  [
    'same-mix',
    'x',
    'many substances in one figure; the mix of this feed is taken to be that of the tested ones',
  ],
  ['spiked-feed', 's', 'a spiked feed is among the tested ones and stands for a natural one'],
];

function marksOf({ assumptions }: OtherFeedRow): string {
  const marks = MARKS.flatMap(([name, mark]) => (assumptions.includes(name) ? mark : []));
  return marks.map((mark) => ` ${mark}`).join('');
}

function refusedView(groups: Groups): View {
  const rows = [...groups].flatMap(([name, group]) =>
    REFUSALS.flatMap((reason) => {
      const own = group.filter(({ row }) => row.reason === reason);
      return own.length === 0
        ? []
        : [[name, REFUSAL_WORDS[reason], own.map((fact) => refusedText(fact, reason)).join('; ')]];
    }),
  );
  return {
    caption: 'Refused: why, and what was tested against what this feed holds',
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Why', align: 'left' },
      { head: 'Analytes', align: 'left' },
    ],
    rows,
    legend: [
      'The first reason that holds; the JSON and CSV formats name the others too. Tested ranges reach as far as the uncertainty of their ends, and nothing is taken beyond them.',
    ],
  };
}

/** `Lead (12 ug/L; tested 1.46 to 2.9)`: the ranges that the reason is about. */
function refusedText({ row, analyte }: OtherFeedFact, reason: OtherFeedRefusal): string {
  const { tested, asked } = row;
  switch (reason) {
    case 'feed-above-tested':
    case 'feed-below-tested':
      return `${analyte.name} (${otherFeedText(row.feed)} ${row.unit}; tested ${rangeText(tested.feed)})`;
    case 'ph-outside-tested':
      return `${analyte.name} (pH ${figure(asked.ph)}; tested ${rangeText(tested.ph)})`;
    case 'tds-outside-tested':
      return `${analyte.name} (${figure(asked.tds)} ${tested.tds.unit ?? ''}; tested ${rangeText(tested.tds)})`;
    case 'throughput-outside-tested':
      return `${analyte.name} (${figure(asked.throughput_L)} L; tested ${rangeText(tested.throughput_L)})`;
    default:
      return analyte.name;
  }
}

function figure(value: number | null): string {
  return value === null ? 'not stated' : atMostDigits(value, 4);
}
