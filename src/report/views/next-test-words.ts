import type { NextTestRow, TestPackageRow, TestPlanRow } from '../../model/index.ts';
import { atMostDigits, plainNumber } from '../format-number.ts';

/** Names of analytes by key; a key that is not known stands for itself. */
export type NameOf = (key: string) => string;

type Verdict = NextTestRow['verdicts'][number];

/** `38 USD`; `no price` without one. */
export function moneyText(amount: number | null, currency: string | null): string {
  return amount === null ? 'no price' : `${atMostDigits(amount, 6)} ${currency ?? ''}`.trim();
}

/** `lab-one, metals`; the bench's own limits without a price list. */
export function labText(row: { readonly lab: string | null; readonly package: string | null }) {
  return row.lab === null ? 'as this bench was tested' : `${row.lab}, ${row.package ?? ''}`;
}

/** `at least 99 %`, `at most 5 ug/L`. */
export function targetText(target: TestPlanRow['target'], unit: string): string {
  switch (target.kind) {
    case 'reduction':
      return `at least ${percentText(target.value ?? 0)}`;
    case 'level':
      return `at most ${levelText(target.value ?? 0)} ${unit}`;
    case 'any':
      return 'any reduction';
    default:
      return target.kind satisfies never;
  }
}

/** A share in percent without rounding it up to complete removal. */
export function percentText(share: number): string {
  return `${plainNumber(Number((share * 100).toPrecision(12)))} %`;
}

/** Four digits at most: limits and feeds carry two or three. */
export function levelText(value: number): string {
  return atMostDigits(value, 4);
}

/** What is taken where: `new event, natural feed`. */
export function actionText(row: NextTestRow, nameOf: NameOf): string {
  const taken = row.devices.map((device, at) => {
    const count = row.product_samples[at] ?? 1;
    return count === 1 ? device : `${count} of ${device}`;
  });
  const list = [...(row.samples > taken.length ? ['feed'] : []), ...taken].join(', ');
  switch (row.action) {
    case 'retest':
      return `new event, natural feed: ${list}`;
    case 'retest-spiked':
      return `new event, feed spiked as before: ${list}`;
    case 'spike': {
      const levels = row.spike_to.map(
        ({ analyte, feed, unit }) => `${nameOf(analyte)} to ${levelText(feed)} ${unit}`,
      );
      return `new event, feed spiked (${levels.join('; ')}): ${list}`;
    }
    case 'none':
      return 'nothing on offer';
    default:
      return row.action satisfies never;
  }
}

/** What is open, with its analyte where the words do not name it. */
export function openText({ kind, about, analyte }: Verdict, nameOf: NameOf): string {
  const name = analyte === null ? '' : nameOf(analyte);
  switch (kind) {
    case 'claim':
      return `claim: ${about}`;
    case 'wanted':
      return `${name} reduced by at least ${percentText(Number(about))}`;
    case 'level':
      return `${name} against ${about}`;
    case 'rise':
    case 'untestable':
      return about;
    default:
      return kind satisfies never;
  }
}

const BECAUSE: Readonly<Record<string, string>> = {
  'no-result': 'no valid product result',
  'missed-once': 'missed in one event only, without a confirmed retest',
  'missed-on-assumed-uncertainty': 'the uncertainty of the misses is assumed',
  'missed-by-chance': 'among the claims of this bench the miss may be chance',
  'outside-conditions': 'no event lies inside the conditions of the claim',
  'conditions-not-known': 'a condition of the claim was not logged',
  'not-confirmed': 'no event has two samples that each miss it',
  'estimate-short': 'the figure falls short within its uncertainty',
  'feed-too-low': 'the feed held too little',
  'not-decided': 'the interval holds the claimed figure',
  'assumed-uncertainty': 'it rests on assumed uncertainty',
  'wanted-not-decided': 'the interval holds the wanted figure',
  'limit-above-level': 'the limit of the lab lies above the level',
};

/** Why a verdict is open. */
export function becauseText({ because }: Verdict): string {
  return because === null ? '' : (BECAUSE[because] ?? because);
}

const REMEDIES: Readonly<Record<string, string>> = {
  'missed-once': 'a second event that is firm: a lab that states its uncertainty, or duplicates',
  'missed-by-chance': 'more events',
  'not-confirmed': 'two product samples at one event',
  'no-result': 'test it within the conditions of the claim',
  'missed-on-assumed-uncertainty':
    'take duplicates (six pairs of the analyte or its group), or a lab that states its uncertainty',
  'assumed-uncertainty':
    'take duplicates (six pairs of the analyte or its group), or a lab that states its uncertainty',
  'outside-conditions': 'test inside the capacity, the challenge and the pressure of the claim',
  'conditions-not-known': 'log throughput and pressure; no analysis replaces them',
  'estimate-short': 'the same figures again would not decide; a lower uncertainty might',
  'not-decided': 'the same figures again would not decide; a lower uncertainty might',
  'wanted-not-decided': 'a lower limit, a higher feed, or a lower uncertainty',
  'limit-above-level': 'find a lab with a limit at or below the level',
  'feed-too-low': 'find a lab with a lower limit, or spike the feed within the conditions',
};

/** What else could settle a verdict that nothing on offer settles. */
export function remedyText({ because }: Verdict): string {
  return REMEDIES[because ?? ''] ?? 'nothing that repeats these figures';
}

const ASSUMES: Readonly<Record<string, string>> = {
  'figures-repeat': 'the figures of feed and product repeat',
  'not-detected-again': 'what was not detected is not detected again',
  'not-detected': 'what is tested for the first time, or on a new spike, is not detected',
  'new-device': 'a device without samples has treated nothing yet',
  'share-stays': 'the product of a spiked feed holds the same share of it',
};

/** What the count takes for granted, one sentence for all rows. */
export function assumptionsText(rows: readonly NextTestRow[]): string[] {
  const used = new Set(rows.flatMap(({ assumes }) => assumes));
  const words = Object.entries(ASSUMES).flatMap(([key, text]) => (used.has(key) ? text : []));
  return words.length === 0 ? [] : [`Counted if ${words.join('; ')}. Nothing says that they will.`];
}

const WHY_NONE: Readonly<Record<string, string>> = {
  'both-below-limit': 'below limit',
  'stated-uncertainty': 'stated',
  'too-many': 'over 200',
  'no-target': '',
  'no-feed': 'no feed',
};

/** Replicates in a cell: the number, or why there is none. */
export function replicatesText(row: TestPlanRow, which: 'pair' | 'all_pairs'): string {
  const count = row.replicates[which];
  if (count !== null) return String(count);
  const why = row.replicates.why_none;
  return why === null ? 'over 200' : (WHY_NONE[why] ?? why);
}

const UNANSWERED: Readonly<Record<NonNullable<TestPackageRow['unanswered']>, string>> = {
  'not-offered': 'no package measures it',
  'limit-too-high': 'no limit on offer is low enough on this feed',
  'over-budget': 'not within the budget',
  'no-feed': 'the feed was not tested for it',
};

/** Why no chosen package answers a question. */
export function unansweredText({ unanswered }: TestPackageRow): string {
  return unanswered === null ? '' : UNANSWERED[unanswered];
}
