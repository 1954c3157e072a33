import type { Place } from '../findings/index.ts';
import type { Dimension } from '../reference/index.ts';
import { AMOUNT_DIMENSIONS, key, money, positive, required, text } from './columns.ts';
import type { Money } from './quantity.ts';

/** Limits of a lab may be stated in anything that converts to the unit of the analyte. */
const LIMIT_DIMENSIONS: readonly Dimension[] = [
  ...AMOUNT_DIMENSIONS,
  'conductivity',
  'colour',
  'odour',
];

/** Columns of a price list: one row is one analyte of one package of one lab. */
export const PRICE_COLUMNS = {
  lab: required(key('the laboratory', 'lab-one')),
  package: required(key('the package; a single test is a package of one', 'metals')),
  price: money('price of the package a sample; stated once, or the same in every row', '38 USD'),
  analyte: required(text('key, name or alias of the analyte', 'lead')),
  limit: required(positive(LIMIT_DIMENSIONS, 'reporting limit of the lab', '0.5 ug/L')),
  detection_limit: positive(
    LIMIT_DIMENSIONS,
    'detection limit, where the lab reports what lies between its limits',
    '0.1 ug/L',
  ),
  uncertainty: positive(
    ['ratio'],
    'relative standard uncertainty the lab states with its results, coverage factor divided out',
    '6 %',
  ),
} as const;

/** One analyte of a package, in the canonical unit. */
export interface PricedTest {
  readonly analyte: string;
  readonly limit: number;
  /** Null where the lab gives one limit only. */
  readonly detectionLimit: number | null;
  /** Relative standard uncertainty; null where the lab states none. */
  readonly uncertainty: number | null;
}

/** What a lab sells at one price a sample. */
export interface LabPackage {
  readonly lab: string;
  readonly name: string;
  readonly price: Money;
  readonly tests: readonly PricedTest[];
  readonly place: Place;
}

/** A price list, read: one currency throughout. */
export interface PriceList {
  readonly path: string;
  /** Null for a list without packages. */
  readonly currency: string | null;
  readonly packages: readonly LabPackage[];
}
