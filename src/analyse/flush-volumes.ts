import { type Finding, finding } from '../findings/index.ts';
import { type Bench, type BenchRow, cellPlace, type Quantity } from '../model/index.ts';
import { type MeasuredVolume, measuredVolume } from './quantity-volume.ts';

/** The volume one flush of a rule spends, and what it rests on. */
export interface FlushVolume {
  readonly rule: BenchRow<'flushRules'>;
  readonly volumeL: number;
  /** The flushes that were averaged; empty where the rule states its volume. */
  readonly measured: readonly {
    readonly row: BenchRow<'flushes'>;
    readonly volume: MeasuredVolume;
  }[];
  readonly findings: readonly Finding[];
}

/**
 * The flush volume of a rule: as stated in flush-rules.csv, else the mean of its flushes.
 * @returns null where neither exists
 */
export function flushVolume(bench: Bench, rule: BenchRow<'flushRules'>): FlushVolume | null {
  const stated: Quantity | null = rule.values.volume;
  if (stated !== null) return { rule, volumeL: stated.value, measured: [], findings: [] };
  const findings: Finding[] = [];
  const measured = bench.tables.flushes.flatMap((row) => {
    const isOfRule =
      row.values.device === rule.values.device && row.values.rule === rule.values.rule;
    const quantity = row.values.volume ?? row.values.mass;
    if (!isOfRule || quantity === null) return [];
    const volume = measuredVolume(quantity, null);
    if (volume.weighedAt !== null) {
      findings.push(massAssumed(row, row.values.volume === null ? 'mass' : 'volume'));
    }
    return { row, volume };
  });
  if (measured.length === 0) return null;
  const total = measured.reduce((sum, { volume }) => sum + volume.volumeL, 0);
  return { rule, volumeL: total / measured.length, measured, findings };
}

/** A mass without a logged temperature was taken at the assumed one. */
export function massAssumed(
  row: BenchRow<'flushes' | 'pours' | 'drainRuns'>,
  field: string,
): Finding {
  return finding(
    'mass-density-assumed',
    'the mass was turned into a volume at 20 °C, as no temperature is logged',
    'log the temperature; from 4 to 30 °C the volume changes by 0.4 %',
    cellPlace(row, field),
  );
}
