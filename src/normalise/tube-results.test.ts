import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { computeReductions } from '../analyse/index.ts';
import { computeLogReductions } from '../analyse/sums/index.ts';
import { readBench } from '../commands/read-bench.ts';
import { type Bench, resultAt, resultPlace } from '../model/index.ts';

const SAMPLES = csv('sample,position,device,event', 'F,feed,,barrel', 'P,product,jug,barrel');
const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';

/** A bench with tubes given as `sample,volume,tubes,positive` of E. coli. */
function withTubes<T>(
  tubes: readonly string[],
  use: (bench: Bench) => T,
  lab: readonly string[] = [],
  analyte = 'E. coli',
): T {
  const texts = {
    'samples.csv': SAMPLES,
    'tubes.csv': csv(
      'sample,analyte,volume,tubes,positive',
      ...tubes.map((text) => text.replace(',', `,${analyte},`)),
    ),
    ...(lab.length === 0 ? {} : { 'lab/lab.csv': csv(LAB, ...lab) }),
  };
  return withBench(texts, (folder) => use(readBench(folder)));
}

const errorsOf = (bench: Bench) => bench.findings.filter(({ level }) => level === 'error');

function factsOf(bench: Bench) {
  expect(errorsOf(bench)).toEqual([]);
  return computeReductions(bench, 86_400).facts;
}

const FEED = ['F,0.1 ml,3,3', 'F,0.01 ml,3,2', 'F,0.001 ml,3,0'];
const PRODUCT = ['P,10 ml,3,2', 'P,1 ml,3,1', 'P,0.1 ml,3,0'];
const NOTHING = ['P,10 ml,3,0', 'P,1 ml,3,0'];

