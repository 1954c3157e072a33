import type {
  EfficiencyAgainstUse,
  FeedAgainstChallenge,
  JudgedClaim,
  UncertifiedInFeed,
} from '../../analyse/claims/index.ts';
import { VERDICTS } from '../../model/index.ts';
import { atMostDigits } from '../format-number.ts';
import type { View } from '../view.ts';
import { challengeReason, claimedText, claimReason } from './claim-words.ts';

/** Challenges of the standard a claim names, against the feed. */
export interface ClaimChallenges {
  readonly judged: JudgedClaim;
  readonly challenges: readonly FeedAgainstChallenge[];
  readonly efficiency: readonly EfficiencyAgainstUse[];
}

const LEGEND = [
  'supported: the lower bound reaches the claim inside its conditions, for these samples; contradicted: the upper bound misses it, firmly, in two events or in a confirmed retest; open: the results do not decide; untestable: nothing could show it; untested: no result.',
  'Apparent: on assumed uncertainty, in one event only, or not held at the false-discovery rate. Retest before publishing.',
  'A before/after test of these samples on this feed and this specimen; it is no certification and says nothing of other specimens. No medical advice.',
];

/** One table of verdicts, one of what standards challenge, one of what no certificate covers. */
export function claimsViews(
  claims: readonly ClaimChallenges[],
  uncertified: readonly UncertifiedInFeed[],
): View[] {
  const listed = claims.filter(({ challenges }) => challenges.length > 0);
  return [
    verdictsView(claims.map(({ judged }) => judged)),
    ...(listed.length === 0 ? [] : [challengesView(listed)]),
    ...efficiencyViews(claims),
    ...(uncertified.length === 0 ? [] : [uncertifiedView(uncertified)]),
  ];
}

function verdictsView(claims: readonly JudgedClaim[]): View {
  const counts = VERDICTS.flatMap((verdict) => {
    const count = claims.filter((claim) => claim.verdict === verdict).length;
    return count === 0 ? [] : [`${count} ${verdict}`];
  });
  return {
    caption:
      claims.length === 0
        ? 'No claims'
        : `${claims.length} ${claims.length === 1 ? 'claim' : 'claims'}: ${counts.join(', ')}`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Claim, word for word', align: 'left' },
      { head: 'Said to be', align: 'left' },
      { head: 'Asks for', align: 'left' },
      { head: 'Verdict', align: 'left' },
      { head: 'Because', align: 'left' },
    ],
    rows: claims.map((judged) => {
      const { device, claim, evidence, standard } = judged.claim.row.values;
      return [
        device,
        claim,
        standard === null ? evidence : `${evidence}, ${standard}`,
        claimedText(judged) ?? '',
        verdictText(judged),
        claimReason(judged),
      ];
    }),
    legend: LEGEND,
  };
}

function verdictText({ verdict, apparent, firm }: JudgedClaim): string {
  if (apparent) return `${verdict}, apparently missed`;
  return verdict === 'supported' && !firm ? 'supported, apparently' : verdict;
}

const WORDS: Readonly<Record<FeedAgainstChallenge['bench'], string>> = {
  challenged: 'challenged',
  'below-challenge': 'below the challenge',
  'could-not-test': 'could not test it',
  'cannot-say': 'cannot say',
  'not-tested': 'not tested',
};

function challengesView(claims: readonly ClaimChallenges[]): View {
  const all = claims.flatMap(({ challenges }) => challenges);
  const could = all.filter(({ bench }) => bench === 'challenged').length;
  return {
    caption: `Standards named in claims: ${could} of ${all.length} challenges were matched by a feed of this bench`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Standard', align: 'left' },
      { head: 'Contaminant', align: 'left' },
      { head: 'Challenge', align: 'left' },
      { head: 'Product at most', align: 'left' },
      { head: 'This bench', align: 'left' },
      { head: 'Because', align: 'left' },
      { head: 'Figures', align: 'left' },
    ],
    rows: claims.flatMap(({ judged, challenges }) =>
      challenges.map((item) => {
        const { challenge, bench } = item;
        return [
          judged.claim.row.values.device,
          challenge.standard,
          contaminantName(judged, challenge.contaminant),
          challenge.challengeText ?? 'not stated',
          challenge.productText ?? 'not stated',
          WORDS[bench],
          challengeReason(item),
          `${challenge.verified.startsWith('seen') ? 'seen in part' : 'from memory'}, confidence ${challenge.confidence}`,
        ];
      }),
    ),
    legend: [
      'The standards were not read in full and their tolerances are not listed: for plausibility only, never proof that a device is certified. The JSON format names source and verification of each figure.',
    ],
  };
}

/** The standard may name a sum that the claim's analyte is part of; then the key stands for itself. */
function contaminantName({ claim }: ClaimChallenges['judged'], key: string): string {
  return claim.analyte?.key === key ? claim.analyte.name : key;
}

/** What certificates ask of water use, beside the scenarios of the bench. */
function efficiencyViews(claims: readonly ClaimChallenges[]): View[] {
  const all = claims.flatMap(({ judged, efficiency }) =>
    efficiency.map((item) => ({ device: judged.claim.row.values.device, ...item })),
  );
  if (all.length === 0) return [];
  const reached = all.filter(({ bench }) => bench === 'reached').length;
  return [
    {
      caption: `Water use asked by the standards named in claims: reached in ${reached} of ${all.length} comparisons with a scenario of this bench`,
      columns: [
        { head: 'Device', align: 'left' },
        { head: 'Standard', align: 'left' },
        { head: 'Asks for', align: 'left' },
        { head: 'Scenario', align: 'left' },
        { head: 'This bench', align: 'right' },
        { head: 'Reached', align: 'left' },
        { head: 'Figure', align: 'left' },
      ],
      rows: all.map(({ device, threshold, scenario, measured, bench }) => [
        device,
        threshold.standard,
        `${threshold.metric} ${threshold.comparator} ${threshold.value ?? '?'} ${threshold.unit}`,
        scenario ?? 'none',
        measured === null ? 'not tested' : atMostDigits(measured, 3),
        { reached: 'yes', 'not-reached': 'no', 'not-tested': 'not tested' }[bench],
        threshold.verified.startsWith('seen') ? 'seen in part' : 'from memory',
      ]),
      legend: [
        'Reject:product is drain per clean volume, % the product the user gets of the inlet. By estimates.',
        'A scenario of a bench is no rating: ratings are measured under the conditions of their standards, so no claim is contradicted by it.',
      ],
    },
  ];
}

function uncertifiedView(uncertified: readonly UncertifiedInFeed[]): View {
  return {
    caption: 'Contaminants found in the natural feed with no certified claim behind them',
    columns: [
      { head: 'Devices', align: 'left' },
      { head: 'A standard of the tables challenges', align: 'left' },
      { head: 'No standard of the tables challenges', align: 'left' },
    ],
    rows: uncertified.map(({ devices, analytes }) => [
      devices.join(', '),
      analytes
        .filter(({ standards }) => standards.length > 0)
        .map(({ analyte, standards }) => `${analyte.name} (${standards.join(', ')})`)
        .join('; ') || 'none',
      analytes
        .filter(({ standards }) => standards.length === 0)
        .map(({ analyte }) => analyte.name)
        .join('; ') || 'none',
    ]),
    legend: [
      'From claims.csv alone: what is not listed there may still be certified; ask the certifier. Found in the feed does not mean above a reference level.',
    ],
  };
}
