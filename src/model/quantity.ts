import type { Unit } from '../reference/index.ts';

/** One number with its unit inside a cell: `47.5 fl oz`, or the `1 L` of `1 L 250 mL`. */
export interface QuantityPart {
  /** How often the part counts: the 2 of `2 x 500 ml`; 1 otherwise. */
  readonly times: number;
  readonly number: number;
  readonly unit: Unit;
  /** Where the unit was read: in the cell, or in the header of its column. */
  readonly unitFrom: 'cell' | 'header';
}

/**
 * A quantity as a person wrote it and what it means.
 *
 * `value` is in the core unit of its dimension: L, g, s, L/min, degC (a temperature), kPa (gauge
 * pressure as logged), W, mg/L.
 */
export interface Quantity {
  readonly value: number;
  readonly dimension: string;
  readonly text: string;
  readonly parts: readonly QuantityPart[];
  /** The writer marked the figure as approximate (`~1.2 L`). */
  readonly isApproximate: boolean;
}

/** An amount of money; currencies are never mixed or converted. */
export interface Money {
  readonly amount: number;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly text: string;
}

/**
 * A wall-clock time without offset.
 *
 * `seconds` counts from 1970-01-01T00:00:00 on that wall clock, so that differences and weekdays
 * can be computed without any time zone.
 */
export interface WallTime {
  readonly text: string;
  readonly seconds: number;
  readonly hasTime: boolean;
}

/** A daily window of local time in seconds after midnight; `toS` below `fromS` wraps midnight. */
export interface DailyWindow {
  readonly text: string;
  readonly fromS: number;
  readonly toS: number;
}

/** Monday first. */
export type Weekdays = readonly [boolean, boolean, boolean, boolean, boolean, boolean, boolean];
