import { type Finding, finding } from '../findings/index.ts';
import { type Bench, type BenchRow, cellPlace, STANDARD } from '../model/index.ts';
import { massAssumed } from './flush-volumes.ts';
import { type MeasuredVolume, measuredVolume } from './quantity-volume.ts';

/** One run of pours: the volume and the time that count for its flow. */
export interface PourRun {
  readonly run: string;
  readonly pours: readonly {
    readonly row: BenchRow<'pours'>;
    readonly volume: MeasuredVolume;
    readonly timeS: number;
  }[];
  readonly volumeL: number;
  readonly timeS: number;
}

/** Flow of a device in one state: all volume over all time. */
export interface PourFlow {
  readonly device: string;
  readonly variant: string;
  readonly runs: readonly PourRun[];
  readonly volumeL: number;
  readonly timeS: number;
  readonly flowLPerMin: number;
}

export interface PourFlows {
  readonly flows: readonly PourFlow[];
  readonly findings: readonly Finding[];
}

/**
 * Flow of every device and variant with timed pours, in the order of devices.csv.
 *
 * Single and split readings add up; of cumulative readings the last of the run counts, since it
 * holds the earlier ones.
 */
export function pourFlows(bench: Bench): PourFlows {
  const findings: Finding[] = [];
  const flows = bench.tables.devices.flatMap(({ values: { device } }) => {
    const rows = bench.tables.pours.filter((row) => row.values.device === device);
    const variants = [...new Set(rows.map((row) => row.values.variant ?? STANDARD))];
    return variants.map((variant) =>
      flowOf(
        device,
        variant,
        rows.filter((row) => (row.values.variant ?? STANDARD) === variant),
        findings,
      ),
    );
  });
  return { flows, findings };
}

function flowOf(
  device: string,
  variant: string,
  rows: readonly BenchRow<'pours'>[],
  findings: Finding[],
): PourFlow {
  const names = [...new Set(rows.map((row) => row.values.run))];
  const runs = names.map((run) =>
    readRun(
      run,
      rows.filter((row) => row.values.run === run),
      findings,
    ),
  );
  const volumeL = runs.reduce((sum, run) => sum + run.volumeL, 0);
  const timeS = runs.reduce((sum, run) => sum + run.timeS, 0);
  return { device, variant, runs, volumeL, timeS, flowLPerMin: (volumeL / timeS) * 60 };
}

function readRun(run: string, rows: readonly BenchRow<'pours'>[], findings: Finding[]): PourRun {
  const pours = rows.flatMap((row) => {
    const quantity = row.values.volume ?? row.values.mass;
    if (quantity === null) return [];
    const volume = measuredVolume(quantity, row.values.temperature);
    if (volume.weighedAt?.isAssumed === true) findings.push(massAssumed(row, 'mass'));
    return { row, volume, timeS: row.values.time.value };
  });
  const cumulative = pours.filter(({ row }) => row.values.reading === 'cumulative');
  for (const [index, pour] of cumulative.entries()) {
    const earlier = cumulative[index - 1];
    if (earlier === undefined) continue;
    if (pour.volume.volumeL < earlier.volume.volumeL || pour.timeS <= earlier.timeS) {
      findings.push(
        finding(
          'pour-reading-order',
          'a cumulative reading is not above the one before it',
          'give a new run its own number, or mark the readings as split or single',
          cellPlace(pour.row, 'time'),
        ),
      );
    }
  }
  const last = cumulative.at(-1);
  const separate = pours.filter(({ row }) => row.values.reading !== 'cumulative');
  const counted = last === undefined ? separate : [...separate, last];
  return {
    run,
    pours,
    volumeL: counted.reduce((sum, pour) => sum + pour.volume.volumeL, 0),
    timeS: counted.reduce((sum, pour) => sum + pour.timeS, 0),
  };
}
