/** A price per volume or energy. */
export interface Tariff {
  /** Money per litre of a volume, per kilowatt-hour of an energy. */
  readonly amount: number;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly text: string;
}

/** What the cost of ownership is computed with; a tariff is null where the bench states none. */
export interface CostSettings {
  readonly water: Tariff | null;
  readonly sewer: Tariff | null;
  readonly electricity: Tariff | null;
  readonly bottledWater: Tariff | null;
  readonly years: number;
  /** Rate per year, 0.03 is 3 %. */
  readonly discountRate: number;
  /** Currency of totals; null where bench.json names none. */
  readonly currency: string | null;
}
