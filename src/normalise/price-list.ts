import { type Finding, finding } from '../findings/index.ts';
import {
  cellPlace,
  type LabPackage,
  type Money,
  PRICE_COLUMNS,
  type PricedTest,
  type PriceList,
  type Quantity,
  type RawTable,
} from '../model/index.ts';
import {
  type Analyte,
  type AnalyteIndex,
  applyLinear,
  conversionTo,
  type Measures,
} from '../reference/index.ts';
import { readSpecRows, type SpecRow } from './bench-rows.ts';
import { CONVERSION_CODES } from './lab-files/figure-reader.ts';

export interface PriceListReading {
  readonly list: PriceList;
  /** Every problem of the file. */
  readonly findings: readonly Finding[];
}

type PriceRow = SpecRow<typeof PRICE_COLUMNS>;

/**
 * A price list of laboratories: one row is one analyte of one package.
 *
 * The price of a package stands once or the same in every row; names go through the analytes of the
 * bench; limits become canonical. A row with a problem is left out, and all problems are told at once.
 * @param measures those of the bench, for words whose size depends on the country
 */
export function readPriceList(
  table: RawTable,
  analytes: AnalyteIndex,
  measures: Measures | null,
): PriceListReading {
  const { rows, findings: cellFindings } = readSpecRows(
    { columns: PRICE_COLUMNS, eitherOf: [] },
    table,
    measures,
  );
  const findings: Finding[] = [...cellFindings];
  if (cellFindings.some(({ code }) => code === 'column-missing')) {
    return { list: { path: table.path, currency: null, packages: [] }, findings };
  }
  const groups = new Map<string, PriceRow[]>();
  for (const row of rows) {
    const key = JSON.stringify([row.values.lab, row.values.package]);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(row);
  }
  findings.push(...mixedCurrencies(rows));
  const packages = [...groups.values()].flatMap(
    (group) => packageOf(group, analytes, findings, hasUnreadRow(group, rows, table)) ?? [],
  );
  const currency = packages[0]?.price.currency ?? null;
  return { list: { path: table.path, currency, packages }, findings };
}

/** True where a row of the package could not be read: its price may stand there. */
function hasUnreadRow(
  [first]: readonly PriceRow[],
  rows: readonly PriceRow[],
  table: RawTable,
): boolean {
  if (first === undefined) return false;
  const { lab, package: name } = first.values;
  const cellOf = (cells: readonly string[], field: string): string =>
    (cells[first.source.fieldIndex.get(field) ?? -1] ?? '').trim();
  const read = new Set(rows.map(({ line }) => line));
  return table.rows.some(
    ({ line, cells }) =>
      !read.has(line) && cellOf(cells, 'lab') === lab && cellOf(cells, 'package') === name,
  );
}

function mixedCurrencies(rows: readonly PriceRow[]): Finding[] {
  const first = rows.find(({ values }) => values.price !== null)?.values.price ?? null;
  return rows.flatMap((row) => {
    const { price } = row.values;
    if (price === null || first === null || price.currency === first.currency) return [];
    return finding(
      'currency-mixed',
      `the price is in ${price.currency} and the first price of the file in ${first.currency}`,
      'keep one list a currency: amounts in two currencies are never added or compared',
      cellPlace(row, 'price'),
    );
  });
}

function packageOf(
  rows: readonly PriceRow[],
  analytes: AnalyteIndex,
  findings: Finding[],
  isPartlyRead: boolean,
): LabPackage | null {
  const [first] = rows;
  if (first === undefined) return null;
  const { lab, package: name } = first.values;
  const price = priceOf(rows, findings, isPartlyRead);
  const tests = new Map<string, PricedTest>();
  for (const row of rows) {
    const test = testOf(row, analytes, findings);
    if (test === null) continue;
    if (tests.has(test.analyte)) {
      findings.push(
        finding(
          'key-duplicate',
          `"${row.values.analyte}" stands twice in the package "${name}" of ${lab}`,
          'keep one of the two rows',
          cellPlace(row, 'analyte'),
        ),
      );
    } else {
      tests.set(test.analyte, test);
    }
  }
  if (price === null || tests.size === 0) return null;
  return { lab, name, price, tests: [...tests.values()], place: cellPlace(first, 'package') };
}

