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

  it('has limits of the share that hold together at the confidence, wider than each alone', () => {
    const [row] = panel('ro,feed,triangle,any,15,10').rows;
    const { low, high } = row?.distinguishers_two_sided ?? { low: 0, high: 1 };
    // By definition: at either limit so extreme a count has a chance of 2.5 %.
    const right = (share: number) => 1 / 3 + share * (2 / 3);
    expect(binomialUpperTail({ trials: 15, successes: 10, chance: right(low) })).toBeCloseTo(
      0.025,
      9,
    );
    expect(1 - binomialUpperTail({ trials: 15, successes: 11, chance: right(high) })).toBeCloseTo(
      0.025,
      9,
    );
    expect(low).toBeLessThan(row?.distinguishers.low ?? 0);
    expect(high).toBeGreaterThan(row?.distinguishers.high ?? 1);
  });

  it('needs more right answers and a larger panel two-sided than one-sided', () => {
    const [row] = panel('ro,jug,paired,sweetness,20,15').rows;
    // Printed in the two-sided table of paired tests: 15 of 20 at 5 %, 15 one-sided.
    expect(row).toMatchObject({ correct_needed: 15, correct_needed_two_sided: 15 });
    expect(row?.assessors_needed_two_sided).toBeGreaterThan(row?.assessors_needed ?? Infinity);
    const [triangle] = panel('ro,feed,triangle,any,15,10').rows;
    expect(triangle).toMatchObject({
      correct_needed_two_sided: null,
      assessors_needed_two_sided: null,
    });
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

  it.each([0.8, 0.9, 0.95])('is the smallest that holds a power of %d for ten more', (power) => {
    const powerAt = (trials: number): number => {
      let needed = 0;
      const chance = 1 / 3;
      while (needed <= trials && binomialUpperTail({ trials, successes: needed, chance }) > 0.05) {
        needed += 1;
      }
      if (needed > trials) return 0;
      return binomialUpperTail({ trials, successes: needed, chance: 1 / 3 + 0.3 * (2 / 3) });
    };
    const wanted = assessorsNeeded({ ...plan, power }) ?? 0;
    const holds = (from: number) =>
      Array.from({ length: 11 }, (_, more) => powerAt(from + more)).every((each) => each >= power);
    let smallest = 1;
    while (!holds(smallest)) smallest += 1;
    expect(wanted).toBe(smallest);
  });

  it('grows when fewer people tell the waters apart', () => {
    const few = assessorsNeeded({ ...plan, share: 0.15 }) ?? 0;
    expect(few).toBeGreaterThan(assessorsNeeded(plan) ?? Number.POSITIVE_INFINITY);
  });

  it('does not exist where nobody does', () => {
    expect(assessorsNeeded({ ...plan, share: 0 })).toBeNull();
  });
});
