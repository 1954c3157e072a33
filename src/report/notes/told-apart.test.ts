import { describe, expect, it } from 'vitest';
import type { AnalyteComparison } from '../../compare/index.ts';
import type { AnalyteFacts } from './analyte-facts.ts';
import { shownComparisons } from './told-apart.ts';

type Verdict = AnalyteComparison['pairs'][number]['verdict'];

const STATES = ['a', 'b', 'c', 'd'];
const analyte = { key: 'lead' };

/** Devices of one analyte, of which some pairs are told apart; the rest is not. */
function comparison(
  verdicts: readonly (readonly [string, string, Verdict, boolean])[],
  groups: readonly (readonly number[])[],
): AnalyteComparison {
  const devices = STATES.map((device) => ({ device, variant: 'standard', analyte }));
  const named = (name: string) => devices.find(({ device }) => device === name);
  const pairs = verdicts.map(([a, b, verdict, firm]) => ({
    a: named(a),
    b: named(b),
    verdict,
    firm,
  }));
  return { analyte, devices, pairs, groups } as unknown as AnalyteComparison;
}

function facts(shown: readonly string[]): AnalyteFacts {
  const devices = shown.map((key) => ({
    subject: { key, variant: 'standard', name: key },
    summary: null,
  }));
  return { analyte, feeds: [], devices } as unknown as AnalyteFacts;
}

const ALL = comparison(
  [
    ['a', 'b', 'not-told-apart', true],
    ['a', 'c', 'differ', true],
    ['a', 'd', 'differ', false],
    ['b', 'c', 'equivalent', true],
    ['b', 'd', 'differ', true],
    ['c', 'd', 'not-told-apart', true],
  ],
  [
    [0, 1],
    [1, 2],
    [2, 3],
  ],
);
const names = (groups: readonly (readonly { readonly key: string }[])[] | undefined) =>
  groups?.map((group) => group.map(({ key }) => key).join(''));

describe('the comparison of the devices shown', () => {
  it('counts pairs by verdict, and what rests on assumed uncertainty as apparent', () => {
    const [found] = shownComparisons([ALL], [facts(STATES)]);
    expect(found).toMatchObject({ pairs: 6, apart: 3, apparent: 1, equivalent: 1 });
    expect(names(found?.groups)).toEqual(['ab', 'bc', 'cd']);
  });

  it('under a filter keeps every verdict, and drops a group inside another', () => {
    const [found] = shownComparisons([ALL], [facts(['a', 'b', 'd'])]);
    expect(found).toMatchObject({ pairs: 3, apart: 2, apparent: 1, equivalent: 0 });
    expect(names(found?.groups)).toEqual(['ab', 'd']);
  });

  it('says nothing of a single device, nor of an analyte that was not compared', () => {
    expect(shownComparisons([ALL], [facts(['a'])])).toEqual([]);
    expect(shownComparisons([], [facts(STATES)])).toEqual([]);
  });
});
