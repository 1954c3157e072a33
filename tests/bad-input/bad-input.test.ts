import { describe, expect, it } from 'vitest';
import { readBench, SettingsError } from '../../src/commands/read-bench.ts';
import { type BenchTexts, csv, DEVICES_CSV, withBench } from '../benches/write-bench.ts';

/** `code file:line:column` of every error of a bench, as its reader finds them. */
function errorsOf(texts: BenchTexts): string[] {
  return withBench(texts, (folder) => {
    try {
      return shown(readBench(folder).findings);
    } catch (error) {
      if (error instanceof SettingsError) return shown(error.findings);
      throw error;
    }
  });
}

function shown(findings: ReturnType<typeof readBench>['findings']): string[] {
  return findings
    .filter((item) => item.level === 'error')
    .map(({ code, place }) => `${code} ${place.file}:${place.line ?? '-'}:${place.column ?? '-'}`);
}

const POURS = 'device,run,volume,time';
const RULES = 'device,rule,trigger,after,volume';

describe('a fault in a bench is one finding, at its place', () => {
  it.each<[string, BenchTexts, string]>([
    [
      'a negative volume',
      { 'pours.csv': csv(POURS, 'ro,1,-250 ml,5 s') },
      'quantity-negative pours.csv:2:3',
    ],
    ['a missing unit', { 'pours.csv': csv(POURS, 'ro,1,250,5 s') }, 'unit-missing pours.csv:2:3'],
    [
      'a wrong dimension',
      { 'pours.csv': csv(POURS, 'ro,1,250 g,5 s') },
      'dimension-wrong pours.csv:2:3',
    ],
    [
      'an unknown unit',
      { 'pours.csv': csv(POURS, 'ro,1,250 blobs,5 s') },
      'unit-unknown pours.csv:2:3',
    ],
    [
      'a time of zero',
      { 'pours.csv': csv(POURS, 'ro,1,250 ml,0 s') },
      'quantity-zero pours.csv:2:4',
    ],
    [
      'an unknown device',
      { 'pours.csv': csv(POURS, 'rho,1,250 ml,5 s') },
      'device-unknown pours.csv:2:1',
    ],
    [
      'a missing column',
      { 'pours.csv': csv('device,volume,time', 'ro,250 ml,5 s') },
      'column-missing pours.csv:1:-',
    ],
    [
      'an unknown column',
      { 'pours.csv': csv(`${POURS},tempreature`, 'ro,1,250 ml,5 s,20 C') },
      'column-unknown pours.csv:1:5',
    ],
    [
      'a repeated header',
      { 'pours.csv': csv(`${POURS},time`, 'ro,1,250 ml,5 s,5 s') },
      'header-repeated pours.csv:1:5',
    ],
    ['a ragged row', { 'pours.csv': csv(POURS, 'ro,1,250 ml') }, 'row-ragged pours.csv:2:-'],
    [
      'an unclosed quote',
      { 'pours.csv': csv(POURS, 'ro,1,"250 ml,5 s') },
      'quote-unclosed pours.csv:2:-',
    ],
    ['an empty file', { 'pours.csv': '' }, 'file-empty pours.csv:-:-'],
    ['a binary file', { 'pours.csv': 'PK\u0003\u0004\u0000' }, 'file-binary pours.csv:-:-'],
    [
      'a blank required cell',
      { 'pours.csv': csv(POURS, 'ro,,250 ml,5 s') },
      'cell-missing pours.csv:2:2',
    ],
    [
      'neither volume nor mass',
      { 'pours.csv': csv(POURS, 'ro,1,,5 s') },
      'either-missing pours.csv:2:3',
    ],
    [
      'a gallon without measures',
      { 'bench.json': '{"title":"t"}', 'pours.csv': csv(POURS, 'ro,1,1 gal,5 s') },
      'measures-missing pours.csv:2:3',
    ],
    [
      'a grouping comma',
      { 'pours.csv': csv(POURS, 'ro,1,"1,250 ml",5 s') },
      'decimal-unclear pours.csv:2:3',
    ],
    [
      'an unknown form',
      {
        'devices.csv': csv(
          'device,name,form,technology,drain_line',
          'ro,R,under-sing,reverse-osmosis,yes',
        ),
      },
      'choice-unknown devices.csv:2:3',
    ],
    [
      'a device named twice',
      { 'devices.csv': `${DEVICES_CSV}ro,Again,pitcher,carbon,no,no,bought,none\n` },
      'key-duplicate devices.csv:4:1',
    ],
    [
      'a price without currency',
      { 'parts.csv': csv('device,part,price', 'ro,filter,$38') },
      'currency-missing parts.csv:2:3',
    ],
    [
      'an idle rule without a time',
      { 'flush-rules.csv': csv(RULES, 'ro,rinse,idle,,1 L') },
      'rule-incomplete flush-rules.csv:2:4',
    ],
    [
      'a produced rule with a time',
      { 'flush-rules.csv': csv(RULES, 'ro,rinse,produced,10 min,1 L') },
      'rule-incomplete flush-rules.csv:2:4',
    ],
    [
      'a rule without any volume',
      { 'flush-rules.csv': csv(RULES, 'ro,rinse,idle,10 min,') },
      'flush-volume-missing flush-rules.csv:2:5',
    ],
    [
      'a flush of an unknown rule',
      { 'flushes.csv': csv('device,rule,volume', 'ro,rinse,1 L') },
      'rule-unknown flushes.csv:2:2',
    ],
    [
      'a window that ends before it starts',
      {
        'scenarios.csv': csv(
          'scenario,weekdays,window,pours_per_day,volume_each',
          'x,daily,22:00-07:00,4,250 ml',
        ),
      },
      'window-backwards scenarios.csv:2:3',
    ],
    [
      'an impossible date',
      { 'usage/week.csv': csv('at,volume', '2026-02-30T07:00,250 ml') },
      'date-impossible usage/week.csv:2:1',
    ],
    [
      'recorded pours out of order',
      { 'usage/week.csv': csv('at,volume', '2026-07-06T09:00,250 ml', '2026-07-06T07:00,250 ml') },
      'pours-unordered usage/week.csv:3:1',
    ],
    [
      'overlapping recorded pours',
      {
        'pours.csv': csv(POURS, 'ro,1,1 L,60 s'),
        'usage/week.csv': csv('at,volume', '2026-07-06T07:00,2 L', '2026-07-06T07:01,1 L'),
      },
      'pours-overlap usage/week.csv:3:1',
    ],
    [
      'a comment in a recording',
      { 'usage/week.csv': csv('at,volume', '# a morning', '2026-07-06T07:00,250 ml') },
      'row-ragged usage/week.csv:2:-',
    ],
    [
      'an unknown sample in a lab file',
      {
        'samples.csv': csv('sample,position,event', 'F,feed,day'),
        'lab/l.csv': csv('Sample ID,Analyte,Result,Units,RL', 'F,Lead,5,ug/L,1', 'X,Lead,5,ug/L,1'),
      },
      'sample-unknown lab/l.csv:3:1',
    ],
    [
      'an unknown analyte',
      {
        'samples.csv': csv('sample,position,event', 'F,feed,day'),
        'lab/l.csv': csv('Sample ID,Analyte,Result,Units,RL', 'F,Unobtainium,5,ug/L,1'),
      },
      'analyte-unknown lab/l.csv:2:2',
    ],
    [
      'a name and a CAS number that disagree',
      {
        'samples.csv': csv('sample,position,event', 'F,feed,day'),
        'lab/l.csv': csv('Sample ID,Analyte,CAS,Result,Units,RL', 'F,Lead,7440-50-8,5,ug/L,1'),
      },
      'analyte-conflict lab/l.csv:2:3',
    ],
    [
      'nitrate without a basis',
      {
        'samples.csv': csv('sample,position,event', 'F,feed,day'),
        'lab/l.csv': csv('Sample ID,Analyte,Result,Units,RL', 'F,Nitrate,5,mg/L,0.1'),
      },
      'basis-unstated lab/l.csv:2:4',
    ],
    [
      'a non-detect without a limit',
      {
        'samples.csv': csv('sample,position,event', 'F,feed,day'),
        'lab/l.csv': csv('Sample ID,Analyte,Result,Units,RL', 'F,Lead,ND,ug/L,'),
      },
      'result-limit-missing lab/l.csv:2:3',
    ],
    ['bad JSON', { 'bench.json': '{"title": "t",}' }, 'json-broken bench.json:1:15'],
    [
      'an unknown key',
      { 'bench.json': '{"title": "t", "colour": 1}' },
      'key-unknown bench.json:1:16',
    ],
    [
      'a repeated key',
      { 'bench.json': '{"title": "t", "title": "u"}' },
      'key-repeated bench.json:1:16',
    ],
    ['a missing title', { 'bench.json': '{}' }, 'key-missing bench.json:1:1'],
    [
      'a value of the wrong kind',
      { 'bench.json': '{"title": "t", "confidence": 95}' },
      'value-unexpected bench.json:1:30',
    ],
    [
      'an unknown jurisdiction',
      { 'bench.json': '{"title": "t", "reference_levels": ["Mars"]}' },
      'level-jurisdiction-unknown bench.json:1:37',
    ],
  ])('%s', (_title, texts, expected) => {
    expect(errorsOf(texts)).toEqual([expected]);
  });
});

