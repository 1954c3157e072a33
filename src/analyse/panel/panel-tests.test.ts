import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import { binomialUpperTail } from '../../statistics/index.ts';
import { assessorsNeeded } from './assessors-needed.ts';
import { panelTests } from './panel-tests.ts';

function panel(...rows: readonly string[]) {
  const texts = { 'panel.csv': csv('device,against,test,attribute,assessors,correct', ...rows) };
  return withBench(texts, (folder) => panelTests(readBench(folder)));
}

describe('a sensory test', () => {
  it('10 of 15 in a triangle test: p 0.0085 (exact binomial), told apart', () => {
    const [row] = panel('ro,feed,triangle,any,15,10').rows;
    expect(row?.p_value).toBeCloseTo(0.00850427144033, 12);
    expect(row?.verdict).toBe('told-apart');
  });

  it('10 of 15 in a duo-trio test does not tell the waters apart', () => {
    const [row] = panel('ro,feed,duo-trio,any,15,10').rows;
    expect(row).toMatchObject({ verdict: 'not-told-apart', correct_needed: 12 });
    expect(row?.p_value).toBeCloseTo(0.15087890625, 12);
  });

  it('a paired test has a two-sided reading too', () => {
    const [row] = panel('ro,jug,paired,sweetness,20,15').rows;
    expect(row?.p_value_two_sided).toBeCloseTo(2 * (row?.p_value ?? 0), 12);
    const [fewer] = panel('ro,jug,paired,sweetness,20,5').rows;
    expect(fewer?.p_value_two_sided).toBeCloseTo(row?.p_value_two_sided ?? 0, 12);
  });

  it('with more correct answers than answers is a finding', () => {
    const { rows, findings } = panel('ro,feed,triangle,any,10,11');
    expect(rows).toEqual([]);
    expect(findings).toMatchObject([{ code: 'panel-count', place: { line: 2, column: 6 } }]);
  });

  it('of a handful of people can never be significant, and says so', () => {
    const [row] = panel('ro,feed,triangle,any,2,2').rows;
    expect(row).toMatchObject({ correct_needed: null, verdict: 'not-told-apart' });
  });
});

describe('the panel a plan needs', () => {
  const plan = { chance: 1 / 3, share: 0.3, level: 0.05, power: 0.8 };

  it('reaches its power, by the definition of power', () => {
    const trials = assessorsNeeded(plan) ?? 0;
    const correct = 1 / 3 + 0.3 * (2 / 3);
    let needed = 0;
    while (binomialUpperTail({ trials, successes: needed, chance: 1 / 3 }) > 0.05) needed += 1;
    expect(binomialUpperTail({ trials, successes: needed, chance: correct })).toBeGreaterThan(0.8);
  });

  it('grows when fewer people tell the waters apart', () => {
    const few = assessorsNeeded({ ...plan, share: 0.15 }) ?? 0;
    expect(few).toBeGreaterThan(assessorsNeeded(plan) ?? Number.POSITIVE_INFINITY);
  });

  it('does not exist where nobody does', () => {
    expect(assessorsNeeded({ ...plan, share: 0 })).toBeNull();
  });
});
