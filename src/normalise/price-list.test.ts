import { describe, expect, it } from 'vitest';
import { placeText } from '../findings/index.ts';
import type { RawTable } from '../model/index.ts';
import { analyteIndex } from '../reference/index.ts';
import { readPriceList } from './price-list.ts';

const HEADER = 'lab,package,price,analyte,limit,detection_limit,uncertainty';

function read(rows: readonly string[], header = HEADER) {
  const table: RawTable = {
    path: 'prices.csv',
    header: header.split(','),
    headerLine: 1,
    rows: rows.map((text, at) => ({ line: at + 2, cells: text.split(',') })),
  };
  const { list, findings } = readPriceList(table, analyteIndex([]), null);
  return { list, told: findings.map(({ code, place }) => `${code} ${placeText(place)}`) };
}

describe('a price list of laboratories', () => {
  it('without rows has no packages and no currency', () => {
    expect(read([])).toEqual({
      list: { path: 'prices.csv', currency: null, packages: [] },
      told: [],
    });
  });

  it('has one price a package, stated once or in every row, and limits in canonical units', () => {
    const { list, told } = read([
      'one,metals,38 USD,lead,0.0005 mg/L,100 ng/L,6 %',
      'one,metals,,copper,1 ug/L,,',
      'one,lead,16 USD,Pb,0.5 ug/L,,',
      'two,metals,38 USD,lead,1 ug/L,,',
      'two,metals,38.00 USD,copper,2 ug/L,,',
    ]);
    expect(told).toEqual([]);
    expect(list.currency).toBe('USD');
    expect(list.packages.map(({ lab, name, price }) => [lab, name, price.amount])).toEqual([
      ['one', 'metals', 38],
      ['one', 'lead', 16],
      ['two', 'metals', 38],
    ]);
    expect(list.packages[0]?.tests).toEqual([
      { analyte: 'lead', limit: 0.5, detectionLimit: 0.1, uncertainty: 0.06 },
      { analyte: 'copper', limit: 1, detectionLimit: null, uncertainty: null },
    ]);
  });

  it('takes unit and currency from the header', () => {
    const { list, told } = read(
      ['one,metals,38,lead,0.5'],
      'Lab,Package,price (EUR),Analyte,limit (ug/L)',
    );
    expect(told).toEqual([]);
    expect(list).toMatchObject({
      currency: 'EUR',
      packages: [{ price: { amount: 38 }, tests: [{ limit: 0.5 }] }],
    });
  });

  it('tells every bad cell of the file at once, each with its place, and nothing that only follows', () => {
    const { told } = read([
      'one,a,38 USD,lead,0.5,,',
      'one,a,,leed,0.5 ug/L,,',
      'one,b,$38,copper,1 ug/L,,',
      'one,c,5 USD,zinc,1 L,,',
      'one,d,5 USD,nitrate,0.1 mg/L,,',
      'one,e,5 USD,arsenic,0 ug/L,,',
      'one,f,5 USD,arsenic,1 ug/L,2 ug/L,',
      'one,g,5 USD,arsenic,1 ug/L,,6',
      'one,h,-5 USD,arsenic,1 ug/L,,',
      ',i,5 USD,arsenic,1 ug/L,,',
      'one,j,5 USD,arsenic,2 x 1 ug/L,,',
    ]);
    expect(told).toEqual([
      'unit-missing prices.csv:2:5',
      'currency-missing prices.csv:4:3',
      'dimension-wrong prices.csv:5:5',
      'quantity-zero prices.csv:7:5',
      'unit-missing prices.csv:9:7',
      'number-unreadable prices.csv:10:3',
      'cell-missing prices.csv:11:1',
      'analyte-unknown prices.csv:3:4',
      'basis-unstated prices.csv:6:5',
      'price-limit-order prices.csv:8:6',
      'quantity-unreadable prices.csv:12:5',
    ]);
  });

  it('never mixes currencies, and never keeps two prices of one package', () => {
    expect(read(['one,a,38 USD,lead,1 ug/L,,', 'two,b,38 EUR,lead,1 ug/L,,']).told).toEqual([
      'currency-mixed prices.csv:3:3',
    ]);
    expect(read(['one,a,38 USD,lead,1 ug/L,,', 'one,a,40 USD,copper,1 ug/L,,']).told).toEqual([
      'price-conflict prices.csv:3:3',
    ]);
  });

  it('wants a price, and an analyte once a package, whatever it is called', () => {
    expect(read(['one,a,,lead,1 ug/L,,']).told).toEqual(['price-missing prices.csv:2:3']);
    expect(read(['one,a,5 USD,lead,1 ug/L,,', 'one,a,,Pb,2 ug/L,,']).told).toEqual([
      'key-duplicate prices.csv:3:4',
    ]);
  });

  it('names a column that is missing or not known', () => {
    expect(read(['one,a,5 USD,lead'], 'lab,package,price,analyte').told).toEqual([
      'column-missing prices.csv:1',
    ]);
    expect(read([], `${HEADER},turnaround`).told).toEqual(['column-unknown prices.csv:1:8']);
  });

  it('says which analyte is meant where a name can mean two', () => {
    expect(read(['one,a,5 USD,chlorine,1 mg/L,,']).told).toEqual([
      expect.stringMatching(/^analyte-(?:ambiguous|unknown) prices\.csv:2:4$/),
    ]);
  });
});