describe('faults together', () => {
  it('are all found at once, in order of file and line', () => {
    const errors = errorsOf({
      'pours.csv': csv(POURS, 'ro,1,250,5 s', 'rho,1,250 ml,5 s', 'ro,1,250 ml,never'),
      'parts.csv': csv('device,part,price', 'ro,filter,38'),
    });
    expect(errors).toEqual([
      'currency-missing parts.csv:2:3',
      'unit-missing pours.csv:2:3',
      'device-unknown pours.csv:3:1',
      'quantity-unreadable pours.csv:4:4',
    ]);
  });

  it('in a missing devices.csv is one finding', () => {
    withBench({}, (folder) => {
      const errors = errorsOf({ 'devices.csv': '' });
      expect(errors).toEqual(['file-empty devices.csv:-:-']);
      expect(folder).not.toBe('');
    });
  });

  it('a record that spans lines is placed at the line where it starts', () => {
    expect(
      errorsOf({
        'pours.csv': csv(`${POURS},note`, 'ro,1,250 ml,5 s,"two\nlines"', 'ro,2,250,5 s,'),
      }),
    ).toEqual(['unit-missing pours.csv:4:3']);
  });

  it('a blank bench of the defaults has no finding above a note', () => {
    expect(errorsOf({})).toEqual([]);
  });
});