function priceOf(
  rows: readonly PriceRow[],
  findings: Finding[],
  isPartlyRead: boolean,
): Money | null {
  const priced = rows.filter(({ values }) => values.price !== null);
  const [first] = priced;
  const price = first?.values.price ?? null;
  if (first === undefined || price === null) {
    const [row] = rows;
    if (row === undefined || isPartlyRead) return null;
    findings.push(
      finding(
        'price-missing',
        `the package "${row.values.package}" of ${row.values.lab} has no price in any of its rows`,
        'write the price of the package a sample in one of its rows, such as 38 USD',
        cellPlace(row, 'price'),
      ),
    );
    return null;
  }
  for (const row of priced) {
    const other = row.values.price;
    if (other === null || other.currency !== price.currency || other.amount === price.amount) {
      continue;
    }
    findings.push(
      finding(
        'price-conflict',
        `"${other.text}" is not the price of the package "${row.values.package}" in line ${first.line}, "${price.text}"`,
        'keep one price a package; name a package with another price differently',
        cellPlace(row, 'price'),
      ),
    );
  }
  return price;
}

function testOf(row: PriceRow, analytes: AnalyteIndex, findings: Finding[]): PricedTest | null {
  const { analyte: name, limit, detection_limit, uncertainty } = row.values;
  const named = namedAnalyte(row, name, analytes, findings);
  if (named === null) return null;
  const canonical = (quantity: Quantity, field: string): number | null =>
    inCanonical(row, quantity, field, named, findings);
  const reporting = canonical(limit, 'limit');
  const detection = detection_limit === null ? null : canonical(detection_limit, 'detection_limit');
  if (reporting === null || (detection_limit !== null && detection === null)) return null;
  if (detection !== null && detection > reporting) {
    findings.push(
      finding(
        'price-limit-order',
        `the detection limit "${detection_limit?.text ?? ''}" is above the limit "${limit.text}"`,
        'the reporting limit stands in limit and is the higher of the two',
        cellPlace(row, 'detection_limit'),
      ),
    );
    return null;
  }
  return {
    analyte: named.analyte.key,
    limit: reporting,
    detectionLimit: detection,
    uncertainty: uncertainty?.value ?? null,
  };
}

interface NamedAnalyte {
  readonly analyte: Analyte;
  readonly basis: string | null;
}

function namedAnalyte(
  row: PriceRow,
  name: string,
  analytes: AnalyteIndex,
  findings: Finding[],
): NamedAnalyte | null {
  const known = analytes.byKey(name);
  if (known !== undefined) return { analyte: known, basis: null };
  const reading = analytes.resolve(name, null);
  if (reading.kind === 'found') return reading;
  const at = cellPlace(row, 'analyte');
  if (reading.kind === 'ambiguous') {
    const candidates = reading.candidates.map((item) => item.key).join(' or ');
    const message = `"${name}" could be ${candidates}`;
    findings.push(finding('analyte-ambiguous', message, `write ${candidates}`, at));
    return null;
  }
  const near = reading.kind === 'unknown' ? reading.suggestions : [];
  findings.push(
    finding(
      'analyte-unknown',
      `"${name}" is not a known analyte`,
      near.length === 0
        ? 'write its key, see `pourbench lookup`, or add it to analytes.csv of the bench'
        : `did you mean ${near.map((word) => `"${word}"`).join(' or ')}?`,
      at,
    ),
  );
  return null;
}

function inCanonical(
  row: PriceRow,
  quantity: Quantity,
  field: string,
  { analyte, basis }: NamedAnalyte,
  findings: Finding[],
): number | null {
  const at = cellPlace(row, field);
  const [part, ...others] = quantity.parts;
  if (part === undefined || others.length > 0 || part.times !== 1) {
    const remedy = 'write one figure with its unit, such as 0.5 ug/L';
    findings.push(
      finding('quantity-unreadable', `"${quantity.text}" is not one figure`, remedy, at),
    );
    return null;
  }
  const conversion = conversionTo(analyte, part.unit, basis);
  if (conversion.kind !== 'problem') {
    return applyLinear(part.number, conversion.ratio, conversion.offset);
  }
  const code = CONVERSION_CODES[conversion.problem];
  findings.push(finding(code, conversion.message, conversion.remedy, at));
  return null;
}
