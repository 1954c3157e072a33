import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import type {
  Bench,
  ClaimRow,
  NextTestRow,
  ReductionRow,
  TestPackageRow,
  TestPlanRow,
} from '../model/index.ts';
import { claims } from './claims.ts';
import { type NextTestsOptions, nextTests, testPackages, testPlan } from './next-tests.ts';
import { readBench } from './read-bench.ts';
import { type PriceFile, readPrices } from './read-prices.ts';
import { reductions } from './reductions.ts';

const CLAIMS = 'device,claim,analyte,comparator,value,evidence';
const SAMPLES = 'sample,position,device,event,kind,throughput';
const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';
const PRICES = 'lab,package,price,analyte,limit,detection_limit,uncertainty';

function onBench<T>(
  texts: Record<string, string>,
  prices: string | null,
  use: (bench: Bench, prices: PriceFile | null) => T,
): T {
  return withBench(texts, (folder) => {
    const bench = readBench(folder);
    expect(bench.findings.filter(({ level }) => level === 'error')).toEqual([]);
    if (prices === null) return use(bench, null);
    const file = join(folder, 'prices-of-test.csv');
    writeFileSync(file, prices);
    return use(bench, readPrices(bench, file));
  });
}

/** Feed and product of lead of `ro` at one event. */
function leadBench(feed: string, product: string): Record<string, string> {
  return {
    'samples.csv': csv(SAMPLES, 'F,feed,,e,,', 'P,product,ro,e,,'),
    'lab/lab.csv': csv(LAB, `F,Lead,${feed}`, `P,Lead,${product}`),
  };
}

describe('what a feed can show', () => {
  it('is nothing where the feed held nothing', () => {
    const texts = leadBench('ND,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5');
    const row = onBench(texts, null, (bench) => testPlan(bench, { wanted: ['lead=99 %'] }).rows[0]);
    expect(row).toMatchObject({
      shows_target: false,
      largest_reduction: { plain: null, printed: null },
      feed: { low: 0, high: 0.5, estimate: null, source: 'e' },
    });
  });

  it('asks for no more than any reduction where nobody asks', () => {
    const texts = leadBench('10,ug/L,0.1,0.5', '1,ug/L,0.1,0.5');
    const rows = onBench(texts, null, (bench) => testPlan(bench).rows as TestPlanRow[]);
    expect(rows).toMatchObject([{ target: { kind: 'any' }, shows_target: true, spike: 0 }]);
    expect(rows[0]?.replicates.why_none).toBe('no-target');
  });

  const printedLow = (feed: string, limits: string): number => {
    const texts = leadBench(`${feed},ug/L,${limits}`, `ND,ug/L,${limits}`);
    const row = onBench(texts, null, (bench) => reductions(bench).rows[0]) as ReductionRow;
    return row.reduction.interval_low ?? Number.NEGATIVE_INFINITY;
  };

  // The check is the tool's own reduction of a bench that holds the pair.
  it.each([
    ['99 %', 0.99, '0.1,0.5'],
    ['99 %', 0.99, ',0.5'],
    ['90 %', 0.9, '0.4,0.5'],
    ['50 %', 0.5, '0.1,0.5'],
    ['99.9 %', 0.999, ',2'],
    ['4 log', 0.9999, '0.02,0.1'],
  ])(
    'needs for %s a feed whose printed bound reaches it, and the next lower one does not (%s, limits %s)',
    (text, fraction, limits) => {
      const texts = leadBench(`10,ug/L,${limits}`, `ND,ug/L,${limits}`);
      const row = onBench(
        texts,
        null,
        (bench) => testPlan(bench, { wanted: [`lead=${text}`] }).rows[0],
      ) as TestPlanRow;
      const needed = row.feed_needed.printed ?? Number.NaN;
      const plain = Number(limits.split(',')[1]) / (1 - fraction);
      expect(row.feed_needed.plain).toBeCloseTo(plain, 6);
      expect(needed).toBeGreaterThan(plain);
      expect(printedLow(String(needed), limits)).toBeGreaterThanOrEqual(fraction);
      const step = 10 ** (Math.floor(Math.log10(needed)) - 2);
      const lower = (needed - step).toPrecision(3);
      expect(printedLow(String(Number(lower)), limits)).toBeLessThan(fraction);
    },
  );

  it('is the bound that is printed when the product is then not detected', () => {
    const texts = leadBench('42.0,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5');
    const row = onBench(texts, null, (bench) => testPlan(bench).rows[0]) as TestPlanRow;
    const { plain, printed } = row.largest_reduction;
    expect(plain).toBeCloseTo(1 - 0.5 / 42, 12);
    expect(printed).toBeCloseTo(printedLow('42.0', '0.1,0.5'), 12);
    expect(printed ?? 1).toBeLessThan(plain ?? 0);
  });
});

