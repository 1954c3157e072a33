import type { Bench, Interval, MineralRow } from '../../model/index.ts';
import type { MineralWater } from './mineral-waters.ts';

/** What a row says of its quantity; the rest is that of its water. */
export interface RowFigure
  extends Pick<MineralRow, 'group' | 'quantity' | 'name' | 'unit' | 'basis'>,
    Partial<
      Pick<
        MineralRow,
        | 'against'
        | 'estimate'
        | 'confidence'
        | 'class'
        | 'method'
        | 'reason'
        | 'other_units'
        | 'guidance'
        | 'notes'
      >
    > {
  readonly interval: Interval | null;
}

/** A row of `minerals/1`: a figure of a water, with what was not said left null or empty. */
export function mineralRowOf(bench: Bench, water: MineralWater, figure: RowFigure): MineralRow {
  const { interval, estimate = null } = figure;
  const names = water.samples.flatMap((at) => bench.tables.samples[at]?.values.sample ?? []);
  return {
    position: water.position,
    device: water.device,
    variant: water.variant,
    event: water.event,
    kind: water.kind,
    sample: names.length === 0 ? null : names.join('+'),
    group: figure.group,
    quantity: figure.quantity,
    name: figure.name,
    against: figure.against ?? null,
    unit: figure.unit,
    basis: figure.basis,
    low: finiteOrNull(interval?.low),
    estimate: finiteOrNull(estimate),
    high: finiteOrNull(interval?.high),
    confidence: figure.confidence ?? null,
    class: figure.class ?? null,
    method: figure.method ?? null,
    reason: figure.reason ?? null,
    other_units: figure.other_units ?? [],
    guidance: figure.guidance ?? [],
    notes: figure.notes ?? [],
  };
}

/** The number where it is one; null for what is unknown or without bound. */
export function finiteOrNull(value: number | null | undefined): number | null {
  return value !== null && value !== undefined && Number.isFinite(value) ? value : null;
}
