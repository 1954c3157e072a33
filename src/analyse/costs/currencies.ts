import { type Finding, finding, place } from '../../findings/index.ts';
import { type Bench, type CostSettings, cellPlace } from '../../model/index.ts';

/**
 * The one currency of all amounts, and every amount that is in another.
 *
 * It is the currency of bench.json, else that of the first amount. Nothing is ever converted.
 */
export function commonCurrency(
  bench: Bench,
  settings: CostSettings,
): { readonly currency: string | null; readonly findings: readonly Finding[] } {
  const amounts = [
    ...bench.tables.devices.flatMap((row) =>
      row.values.price === null
        ? []
        : { currency: row.values.price.currency, at: cellPlace(row, 'price') },
    ),
    ...bench.tables.parts.map((row) => ({
      currency: row.values.price.currency,
      at: cellPlace(row, 'price'),
    })),
    ...[settings.water, settings.sewer, settings.electricity, settings.bottledWater].flatMap(
      (tariff) =>
        tariff === null
          ? []
          : {
              currency: tariff.currency,
              at: place({ file: 'bench.json', field: 'tariffs', cell: tariff.text }),
            },
    ),
  ];
  const currency = settings.currency ?? amounts[0]?.currency ?? null;
  const findings = amounts
    .filter((amount) => amount.currency !== currency)
    .map((amount) =>
      finding(
        'currency-mixed',
        `the amount is in ${amount.currency} and the costs are in ${currency}; currencies are not converted`,
        `write the amount in ${currency}, at a rate and day of your own`,
        amount.at,
      ),
    );
  return { currency, findings };
}
