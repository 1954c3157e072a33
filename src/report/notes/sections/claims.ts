import type { ClaimCertification, ClaimRow } from '../../../model/index.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  counted,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames } from '../subjects.ts';
import { left, tablePiece } from '../table.ts';
import { uncertifiedPart } from './uncertified.ts';

/** Claims in the words of the maker, each with what these measurements say of it. */
export function claimsSection(input: NotesInput): Piece {
  const rows = claimRows(input);
  if (rows.length === 0) return NOTHING;
  return blocks([
    markup('## Claims and certificates'),
    paragraph([verdictCounts(rows), missed(input, rows)]),
    verdictTable(input, rows),
    certificates(input, rows),
    uncertifiedPart(input),
  ]);
}

export function claimRows(input: NotesInput): readonly ClaimRow[] {
  return input.outcomes.claims.rows as readonly ClaimRow[];
}

const VERDICT_WORDS: readonly (readonly [ClaimRow['verdict'], string])[] = [
  ['contradicted', 'contradicted'],
  ['supported', 'supported'],
  ['open', 'open'],
  ['untestable', 'untestable'],
  ['untested', 'not tested'],
];

/** `By these measurements, of 7 claims 1 is contradicted, 2 are supported and 4 are open.` */
export function verdictCounts(rows: readonly ClaimRow[]): Piece {
  const parts = VERDICT_WORDS.flatMap(([verdict, words]) => {
    const n = rows.filter((row) => row.verdict === verdict).length;
    return n === 0
      ? []
      : say`${count(`claims.${verdict}`, n)} ${markup(n === 1 ? 'is' : 'are')} ${markup(words)}`;
  });
  return say`By these measurements, of ${counted('claims', rows.length, 'claim')} ${listed(parts)}.`;
}

/** Claims that are missed, firmly apart from apparently. */
export function missed(input: NotesInput, rows: readonly ClaimRow[]): Piece {
  const names = deviceNames(input.bench);
  const told = (own: readonly ClaimRow[]): Piece =>
    joined(
      own.map((row) => say`${names.get(row.device) ?? row.device}, “${row.claim}”`),
      '; ',
    );
  const firm = rows.filter(({ verdict }) => verdict === 'contradicted');
  const apparent = rows.filter((row) => row.apparent);
  return paragraph([
    firm.length === 0
      ? markup('No claim is contradicted firmly.')
      : say`Contradicted firmly: ${told(firm)}.`,
    apparent.length === 0
      ? NOTHING
      : say`Apparently missed, to be retested before it is held against a device: ${told(apparent)}.`,
  ]);
}

function verdictTable(input: NotesInput, rows: readonly ClaimRow[]): Piece {
  const names = deviceNames(input.bench);
  return tablePiece({
    caption: markup('What was claimed, and what these measurements say of it'),
    columns: ['Device', 'Claim, word for word', 'Said to be', 'Verdict', 'Because'].map(left),
    rows: rows.map((row) => [
      quoted(names.get(row.device) ?? row.device),
      say`“${row.claim}”`,
      row.standard === null ? markup(row.evidence) : say`${markup(row.evidence)}, ${row.standard}`,
      verdictCell(row),
      quoted(row.reason),
    ]),
    legend: [
      markup(
        'Supported: the lower bound reaches the claim inside its conditions, for these samples. Contradicted: the upper bound misses it, firmly, on two occasions or in a confirmed retest. Open: the results do not decide. Untestable: nothing could show it.',
      ),
      markup(
        'Apparently: on assumed uncertainty, on one occasion only, or not held over all claims of the bench. “Said to be” is what the maker or seller calls it.',
      ),
      markup(
        'A test before and after these specimens on this feed is no certification, and says nothing of other specimens.',
      ),
    ],
  });
}

/** A verdict as printed. */
export function verdictCell({ verdict, apparent, firm }: ClaimRow): Piece {
  if (apparent) return markup(`${verdict}, apparently missed`);
  if (verdict === 'contradicted') return markup('**contradicted**');
  return markup(verdict === 'supported' && !firm ? 'apparently supported' : verdict);
}

const BENCH_WORDS: Readonly<Record<ClaimCertification['bench'], string>> = {
  challenged: 'challenged it',
  'below-challenge': 'lay below the challenge',
  'could-not-test': 'could not have tested it',
  'cannot-say': 'cannot say',
  'not-tested': 'was not tested for it',
};

/** What the standards named in claims challenge with, and whether this feed held as much. */
function certificates(input: NotesInput, rows: readonly ClaimRow[]): Piece {
  const names = deviceNames(input.bench);
  const listedRows = rows.flatMap((row) => row.certification.map((item) => ({ row, item })));
  const untestable = rows.filter(
    ({ evidence, certification }) =>
      evidence === 'certified' &&
      certification.length > 0 &&
      certification.every(({ bench }) => bench === 'could-not-test' || bench === 'not-tested'),
  );
  const certified = rows.filter(({ evidence }) => evidence === 'certified').length;
  const opening = paragraph([
    certified === 0
      ? markup('No claim is said to be certified.')
      : say`Said to be certified: ${counted('certified', certified, 'claim')}.`,
    untestable.length === 0
      ? NOTHING
      : markup(
          'This bench could not have tested these certified claims, so it says nothing of them:',
        ),
  ]);
  return blocks([
    markup('### Certificates'),
    opening,
    bullets(
      untestable.map((row) => {
        const reasons = [...new Set(row.certification.map(({ why }) => why))];
        const why = reasons.length === 0 ? NOTHING : say`: ${joined(reasons.map(quoted), '; ')}`;
        return say`${names.get(row.device) ?? row.device}, “${row.claim}”${why}.`;
      }),
    ),
    listedRows.length === 0
      ? NOTHING
      : tablePiece({
          caption: say`Challenges of the standards that claims name: the feed of this bench held about as much in ${count(
            'challenged',
            listedRows.filter(({ item }) => item.bench === 'challenged').length,
          )} of ${count('challenges', listedRows.length)}`,
          columns: [
            'Device',
            'Standard',
            'Contaminant',
            'Challenge',
            'Product at most',
            'This feed',
            'Because',
          ].map(left),
          rows: listedRows.map(({ row, item }) => [
            quoted(names.get(row.device) ?? row.device),
            quoted(item.standard),
            quoted(input.bench.analytes.byKey(item.contaminant)?.name ?? item.contaminant),
            quoted(item.challenge ?? 'not stated'),
            quoted(item.max_product ?? 'not stated'),
            markup(BENCH_WORDS[item.bench]),
            quoted(item.why),
          ]),
          legend: [
            markup(
              'The standards were not read in full, and some figures are from memory: for plausibility only, never proof that a device is certified. Source and verification of each figure: [data/claims.json](data/claims.json).',
            ),
          ],
        }),
  ]);
}
