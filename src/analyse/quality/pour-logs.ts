import { type Finding, finding } from '../../findings/index.ts';
import { type BenchRow, cellPlace, STANDARD } from '../../model/index.ts';
import { measuredVolume } from '../quantity-volume.ts';
import { groupedBy } from './grouped-by.ts';
import { median } from './median.ts';
import type { SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** Pours of one device and state whose flow differs by more are not one kind of pour. */
const FACTOR = 1.5;

/** A tank empties while it is drawn from. */
const TANK_FACTOR = 2.5;

/** With fewer fellows nobody can say which one is odd. */
const FELLOWS = 2;

interface Drawn {
  readonly row: BenchRow<'pours'>;
  readonly flow: number;
}

/**
 * A pour whose flow is far from its fellows of the same device and state: a clock read as hours, a
 * vessel noted wrongly, a tap half open. Split and cumulative readings count by run.
 */
export function pourFindings(view: SampleResults): Finding[] {
  const { pours, devices } = view.bench.tables;
  const tanks = new Set(
    devices.flatMap(({ values }) => (values.tank === 'yes' ? values.device : [])),
  );
  const groups = groupedBy(
    pours,
    ({ values }) => `${values.device}\t${values.variant ?? STANDARD}`,
  );
  return [...groups.values()].flatMap((rows) => {
    const drawn = drawnIn(rows);
    const allowed = tanks.has(rows[0]?.values.device ?? '') ? TANK_FACTOR : FACTOR;
    return drawn.flatMap((pour) => unlike(pour, drawn, allowed));
  });
}

/** Single pours, and runs of split or cumulative readings as one. */
function drawnIn(rows: readonly BenchRow<'pours'>[]): Drawn[] {
  const parts = rows.flatMap((row) => {
    const quantity = row.values.volume ?? row.values.mass;
    if (quantity === null) return [];
    const { volumeL } = measuredVolume(quantity, row.values.temperature);
    return { row, volumeL, timeS: row.values.time.value };
  });
  const isSingle = (row: BenchRow<'pours'>) => (row.values.reading ?? 'single') === 'single';
  const singles = parts.filter(({ row }) => isSingle(row));
  const runs = groupedBy(
    parts.filter(({ row }) => !isSingle(row)),
    ({ row }) => `${row.values.run}\t${row.values.reading}`,
  );
  const totals = [...runs.values()].flatMap((run) => {
    const last = run.at(-1);
    if (last === undefined) return [];
    if (last.row.values.reading === 'cumulative') return last;
    const volumeL = run.reduce((sum, part) => sum + part.volumeL, 0);
    const timeS = run.reduce((sum, part) => sum + part.timeS, 0);
    return { row: last.row, volumeL, timeS };
  });
  return [...singles, ...totals].map(({ row, volumeL, timeS }) => ({
    row,
    flow: (volumeL / timeS) * 60,
  }));
}

function unlike(pour: Drawn, all: readonly Drawn[], allowed: number): Finding[] {
  const others = all.filter((other) => other !== pour).map(({ flow }) => flow);
  const middle = median(others);
  if (others.length < FELLOWS || middle === null) return [];
  const times = pour.flow / middle;
  if (times <= allowed && times >= 1 / allowed) return [];
  const isOddOneOut = others.every((flow) => Math.max(flow / middle, middle / flow) <= allowed);
  if (!isOddOneOut) return [];
  return [
    finding(
      'pour-unlike',
      `the pour runs at ${shortNumber(pour.flow)} L/min and the ${others.length} others of ` +
        `${pour.row.values.device} at about ${shortNumber(middle)}`,
      'check volume, time and their units; a pour under other conditions needs a note and a variant',
      cellPlace(pour.row, 'time'),
    ),
  ];
}
