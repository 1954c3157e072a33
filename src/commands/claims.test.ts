import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import type { ClaimRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { claims } from './claims.ts';
import { readBench } from './read-bench.ts';

const CLAIMS = 'device,claim,analyte,comparator,value,evidence,standard,capacity';
const SAMPLES = 'sample,position,device,event,kind,throughput,status,reason';
const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';

function outcomeFor(texts: Record<string, string>): Outcome {
  return withBench(texts, (folder) => {
    const bench = readBench(folder);
    expect(bench.findings.filter(({ level }) => level === 'error')).toEqual([]);
    return claims(bench);
  });
}

/** One claim on the lead of `ro`, and results of lead at events e1, e2, ... */
function claim(
  words: string,
  events: readonly { feed: string; product: string; throughput?: string; kind?: string }[],
  more: Record<string, string> = {},
): ClaimRow {
  const samples = events.flatMap(({ throughput = '', kind = '' }, index) => [
    `F${index},feed,,e${index},${kind},,,`,
    `P${index},product,ro,e${index},${kind},${throughput},,`,
  ]);
  const results = events.flatMap(({ feed, product }, index) => [
    `F${index},Lead,${feed}`,
    `P${index},Lead,${product}`,
  ]);
  const outcome = outcomeFor({
    'claims.csv': csv(CLAIMS, `ro,said so,lead,${words}`),
    'samples.csv': csv(SAMPLES, ...samples),
    'lab/lab.csv': csv(LAB, ...results),
    ...more,
  });
  expect(outcome.rows).toHaveLength(1);
  return outcome.rows[0] as ClaimRow;
}

const NONE_FOUND = { feed: '100,ug/L,0.1,0.5', product: 'ND,ug/L,0.1,0.5' };
const TRACE = { feed: '10,ug/L,0.2,1', product: '0.5 J,ug/L,0.2,1' };

describe('a claim of at least a reduction', () => {
  it('is supported, firmly, where the lower bound of a non-detect reaches it', () => {
    const row = claim('at-least,99 %,stated,,', [NONE_FOUND]);
    expect(row).toMatchObject({ verdict: 'supported', firm: true, apparent: false, value: 0.99 });
    expect(row.reason).toContain('reduced by at least 99.');
    expect(row.interval.low).toBeGreaterThanOrEqual(0.99);
    expect(row.place).toMatchObject({ file: 'claims.csv', line: 2, field: 'claim' });
    expect(row.events[0]?.results).toEqual(['lab/lab.csv:2:3', 'lab/lab.csv:3:3']);
    expect(row.events[0]?.samples).toBe('F0+P0');
  });

  it('may be written as a log10 reduction', () => {
    const row = claim('at-least,2 log,stated,,', [NONE_FOUND]);
    expect(row.value).toBeCloseTo(0.99, 15);
  });

  it('is open where this feed held too little, and the needed feed is named', () => {
    const row = claim('at-least,99 %,stated,,', [{ ...NONE_FOUND, feed: '10,ug/L,0.1,0.5' }]);
    expect(row).toMatchObject({ verdict: 'open', apparent: false });
    // 0.5 / (1 - 0.99)
    expect(row.reason).toContain('at least 50 ug/L');
  });

  it('is contradicted by the upper bound of traces at two events, and not at one', () => {
    const two = claim('at-least,99.9 %,stated,,', [TRACE, TRACE]);
    expect(two).toMatchObject({ verdict: 'contradicted', firm: true });
    expect(two.findings).toContain('claim-contradicted');
    const one = claim('at-least,99.9 %,stated,,', [TRACE]);
    expect(one).toMatchObject({ verdict: 'open', apparent: true, firm: false });
    expect(one.reason).toContain('retest');
  });

  it('is contradicted at one event whose retest misses it too', () => {
    const row = claim('at-least,99.9 %,stated,,', [], {
      'samples.csv': csv(
        SAMPLES,
        'F,feed,,day,,,,',
        'P1,product,ro,day,,,,',
        'P2,product,ro,day,,,,',
      ),
      'lab/lab.csv': csv(
        LAB,
        'F,Lead,10,ug/L,0.2,1',
        'P1,Lead,0.5 J,ug/L,0.2,1',
        'P2,Lead,0.6 J,ug/L,0.2,1',
      ),
    });
    expect(row).toMatchObject({ verdict: 'contradicted', firm: true });
    expect(row.events).toMatchObject([{ retested: true, decision: 'misses' }]);
  });

  it('is only apparently missed where the uncertainty is assumed, however often', () => {
    const measured = { feed: '100,ug/L,0.1,0.5', product: '50,ug/L,0.1,0.5' };
    const row = claim('at-least,99 %,stated,,', [measured, measured, measured]);
    expect(row).toMatchObject({ verdict: 'open', apparent: true, firm: false });
    expect(row.reason).toContain('assumed');
    expect(row.p_value).not.toBeNull();
    expect(row.p_value ?? 1).toBeLessThan(0.01);
  });

  it('is only apparently supported by a bound at the detection limit', () => {
    const row = claim('at-least,99 %,stated,,', [NONE_FOUND], {
      'bench.json': '{"title":"t","nondetect_bound":"detection"}',
    });
    expect(row).toMatchObject({ verdict: 'supported', firm: false });
  });

  it('stays missed only where it does among all the claims and rises of the bench', () => {
    // Six duplicates of the feed tell the scatter, so that nothing is assumed.
    const duplicates = [0, 1, 2, 3, 4, 5].map((index) => ({
      sample: `D${index},feed,,dup${index},,,,,`,
      copy: `C${index},feed,,dup${index},,,,,D${index}`,
      results: [`D${index},Lead,96,ug/L,,`, `C${index},Lead,104,ug/L,,`],
    }));
    const verdictBeside = (
      others: readonly string[],
      unchanged: readonly string[] = [],
    ): ClaimRow => {
      const outcome = outcomeFor({
        'claims.csv': csv(
          CLAIMS,
          'ro,missed by a little,lead,at-least,91.3 %,stated,,',
          ...others.map((share) => `ro,easily met,lead,at-least,${share},stated,,`),
        ),
        'samples.csv': csv(
          `${SAMPLES},of`,
          'F0,feed,,e0,,,,,',
          'P0,product,ro,e0,,,,,',
          'F1,feed,,e1,,,,,',
          'P1,product,ro,e1,,,,,',
          'J0,product,jug,e0,,,,,',
          ...duplicates.flatMap(({ sample, copy }) => [sample, copy]),
        ),
        'lab/lab.csv': csv(
          LAB,
          'F0,Lead,100,ug/L,,',
          'P0,Lead,12,ug/L,,',
          'F1,Lead,100,ug/L,,',
          'P1,Lead,12,ug/L,,',
          'J0,Lead,ND,ug/L,0.1,0.5',
          ...unchanged.flatMap((name) => [`F0,${name},10,ug/L,,`, `J0,${name},10,ug/L,,`]),
          ...duplicates.flatMap(({ results }) => results),
        ),
      });
      return outcome.rows[0] as ClaimRow;
    };
    const alone = verdictBeside([]);
    expect(alone.events.map(({ decision, firm }) => [decision, firm])).toEqual([
      ['misses', true],
      ['misses', true],
    ]);
    expect(alone.verdict).toBe('contradicted');
    const among = verdictBeside(['50 %', '51 %', '52 %', '53 %', '54 %', '55 %']);
    expect(among.p_value ?? 0).toBeGreaterThan(alone.p_value ?? 1);
    expect(among).toMatchObject({ verdict: 'open', apparent: true });
    expect(among.reason).toContain('chance');
    // Pairs of another device are tested for a rise: they and the claims are one family.
    const metals = ['Copper', 'Zinc', 'Nickel', 'Arsenic', 'Barium', 'Cadmium', 'Cobalt', 'Iron'];
    const besideRises = verdictBeside([], metals);
    expect(besideRises.p_value ?? 0).toBeGreaterThan(alone.p_value ?? 1);
    expect(besideRises).toMatchObject({ verdict: 'open', apparent: true });
  });

  it('is open where its figure lies inside the interval', () => {
    const row = claim('at-least,90 %,stated,,', [
      { feed: '100,ug/L,0.1,0.5', product: '9.9,ug/L,0.1,0.5' },
    ]);
    expect(row).toMatchObject({ verdict: 'open', apparent: false });
    expect(row.events).toMatchObject([{ decision: 'cannot-say', outcome: 'measured' }]);
  });

  it('is not supported where one event meets it and another figure falls short of it', () => {
    const row = claim('at-least,90 %,stated,,', [
      { feed: '100,ug/L,0.1,0.5', product: '1,ug/L,0.1,0.5' },
      { feed: '100,ug/L,0.1,0.5', product: '10.2,ug/L,0.1,0.5' },
    ]);
    expect(row.events).toMatchObject([{ decision: 'meets' }, { decision: 'cannot-say' }]);
    expect(row.verdict).toBe('open');
  });

  it('is not contradicted by a void sample, which is no result', () => {
    const row = claim('at-least,99 %,stated,,', [], {
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,', 'P,product,ro,day,,,void,bottle broke'),
      'lab/lab.csv': csv(LAB, 'F,Lead,10,ug/L,,', 'P,Lead,9,ug/L,,'),
    });
    expect(row).toMatchObject({ verdict: 'untested', events: [] });
  });
});

describe('a claim of at most a level', () => {
  it('is supported where the feed was above it and the product lies below it', () => {
    const row = claim('at-most-level,0.005 mg/L,stated,,', [NONE_FOUND]);
    expect(row).toMatchObject({ verdict: 'supported', value: 5, unit: 'ug/L' });
  });

  it('is open where the feed itself held no more than the level', () => {
    const row = claim('at-most-level,5 ug/L,stated,,', [
      { feed: '4,ug/L,0.1,0.5', product: 'ND,ug/L,0.1,0.5' },
    ]);
    expect(row).toMatchObject({ verdict: 'open' });
    expect(row.events[0]?.why).toContain('feed itself');
  });

  it('can be missed without a feed, and never be met without one', () => {
    const alone = (product: string) =>
      claim('at-most-level,5 ug/L,stated,,', [], {
        'samples.csv': csv(SAMPLES, 'P,product,ro,day,,,,'),
        'lab/lab.csv': csv(LAB, `P,Lead,${product},ug/L,0.1,0.5`),
      }).events;
    expect(alone('40')).toMatchObject([{ decision: 'misses' }]);
    expect(alone('ND')).toMatchObject([
      { decision: 'cannot-say', why: expect.stringMatching(/no feed/) },
    ]);
  });

  it('is not decided where the limit of the lab lies above it', () => {
    const row = claim('at-most-level,0.2 ug/L,stated,,', [NONE_FOUND]);
    expect(row).toMatchObject({ verdict: 'open', events: [{ decision: 'cannot-say' }] });
  });
});

describe('the conditions of a claim', () => {
  it('leave out an event beyond the capacity claimed', () => {
    const at = (throughput: string) =>
      claim('at-least,99.9 %,stated,,150 L', [
        { ...TRACE, throughput: '100 L' },
        { ...TRACE, throughput },
      ]);
    expect(at('140 L').verdict).toBe('contradicted');
    expect(at('200 L')).toMatchObject({ verdict: 'open', apparent: true });
    expect(at('200 L').events.map(({ inside }) => inside)).toEqual([true, false]);
  });

  it('are not known where a capacity is claimed and no throughput was logged', () => {
    const row = claim('at-least,99 %,stated,,150 L', [NONE_FOUND]);
    expect(row.verdict).toBe('open');
    expect(row.conditions.throughput_L).toEqual({
      stated: 150,
      low: null,
      high: null,
      state: 'not-known',
    });
    expect(row.reason).toContain('throughput not logged');
  });

  it('hold the feed to the challenge of the standard named: 150 ug/L of lead', () => {
    const at = (feed: string) =>
      claim('at-least,99 %,stated,NSF/ANSI 53,', [{ ...NONE_FOUND, feed: `${feed},ug/L,0.1,0.5` }]);
    expect(at('160')).toMatchObject({ verdict: 'supported' });
    expect(at('400')).toMatchObject({ verdict: 'open' });
    expect(at('400').conditions.feed).toMatchObject({ stated: 150, state: 'outside' });
  });

  it('ask for a logged pressure where the standard tests at one', () => {
    const withPressure = (pressure: string) =>
      claim('at-least,99 %,stated,NSF/ANSI 58,', [NONE_FOUND], {
        'pours.csv': csv('device,run,volume,time,pressure', `ro,1,1 L,60 s,${pressure}`),
      });
    expect(withPressure('52 psi').verdict).toBe('supported');
    expect(withPressure('90 psi').verdict).toBe('open');
    expect(claim('at-least,99 %,stated,NSF/ANSI 58,', [NONE_FOUND]).reason).toContain('pressure');
  });
});

describe('claims that cannot be tested', () => {
  it('"up to" is untestable, whatever was measured', () => {
    expect(claim('up-to,99 %,stated,,', [NONE_FOUND])).toMatchObject({ verdict: 'untestable' });
    expect(claim('up-to,99 %,stated,,', [TRACE, TRACE])).toMatchObject({ verdict: 'untestable' });
  });

  it('without a figure is untestable, and on what was not measured untested', () => {
    expect(claim('at-least,,stated,,', [NONE_FOUND])).toMatchObject({ verdict: 'untestable' });
    expect(claim('at-least,99 %,stated,,', [])).toMatchObject({ verdict: 'untested' });
  });

  it('on an unknown analyte is untested and told', () => {
    const outcome = outcomeFor({
      'claims.csv': csv(CLAIMS, 'ro,cleans all,unobtainium,at-least,99 %,stated,,'),
    });
    expect(outcome.rows).toMatchObject([{ verdict: 'untested', analyte: null }]);
    expect(outcome.findings.map(({ code }) => code)).toContain('claim-analyte-unknown');
  });

  it.each([
    ['at-least,99 ug/L', 'no reduction'],
    ['at-least,990 %', 'outside 0 to 100 %'],
    ['at-most-level,5 %', '%'],
    ['at-most-level,5', 'no unit'],
    ['at-most-level,5 NTU', ''],
    ['at-least,most', ''],
  ])('with the figure "%s" is told where it stands', (figure, words) => {
    const outcome = outcomeFor({
      'claims.csv': csv(CLAIMS, `ro,said so,lead,${figure},stated,,`),
    });
    expect(outcome.rows).toMatchObject([{ verdict: 'untestable' }]);
    const told = outcome.findings.find(({ code }) => code === 'claim-value-unreadable');
    expect(told?.place).toMatchObject({ file: 'claims.csv', line: 2, field: 'value' });
    expect(told?.message).toContain(words);
  });

  it('a bench without claims gives no rows', () => {
    const outcome = outcomeFor({});
    expect(outcome.rows).toEqual([]);
    expect(outcome.views[0]?.caption).toBe('No claims');
  });
});

describe('a claim on a sum', () => {
  it('is held against its members where the lab reports no sum', () => {
    const members = ['Chloroform', 'Bromodichloromethane', 'Dibromochloromethane', 'Bromoform'];
    const outcome = outcomeFor({
      'claims.csv': csv(CLAIMS, 'ro,no solvents,TTHM,at-least,90 %,stated,,'),
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,', 'P,product,ro,day,,,,'),
      'lab/lab.csv': csv(
        LAB,
        ...members.flatMap((name) => [`F,${name},50,ug/L,0.1,0.5`, `P,${name},ND,ug/L,0.1,0.5`]),
      ),
    });
    expect(outcome.rows).toMatchObject([{ analyte: 'tthm', verdict: 'supported' }]);
    expect((outcome.rows[0] as ClaimRow).events[0]?.results).toHaveLength(8);
  });
});

describe('certified claims', () => {
  const certified = (feed: string) =>
    claim('at-least,90 %,certified,NSF/ANSI 53,', [
      { ...NONE_FOUND, feed: `${feed},ug/L,0.1,0.5` },
    ]);

  it('could not be tested by a feed that held less than the product may', () => {
    const row = certified('2');
    expect(row.certification).toMatchObject([
      { contaminant: 'lead', bench: 'could-not-test', max_product: '0.005 mg/L' },
    ]);
    expect(row.findings).toEqual(['certificate-untested']);
  });

  it('were challenged by a feed near the challenge, and by less below it', () => {
    expect(certified('140').certification).toMatchObject([{ bench: 'challenged' }]);
    expect(certified('40').certification).toMatchObject([{ bench: 'below-challenge' }]);
    expect(certified('40').findings).toEqual([]);
  });

  it('on what the standard does not challenge are told', () => {
    const row = claim('at-least,90 %,certified,NSF/ANSI 42,', [NONE_FOUND]);
    expect(row).toMatchObject({ certification: [], findings: ['certificate-unlisted'] });
  });

  it('cover the contaminants of the feed they name, and no others', () => {
    const outcome = outcomeFor({
      'claims.csv': csv(CLAIMS, 'ro,certified,lead,at-least,90 %,certified,NSF/ANSI 53,'),
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,', 'P,product,ro,day,,,,'),
      'lab/lab.csv': csv(
        LAB,
        'F,Lead,10,ug/L,,',
        'P,Lead,1,ug/L,,',
        'F,Uranium,10,ug/L,,',
        'P,Uranium,1,ug/L,,',
        'F,Cadmium,<0.5,ug/L,,',
        'P,Cadmium,<0.5,ug/L,,',
      ),
    });
    const missing = outcome.findings.filter(({ code }) => code === 'certificate-missing');
    expect(missing).toHaveLength(1);
    expect(missing[0]?.message).toMatch(/of ro: Uranium/);
    expect(missing[0]?.message).not.toMatch(/Lead|Cadmium/);
  });
});

describe('certificates of water efficiency', () => {
  const efficient = (standard: string, drain: string, more: Record<string, string> = {}) =>
    outcomeFor({
      'claims.csv': csv(CLAIMS, `ro,saves water,,,,certified,${standard},`),
      'drain-runs.csv': csv(
        'device,run,clean,drain,collected_until',
        `ro,1,2 L,${drain},tap-closed`,
      ),
      'scenarios.csv': csv(
        'scenario,weekdays,window,pours_per_day,volume_each',
        'home,daily,07:00-21:00,6,500 ml',
      ),
      ...more,
    });

  it('stand beside what the device drained in every scenario, never as a verdict', () => {
    const outcome = efficient('WaterSense', '3 L');
    expect(outcome.rows).toMatchObject([
      {
        verdict: 'untestable',
        efficiency: [
          {
            standard: 'US EPA WaterSense final',
            comparator: '<=',
            threshold: 2.3,
            scenario: 'home',
            measured: 1.5,
            bench: 'reached',
          },
        ],
      },
    ]);
    const view = outcome.views.find(({ caption }) => caption.startsWith('Water use asked by'));
    expect(view?.rows[0]).toEqual([
      'ro',
      'US EPA WaterSense final',
      'maximum reject ratio <= 2.3 reject:product',
      'home',
      '1.5',
      'yes',
      'seen in part',
    ]);
    expect(view?.legend.join(' ')).toContain('no rating');
  });

  it('are not reached by a device that drains more', () => {
    const bench = (standard: string, drain: string) =>
      (efficient(standard, drain).rows[0] as ClaimRow).efficiency.map((item) => item.bench);
    expect(bench('WaterSense', '6 L')).toEqual(['not-reached']);
    // An efficiency of 40 % is 1.5 L to drain per clean litre: 2 / (2 + 3).
    expect(bench('ASSE 1086', '2.9 L')).toEqual(['reached']);
    expect(bench('ASSE 1086-2020', '3.2 L')).toEqual(['not-reached']);
  });

  it('are not tested without a scenario, and absent where no such standard is named', () => {
    const alone = efficient('ASSE 1086', '3 L', {
      'scenarios.csv': csv('scenario,weekdays,window,pours_per_day,volume_each'),
    });
    expect((alone.rows[0] as ClaimRow).efficiency).toMatchObject([
      { scenario: null, measured: null, bench: 'not-tested' },
    ]);
    const other = efficient('NSF/ANSI 58', '3 L');
    expect((other.rows[0] as ClaimRow).efficiency).toEqual([]);
    expect(other.views.map(({ caption }) => caption).join(' ')).not.toContain('Water use asked');
  });
});

describe('what a standard challenges, printed', () => {
  it('names certified claims that this bench could not have tested, and what no certificate covers', () => {
    const outcome = outcomeFor({
      'claims.csv': csv(CLAIMS, 'ro,certified,lead,at-least,90 %,certified,NSF/ANSI 53,'),
      'samples.csv': csv(SAMPLES, 'F,feed,,day,,,,', 'P,product,ro,day,,,,'),
      'lab/lab.csv': csv(
        LAB,
        'F,Lead,2,ug/L,0.1,0.5',
        'P,Lead,ND,ug/L,0.1,0.5',
        'F,Uranium,10,ug/L,,',
        'P,Uranium,1,ug/L,,',
      ),
    });
    const printed = outcome.views.map(
      ({ caption, rows }) => `${caption}: ${rows.flat().join(' | ')}`,
    );
    expect(printed.find((text) => text.startsWith('Standards named'))).toContain(
      'could not test it',
    );
    const missing = printed.find((text) => text.startsWith('Contaminants found'));
    expect(missing).toContain('no certified claim behind them');
    expect(missing).toContain('Uranium');
    expect(missing).not.toContain('Lead');
  });
});

describe('a filter', () => {
  it('never changes the verdict of another device', () => {
    const bench = readBench('samples/fourteen-devices');
    const all = claims(bench).rows as ClaimRow[];
    for (const device of new Set(all.map((row) => row.device))) {
      const own = claims(bench, { devices: [device] }).rows;
      expect(own).toEqual(all.filter((row) => row.device === device));
    }
  });
});