const LEAD_CLAIM = 'ro,said so,lead,at-least,99 %,stated';

describe('the cheapest packages', () => {
  const texts = {
    ...leadBench('100,ug/L,0.1,0.5', '5,ug/L,0.1,0.5'),
    'claims.csv': csv(CLAIMS, LEAD_CLAIM),
  };
  const list = csv(
    PRICES,
    'one,coarse,10 USD,lead,5 ug/L,,',
    'one,fine,40 USD,lead,0.5 ug/L,0.1 ug/L,',
    'two,fine too,38 USD,lead,0.0005 mg/L,0.1 ug/L,',
  );
  const chosen = (options: NextTestsOptions = {}) =>
    onBench(texts, list, (bench, prices) => testPackages(bench, { ...options, prices }));

  it('answer at a limit low enough, whatever its unit, for feed and products of every device', () => {
    const { rows, settings } = chosen();
    expect(rows).toMatchObject([
      { lab: 'two', package: 'fine too', price: 38, samples: 3, cost: 114, unanswered: null },
    ]);
    expect(settings).toMatchObject({ method: 'exact', total_cost: 114, cost_at_least: 114 });
  });

  it('cost a feed an event and every product sample', () => {
    const { rows } = chosen({ events: 2, replicates: 3 });
    expect(rows).toMatchObject([{ samples: 2 * (1 + 2 * 3), cost: 38 * 14 }]);
  });

  it('for one device are fewer samples', () => {
    expect(chosen({ devices: ['ro'] }).rows).toMatchObject([{ samples: 2, cost: 76 }]);
  });

  it('say what is not within the budget, not offered, or asks for another feed', () => {
    const { rows } = chosen({ budget: '100 USD', wanted: ['copper=90 %', 'lead=99.99 %'] });
    const open = (rows as TestPackageRow[]).map((row) => [
      row.answers[0]?.analyte,
      row.unanswered,
      row.feed_needed === null ? null : row.feed_needed > 5000,
    ]);
    expect(open).toEqual([
      ['copper', 'not-offered', null],
      ['lead', 'limit-too-high', true],
      ['lead', 'over-budget', null],
    ]);
  });

  it('are not chosen without a price list, and a finding says so', () => {
    const outcome = onBench(texts, null, (bench) => testPackages(bench));
    expect(outcome.rows).toEqual([]);
    expect(outcome.findings.map(({ code }) => code)).toContain('prices-not-given');
  });

  it('refuse a budget in another currency', () => {
    expect(() => chosen({ budget: '100 EUR' })).toThrow(
      expect.objectContaining({ code: 'currency-mixed' }),
    );
  });
});

/** Traces, so that bounds show the misses firmly. */
const FEED = { Lead: '10,ug/L,0.2,1', Copper: '400,ug/L,1,4' } as const;
const PRODUCT = { Lead: '0.5 J,ug/L,0.2,1', Copper: '2 J,ug/L,1,4' } as const;
type Metal = keyof typeof FEED;
const ALL: readonly Metal[] = ['Lead', 'Copper'];

/** A bench on which three claims were missed in one event, and trips that are really added to it. */
function missedOnce(
  trips: readonly {
    readonly lab: string;
    readonly metals: readonly Metal[];
    readonly devices: readonly string[];
  }[],
): Record<string, string> {
  const held = [{ lab: 'first', metals: ALL, devices: ['ro', 'jug'] }, ...trips];
  return {
    'claims.csv': csv(
      CLAIMS,
      'ro,lead of ro,lead,at-least,99.9 %,stated',
      'jug,lead of jug,lead,at-least,99.9 %,stated',
      'jug,copper of jug,copper,at-least,99.99 %,stated',
    ),
    'samples.csv': csv(
      SAMPLES,
      ...held.flatMap(({ lab, devices }) => [
        `${lab}-feed,feed,,${lab},,`,
        ...devices.map((device) => `${lab}-${device},product,${device},${lab},,`),
      ]),
    ),
    ...Object.fromEntries(
      held.map(({ lab, metals, devices }) => [
        `lab/${lab}.csv`,
        csv(
          LAB,
          ...metals.flatMap((metal) => [
            `${lab}-feed,${metal},${FEED[metal]}`,
            ...devices.map((device) => `${lab}-${device},${metal},${PRODUCT[metal]}`),
          ]),
        ),
      ]),
    ),
  };
}

