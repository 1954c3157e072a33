import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace, type Money, type PlacedRow } from '../../model/index.ts';
import type { SampleResults } from './sample-results.ts';

/** Parts, prices and claims that later figures would stumble over. */
export function listFindings(view: SampleResults): Finding[] {
  return [...endlessParts(view), ...otherCurrencies(view), ...unknownClaims(view)];
}

function endlessParts(view: SampleResults): Finding[] {
  return view.bench.tables.parts.flatMap((row) => {
    if (row.values.lasts !== null || row.values.capacity !== null) return [];
    return finding(
      'part-life-missing',
      `"${row.values.part}" says neither how long it lasts nor how much it treats`,
      'write lasts or capacity; without them its yearly cost is not known',
      cellPlace(row, 'lasts'),
    );
  });
}

/** Money in another currency than that of the bench, or than the first price without one. */
function otherCurrencies(view: SampleResults): Finding[] {
  const { devices, parts } = view.bench.tables;
  const prices = [...devices, ...parts].flatMap(
    (row): { readonly row: PlacedRow; readonly price: Money }[] =>
      row.values.price === null ? [] : [{ row, price: row.values.price }],
  );
  const own = view.bench.settings.currency ?? prices[0]?.price.currency;
  return prices.flatMap(({ row, price }) => {
    if (price.currency === own) return [];
    return finding(
      'currency-differs',
      `"${price.text}" is in ${price.currency} and the bench counts in ${own ?? 'none'}`,
      'write the price in the currency of the bench; currencies are never converted',
      cellPlace(row, 'price'),
    );
  });
}

function unknownClaims(view: SampleResults): Finding[] {
  return view.bench.tables.claims.flatMap((row) => {
    const { analyte } = row.values;
    if (analyte === null) return [];
    const reading = view.bench.analytes.resolve(analyte, null);
    if (reading.kind === 'found') return [];
    const near = reading.kind === 'unknown' ? reading.suggestions : [];
    return finding(
      'claim-analyte-unknown',
      `"${analyte}" is not one analyte of the tables or of analytes.csv; the claim stays untested`,
      near.length === 0 ? 'name one analyte as the lab does' : `did you mean ${near.join(' or ')}?`,
      cellPlace(row, 'analyte'),
    );
  });
}