describe('the tubes of a sample', () => {
  it('give one result, an interval about the most probable number in the unit of the organism', () => {
    withTubes(PRODUCT, (bench) => {
      expect(bench.results.length).toBe(1);
      const result = resultAt(bench.results, 0);
      // 3 tubes each of 10, 1 and 0.1 mL, 2-1-0: printed as 15 in 100 mL (table of the method).
      expect(result).toMatchObject({ kind: 'mostProbable', rl: null });
      expect(result.kind === 'mostProbable' && Math.round(result.value ?? 0)).toBe(15);
      expect(resultPlace(bench.results, 0)).toMatchObject({ file: 'tubes.csv', line: 2 });
      expect(bench.results.files).toMatchObject([{ path: 'tubes.csv', rowsRead: 3, results: 1 }]);
    });
  });

  it('of which none grew bound the number from above only, and all from below only', () => {
    withTubes(NOTHING, (bench) => {
      const result = resultAt(bench.results, 0);
      // exp(-33 λ) = 0.025 for λ in a millilitre
      expect(result).toMatchObject({ value: null, low: 0 });
      const high = result.kind === 'mostProbable' ? result.high : 0;
      expect(high).toBeCloseTo((-100 * Math.log(0.025)) / 33, 9);
    });
    withTubes(['F,10 ml,3,3'], (bench) => {
      expect(resultAt(bench.results, 0)).toMatchObject({
        value: null,
        high: Number.POSITIVE_INFINITY,
      });
    });
  });

  it('flow into a reduction as an interval, without any assumed uncertainty', () => {
    withTubes([...FEED, ...PRODUCT], (bench) => {
      const [fact] = factsOf(bench);
      expect(fact?.row).toMatchObject({ outcome: 'between', firm: true });
      const { feed, product, reduction } = fact?.row ?? {};
      expect(reduction?.interval_low).toBeCloseTo(1 - (product?.high ?? 0) / (feed?.low ?? 1), 12);
      expect(reduction?.interval_high).toBeCloseTo(1 - (product?.low ?? 0) / (feed?.high ?? 1), 12);
      expect(feed?.method).toContain('exact limits of the tubes: 3 of 3 at 0.1 mL');
    });
  });

  it('flow into the log10 reduction with their own limits', () => {
    withTubes([...FEED, ...PRODUCT], (bench) => {
      const facts = factsOf(bench);
      const [row] = computeLogReductions(bench, facts);
      const { feed, product } = facts[0]?.row ?? {};
      expect(row?.counted?.low).toBeCloseTo(
        Math.log10((feed?.low ?? 1) / (product?.high ?? 1)),
        12,
      );
      expect(row?.counted?.product_method).toContain('2 of 3 at 10 mL');
    });
  });

  it('of which none grew in the product are a reduction of at least so much', () => {
    withTubes([...FEED, ...NOTHING], (bench) => {
      expect(factsOf(bench)).toMatchObject([
        { row: { outcome: 'at-least', reduction: { high: null } } },
      ]);
    });
  });

  it('show a rise only where both numbers lie far enough apart for their tubes', () => {
    const many = ['P,0.1 ml,5,5', 'P,0.01 ml,5,4', 'P,0.001 ml,5,1'];
    const few = ['F,10 ml,5,2', 'F,1 ml,5,0'];
    withTubes([...few, ...many], (bench) => {
      const [fact] = factsOf(bench);
      expect(fact?.row.outcome).toBe('rise');
      expect(fact?.row.rise_p ?? 1).toBeGreaterThan(0);
      expect(fact?.row.rise_p ?? 1).toBeLessThan(1e-6);
    });
    withTubes(['F,10 ml,3,1', 'P,10 ml,3,2'], (bench) => {
      expect(factsOf(bench)[0]?.row.outcome).toBe('untestable');
    });
  });

  it('take the place of the figure of the lab, and say where the two disagree', () => {
    const lab = ['F,E. coli,4300,MPN/100mL,,1', 'P,E. coli,15,MPN/100mL,,1'];
    const agreed = withTubes(
      PRODUCT,
      (bench) => {
        const [fact] = factsOf(bench);
        expect(fact?.row.product.method).toContain('tubes');
        expect(resultPlace(bench.results, fact?.product?.results[0] ?? -1).file).toBe(
          'lab/lab.csv',
        );
        return bench.findings.map(({ code }) => code);
      },
      lab,
    );
    expect(agreed).not.toContain('tubes-disagree');
    withTubes(
      PRODUCT,
      (bench) => {
        const told = bench.findings.filter(({ code }) => code === 'tubes-disagree');
        expect(told).toMatchObject([{ level: 'warning', place: { file: 'tubes.csv', line: 2 } }]);
      },
      [lab[0] ?? '', 'P,E. coli,1500,MPN/100mL,,1'],
    );
  });

  it.each([
    ['more positive tubes than tubes', ['P,10 ml,3,4'], 'E. coli', 'tubes-impossible'],
    ['an unknown sample', ['X,10 ml,3,1'], 'E. coli', 'sample-unknown'],
    ['an unknown organism', ['P,10 ml,3,1'], 'E. collie', 'analyte-unknown'],
    ['what is counted on plates', ['P,10 ml,3,1'], 'legionella', 'dimension-wrong'],
    ['a volume without a unit', ['P,10,3,1'], 'E. coli', 'unit-missing'],
    ['a volume of zero', ['P,0 ml,3,1'], 'E. coli', 'quantity-zero'],
    ['no tubes', ['P,10 ml,0,0'], 'E. coli', 'number-outside'],
    ['half a tube', ['P,10 ml,3,0.5'], 'E. coli', 'number-outside'],
    ['one volume twice', ['P,10 ml,3,1', 'P,10 ml,3,2'], 'E. coli', 'key-duplicate'],
  ])('with %s are an error at the cell', (_what, tubes, analyte, code) => {
    withTubes(
      tubes,
      (bench) => {
        expect(errorsOf(bench)).toMatchObject([{ code, place: { file: 'tubes.csv' } }]);
      },
      [],
      analyte,
    );
  });
});