const PACKAGES = [
  { lab: 'a', price: 25, metals: ['Lead'] },
  { lab: 'b', price: 31, metals: ['Lead', 'Copper'] },
  { lab: 'c', price: 20, metals: ['Copper'] },
] as const;
const LIST = csv(
  PRICES,
  ...PACKAGES.flatMap(({ lab, price, metals }) =>
    metals.map((metal) =>
      [
        lab,
        'p',
        `${price} USD`,
        metal,
        ...(metal === 'Lead' ? ['1 ug/L', '0.2 ug/L'] : ['4 ug/L', '1 ug/L']),
        '',
      ].join(','),
    ),
  ),
);

describe('the sample to pay for next', () => {
  const verdictsAfter = (trips: Parameters<typeof missedOnce>[0]): string[] =>
    onBench(missedOnce(trips), null, (bench) =>
      (claims(bench).rows as ClaimRow[]).map(({ verdict }) => verdict),
    );

  it('is as good for its money as the best of all samples that could really be taken', () => {
    expect(verdictsAfter([])).toEqual(['open', 'open', 'open']);
    const parts = PACKAGES.flatMap((one) => ['ro', 'jug'].map((device) => ({ ...one, device })));
    let best = 0;
    for (let mask = 1; mask < 2 ** parts.length; mask += 1) {
      const taken = parts.filter((_part, at) => (mask >> at) & 1);
      const trips = PACKAGES.map((one) => ({
        ...one,
        devices: taken.flatMap(({ lab, device }) => (lab === one.lab ? device : [])),
      })).filter(({ devices }) => devices.length > 0);
      const cost = trips.reduce((sum, { price, devices }) => sum + price * (1 + devices.length), 0);
      const settled = verdictsAfter(trips).filter((verdict) => verdict !== 'open').length;
      best = Math.max(best, settled / cost);
    }
    const rows = onBench(
      missedOnce([]),
      LIST,
      (bench, prices) => nextTests(bench, { prices }).rows,
    );
    const [first] = rows as NextTestRow[];
    // One division of whole numbers on either side.
    expect(first?.per_money).toBeCloseTo(best, 12);
    expect(first).toMatchObject({ action: 'retest', lab: 'b', devices: ['ro', 'jug'], cost: 93 });
    expect(first?.verdicts.map(({ would_be }) => would_be)).toEqual(Array(3).fill('contradicted'));
  }, 60_000);

  it('keeps to a budget, and lists what it leaves open', () => {
    const rows = onBench(
      missedOnce([]),
      LIST,
      (bench, prices) => nextTests(bench, { prices, budget: '45 USD' }).rows,
    ) as NextTestRow[];
    expect(rows.at(-1)).toMatchObject({ rank: null, action: 'none', cost_so_far: 40 });
    expect(rows.reduce((sum, { cost }) => sum + (cost ?? 0), 0)).toBeLessThanOrEqual(45);
    expect(rows.flatMap(({ verdicts }) => verdicts)).toHaveLength(3);
  });

  it('without prices goes by samples, at the limits of the bench', () => {
    const rows = onBench(missedOnce([]), null, (bench) => nextTests(bench).rows) as NextTestRow[];
    expect(rows).toMatchObject([
      { rank: 1, lab: null, price: null, cost: null, samples: 3, per_money: null, per_sample: 1 },
    ]);
  });

  it('for one device never counts the verdicts of another', () => {
    const rows = onBench(
      missedOnce([]),
      LIST,
      (bench, prices) => nextTests(bench, { prices, devices: ['ro'] }).rows,
    ) as NextTestRow[];
    expect(rows).toMatchObject([{ lab: 'a', devices: ['ro'], samples: 2, cost: 50 }]);
  });

  it('does not exist where no verdict is open', () => {
    const texts = {
      ...leadBench('100,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5'),
      'claims.csv': csv(CLAIMS, LEAD_CLAIM),
    };
    expect(onBench(texts, LIST, (bench, prices) => nextTests(bench, { prices }).rows)).toEqual([]);
  });

  it('is a spike where the feed was too low, which really settles the claim', () => {
    const texts = {
      ...leadBench('10,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5'),
      'claims.csv': csv(CLAIMS, LEAD_CLAIM),
    };
    const list = csv(PRICES, 'one,lead,20 USD,lead,0.5 ug/L,0.1 ug/L,');
    const rows = onBench(texts, list, (bench, prices) => nextTests(bench, { prices }).rows);
    expect(rows).toMatchObject([
      { action: 'spike', devices: ['ro'], cost: 40, verdicts: [{ would_be: 'supported' }] },
    ]);
    const level = (rows as NextTestRow[])[0]?.spike_to[0]?.feed;
    const spiked = {
      ...texts,
      'samples.csv': csv(
        SAMPLES,
        'F,feed,,e,,',
        'P,product,ro,e,,',
        'G,feed,,s,spiked,',
        'Q,product,ro,s,spiked,',
      ),
      'lab/more.csv': csv(LAB, `G,Lead,${level},ug/L,0.1,0.5`, 'Q,Lead,ND,ug/L,0.1,0.5'),
    };
    const after = onBench(spiked, null, (bench) => claims(bench).rows[0]);
    expect(after).toMatchObject({ verdict: 'supported' });
  });

  it('is no sample where the uncertainty is assumed and no lab on offer states its own', () => {
    const measured = {
      ...leadBench('100,ug/L,0.1,0.5', '50,ug/L,0.1,0.5'),
      'claims.csv': csv(CLAIMS, LEAD_CLAIM),
    };
    const silent = csv(PRICES, 'one,lead,20 USD,lead,0.5 ug/L,0.1 ug/L,');
    const stating = csv(PRICES, 'one,lead,20 USD,lead,0.5 ug/L,0.1 ug/L,5 %');
    const rowsOf = (list: string) =>
      onBench(measured, list, (bench, prices) => nextTests(bench, { prices }).rows);
    expect(rowsOf(silent)).toMatchObject([
      { action: 'none', verdicts: [{ because: 'missed-once' }] },
    ]);
    // Two samples of one event confirm each other.
    expect(rowsOf(stating)).toMatchObject([
      {
        action: 'retest',
        product_samples: [2],
        cost: 60,
        verdicts: [{ would_be: 'contradicted' }],
      },
    ]);
  });

  it('shows a rise firmly at a lab that states its uncertainty', () => {
    const texts = leadBench('10,ug/L,0.1,0.5', '30,ug/L,0.1,0.5');
    const list = csv(
      PRICES,
      'one,silent,10 USD,lead,0.5 ug/L,0.1 ug/L,',
      'one,stating,30 USD,lead,0.5 ug/L,0.1 ug/L,5 %',
    );
    const rows = onBench(texts, list, (bench, prices) => nextTests(bench, { prices }).rows);
    expect(rows).toMatchObject([
      {
        package: 'stating',
        cost: 60,
        verdicts: [{ kind: 'rise', now: 'apparent rise', would_be: 'rise' }],
      },
    ]);
  });

  it('tests a claim without a result for the first time, if the device is then found clean', () => {
    const texts = {
      ...leadBench('100,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5'),
      'claims.csv': csv(
        `${CLAIMS},capacity`,
        'jug,said so,lead,at-least,98 %,stated,',
        // A device without samples is new, and so within any capacity.
        'jug,for a year,lead,at-least,97 %,stated,150 L',
      ),
    };
    const list = csv(PRICES, 'one,lead,10 USD,lead,0.5 ug/L,0.1 ug/L,');
    const rows = onBench(texts, list, (bench, prices) => nextTests(bench, { prices }).rows);
    expect(rows).toMatchObject([
      {
        action: 'retest',
        devices: ['jug'],
        cost: 20,
        assumes: ['not-detected', 'new-device'],
        verdicts: [
          { now: 'untested', would_be: 'supported' },
          { now: 'untested', would_be: 'supported' },
        ],
      },
    ]);
  });

  it('decides a wanted reduction at a lower limit or on a higher feed, whichever is cheaper', () => {
    const texts = leadBench('10,ug/L,0.1,0.5', 'ND,ug/L,0.1,0.5');
    const rowsFor = (priceOfLow: number) =>
      onBench(
        texts,
        csv(
          PRICES,
          'one,usual,20 USD,lead,0.5 ug/L,0.1 ug/L,',
          `one,low,${priceOfLow} USD,lead,0.02 ug/L,0.01 ug/L,`,
        ),
        (bench, prices) => nextTests(bench, { prices, wanted: ['lead=99 %'] }).rows,
      );
    const verdicts = [{ kind: 'wanted', about: '0.99', now: 'open', would_be: 'reached' }];
    expect(rowsFor(19)).toMatchObject([{ action: 'retest', package: 'low', cost: 38, verdicts }]);
    expect(rowsFor(25)).toMatchObject([{ action: 'spike', package: 'usual', cost: 40, verdicts }]);
    const reached = onBench(
      texts,
      null,
      (bench) => nextTests(bench, { wanted: ['lead=90 %'] }).rows,
    );
    expect(reached).toEqual([]);
  });

  it('confirms a contradiction with two samples of one event, which really confirm it', () => {
    const texts = missedOnce([{ lab: 'second', metals: ['Lead'], devices: ['ro'] }]);
    const open = onBench(texts, LIST, (bench, prices) => nextTests(bench, { prices }).rows);
    const all = (open as NextTestRow[]).flatMap(({ verdicts }) => verdicts);
    expect(all.map(({ device, now, would_be }) => [device, now, would_be])).toEqual(
      expect.arrayContaining([['ro', 'contradicted', 'contradicted, confirmed']]),
    );
    const row = (open as NextTestRow[]).find(({ devices }) => devices.includes('ro'));
    expect(row?.product_samples[row.devices.indexOf('ro')]).toBe(2);
    const held = {
      ...texts,
      'samples.csv': `${texts['samples.csv']}${csv(
        'G,feed,,third,,',
        'Q1,product,ro,third,,',
        'Q2,product,ro,third,,',
      )}`,
      'lab/third.csv': csv(
        LAB,
        `G,Lead,${FEED.Lead}`,
        `Q1,Lead,${PRODUCT.Lead}`,
        `Q2,Lead,${PRODUCT.Lead}`,
      ),
    };
    const after = onBench(held, null, (bench) => claims(bench).rows[0]) as ClaimRow;
    expect(after.events.map(({ retested }) => retested)).toContain(true);
  });

  it('settles a level that lies below the limit of the lab, at a lab with a lower one', () => {
    const texts = {
      'bench.json': '{"title":"t","reference_levels":["US-EPA"]}',
      'samples.csv': csv(SAMPLES, 'F,feed,,e,,', 'P,product,ro,e,,'),
      'lab/lab.csv': csv(LAB, 'F,Lead,40,ug/L,,30', 'P,Lead,ND,ug/L,,30'),
    };
    const list = csv(PRICES, 'one,same,5 USD,lead,30 ug/L,,', 'one,low,20 USD,lead,0.5 ug/L,,');
    const rows = onBench(texts, list, (bench, prices) => nextTests(bench, { prices }).rows);
    const first = (rows as NextTestRow[]).find(({ verdicts }) => verdicts[0]?.kind === 'level');
    expect(first).toMatchObject({ package: 'low', devices: ['ro'], cost: 40 });
    expect(new Set(first?.verdicts.map(({ kind }) => kind))).toEqual(new Set(['level']));
    expect(new Set(first?.verdicts.map(({ would_be }) => would_be))).toEqual(new Set(['within']));
  });
});

describe('the options of a plan', () => {
  const plan = (options: NextTestsOptions) =>
    onBench(leadBench('10,ug/L,0.1,0.5', '1,ug/L,0.1,0.5'), null, (bench) =>
      testPlan(bench, options),
    );

  it.each([
    [{ wanted: ['lead'] }, 'option-unknown'],
    [{ wanted: ['leed=99 %'] }, 'analyte-unknown'],
    [{ wanted: ['lead=100 %'] }, 'number-outside'],
    [{ wanted: ['lead=99'] }, 'unit-missing'],
    [{ wanted: ['lead=5 L'] }, 'dimension-wrong'],
    [{ power: '120 %' }, 'number-outside'],
    [{ power: 'high' }, 'number-outside'],
    [{ margin: '5' }, 'option-unknown'],
    [{ budget: '5 USD' }, 'argument-missing'],
  ] as const)('%j is refused as %s', (options, code) => {
    expect(() => plan(options)).toThrow(expect.objectContaining({ code }));
  });

  it('take a share in percent or as a fraction', () => {
    const inPercent = plan({ wanted: ['lead=90%'], power: '90 %' });
    expect(plan({ wanted: ['lead=1 log'], power: '0.9' }).rows).toEqual(inPercent.rows);
  });
});
