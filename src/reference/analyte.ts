/** A basis on which an analyte is reported: `as N`, with the grams of one counted unit. */
export interface AnalyteBasis {
  readonly basis: string;
  /** Null where the basis is a convention without a molar mass. */
  readonly gPerMol: number | null;
}

/**
 * What a laboratory measured.
 *
 * `unit` and `basis` are the canonical ones every figure is kept in. `bases` is empty where only one
 * basis exists. `aliasBasis` holds the aliases that fix the basis by themselves. `members` are the
 * keys added up in a sum.
 */
export interface Analyte {
  readonly key: string;
  readonly name: string;
  readonly cas: string | null;
  readonly group: string;
  readonly kind: string;
  readonly molarMass: number | null;
  readonly charge: number | null;
  readonly unit: string;
  readonly basis: string | null;
  readonly bases: readonly AnalyteBasis[];
  readonly aliases: readonly string[];
  readonly aliasBasis: Readonly<Record<string, string>>;
  readonly members: readonly string[];
  readonly note: string | null;
}
