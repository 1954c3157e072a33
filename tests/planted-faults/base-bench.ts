import { BenchText, type Cells } from './bench-text.ts';
import { textRows } from './lab-file.ts';
import { CARBON, drainOf, measuredAgain, membrane, TAP, through, type Water } from './waters.ts';

/** Lab files of the base bench, one a day of sampling. */
export const MARCH = 'lab/march.csv';
export const APRIL = 'lab/april.csv';
export const MAY = 'lab/may.csv';

const DRAIN_RATIO = 1.5;
const RO_ONE = through(TAP, membrane(0.06));
const RO_TWO = through(TAP, membrane(0.1));
const INLINE = through(TAP, CARBON);
const SPIKED: Water = { ...TAP, Lead: 150, Copper: 3000 };

interface Sample {
  readonly name: string;
  readonly position: string;
  readonly device?: string;
  readonly of?: string;
  readonly kind?: string;
  readonly clock: string;
  readonly water: Water;
}

interface Day {
  readonly event: string;
  readonly file: string;
  readonly day: string;
  readonly next: string;
  readonly samples: readonly Sample[];
}

const BLANK: Water = Object.fromEntries(
  Object.keys(TAP)
    .filter((name) => name !== 'pH')
    .map((name) => [name, 0]),
);

const DAYS: readonly Day[] = [
  {
    event: 'march',
    file: MARCH,
    day: '2026-03-10',
    next: '2026-03-11',
    samples: [
      { name: 'm-feed', position: 'feed', clock: '08:00', water: TAP },
      { name: 'm-feed-dup', position: 'feed', of: 'm-feed', clock: '08:04', water: TAP },
      { name: 'm-ro-one', position: 'product', device: 'ro-one', clock: '08:30', water: RO_ONE },
      {
        name: 'm-ro-one-drain',
        position: 'drain',
        device: 'ro-one',
        clock: '08:31',
        water: drainOf(TAP, RO_ONE, DRAIN_RATIO),
      },
      { name: 'm-ro-two', position: 'product', device: 'ro-two', clock: '09:00', water: RO_TWO },
      { name: 'm-inline', position: 'product', device: 'inline', clock: '09:30', water: INLINE },
      { name: 'm-blank', position: 'blank', clock: '10:00', water: BLANK },
    ],
  },
  {
    event: 'april',
    file: APRIL,
    day: '2026-04-14',
    next: '2026-04-15',
    samples: [
      { name: 'a-feed', position: 'feed', clock: '08:00', water: TAP },
      { name: 'a-ro-one', position: 'product', device: 'ro-one', clock: '08:30', water: RO_ONE },
      { name: 'a-ro-two', position: 'product', device: 'ro-two', clock: '09:00', water: RO_TWO },
      { name: 'a-inline', position: 'product', device: 'inline', clock: '09:30', water: INLINE },
      { name: 'a-blank', position: 'blank', clock: '10:00', water: BLANK },
    ],
  },
  {
    event: 'may',
    file: MAY,
    day: '2026-05-12',
    next: '2026-05-13',
    samples: [
      { name: 'y-feed', position: 'feed', clock: '08:00', water: TAP },
      { name: 'y-inline', position: 'product', device: 'inline', clock: '08:30', water: INLINE },
    ],
  },
  {
    event: 'spike',
    file: MAY,
    day: '2026-05-12',
    next: '2026-05-13',
    samples: [
      { name: 's-feed', position: 'feed', kind: 'spiked', clock: '11:00', water: SPIKED },
      {
        name: 's-ro-one',
        position: 'product',
        device: 'ro-one',
        kind: 'spiked',
        clock: '11:30',
        water: through(SPIKED, membrane(0.06)),
      },
      {
        name: 's-inline',
        position: 'product',
        device: 'inline',
        kind: 'spiked',
        clock: '12:00',
        water: through(SPIKED, CARBON),
      },
    ],
  },
];

/** A clean bench: three devices, three days of sampling and every log. Invented throughout. */
export function baseBench(): BenchText {
  const bench = new BenchText({
    currency: 'USD',
    measures: 'us',
    reference_levels: ['US-EPA'],
  });
  addSamples(bench);
  addLogs(bench);
  return bench;
}

/** The lab's number of a sample. */
export function labNumber(sample: string): string {
  return `L-${sample}`;
}

function addSamples(bench: BenchText): void {
  const labFiles = new Map<string, Cells[]>();
  const samples: Cells[] = [];
  const bottles: Cells[] = [];
  let seed = 0;
  for (const { event, file, day, next, samples: taken } of DAYS) {
    for (const { name, position, device, of, kind, clock, water } of taken) {
      const again = position === 'blank' ? water : measuredAgain(water, seed);
      seed += 1;
      const rows = textRows(labNumber(name), day, again);
      labFiles.set(file, [...(labFiles.get(file) ?? []), ...rows]);
      samples.push({
        sample: name,
        position,
        device: device ?? '',
        event,
        kind: kind ?? 'natural',
        of: of ?? '',
        taken_at: `${day}T${clock}`,
      });
      bottles.push({
        sample: name,
        lab: file.replace('lab/', '').replace('.csv', ''),
        lab_sample: labNumber(name),
        preservative: 'kit of bottles',
        received_at: `${next}T09:00`,
        receipt_temperature: '4 C',
      });
    }
  }
  bench.add('samples.csv', samples).add('bottles.csv', bottles);
  for (const [file, rows] of labFiles) bench.add(file, rows);
}

function addLogs(bench: BenchText): void {
  const own = { acquired: 'bought', interests: 'none' };
  const ro = { technology: 'reverse-osmosis', form: 'under-sink', drain_line: 'yes', ...own };
  bench
    .add('devices.csv', [
      { device: 'ro-one', name: 'Membrane One', ...ro, price: '300 USD' },
      { device: 'ro-two', name: 'Membrane Two', ...ro, price: '250 USD', tank: 'yes' },
      {
        device: 'inline',
        name: 'Inline',
        technology: 'carbon',
        form: 'inline',
        drain_line: 'no',
        ...own,
        price: '80 USD',
      },
    ])
    .add('pours.csv', [
      {
        device: 'ro-one',
        run: '1',
        volume: '250 ml',
        time: '10.0 s',
        temperature: '18 C',
        pressure: '60 psi',
      },
      {
        device: 'ro-one',
        run: '2',
        volume: '500 ml',
        time: '20.3 s',
        temperature: '18 C',
        pressure: '60 psi',
      },
      {
        device: 'ro-one',
        run: '3',
        volume: '1 L',
        time: '0:39.8',
        temperature: '18 C',
        pressure: '59 psi',
      },
      {
        device: 'ro-one',
        run: '4',
        volume: '1 L',
        time: '40.4 s',
        temperature: '64 F',
        pressure: '60 psi',
      },
      {
        device: 'inline',
        run: '1',
        volume: '1 L',
        time: '21.4 s',
        temperature: '18 C',
        pressure: '60 psi',
      },
      {
        device: 'inline',
        run: '2',
        volume: '1 gal',
        time: '1:20.2',
        temperature: '18 C',
        pressure: '60 psi',
      },
      {
        device: 'inline',
        run: '3',
        volume: '1 L',
        time: '21.6 s',
        temperature: '18 C',
        pressure: '60 psi',
      },
    ])
    .add('drain-runs.csv', [
      run('ro-one', '1', '500 ml', '755 ml'),
      run('ro-one', '2', '1 L', '1.51 L'),
      run('ro-one', '3', '2 L', '3.0 L'),
      run('ro-one', '4', '4 L', '5.98 L'),
      run('ro-two', '1', '4 L', '11.9 L', 'shut-off'),
      run('ro-two', '2', '4 L', '12.2 L', 'shut-off'),
      run('ro-two', '3', '1 gal', '11.4 L', 'shut-off'),
    ])
    .add('flush-rules.csv', [
      {
        device: 'ro-one',
        rule: 'idle-flush',
        trigger: 'idle',
        after: '10 min',
        switchable: 'yes',
        source: 'measured',
      },
      {
        device: 'ro-one',
        rule: 'start-purge',
        trigger: 'start',
        after: '2 h',
        volume: '300 ml',
        source: 'measured',
      },
    ])
    .add('flushes.csv', [
      { device: 'ro-one', rule: 'idle-flush', volume: '820 ml', at: '2026-03-20T09:00' },
      { device: 'ro-one', rule: 'idle-flush', volume: '28 fl oz', at: '2026-03-20T10:00' },
      { device: 'ro-one', rule: 'idle-flush', volume: '830 ml', at: '2026-03-21T09:00' },
    ])
    .add('tanks.csv', [
      {
        device: 'ro-two',
        shell: '12 L',
        precharge: '7 psi',
        feed_pressure: '60 psi',
        stop: '40 psi',
        restart: '33 psi',
        permeate_flow: '0.2 L/min',
        reject_flow: '0.6 L/min',
      },
    ])
    .add('idle-tds.csv', [
      {
        device: 'ro-one',
        idle: '8 h',
        drawn: '100 ml',
        reading: 'single',
        tds: '60 ppm',
        temperature: '20 C',
      },
    ])
    .add('scenarios.csv', [
      {
        scenario: 'family',
        weekdays: 'daily',
        window: '07:00-09:00',
        pours_per_day: '4',
        volume_each: '250 ml',
      },
    ])
    .add('parts.csv', [
      { device: 'ro-one', part: 'membrane', price: '79 USD', lasts: '24 months', capacity: '' },
      { device: 'inline', part: 'carbon block', price: '36 USD', lasts: '', capacity: '750 gal' },
    ])
    .add('claims.csv', [
      {
        device: 'inline',
        claim: 'less chlorine',
        analyte: 'chlorine, free',
        comparator: 'at-least',
        value: '95 %',
        evidence: 'stated',
      },
    ]);
}

function run(
  device: string,
  name: string,
  clean: string,
  drain: string,
  until = 'tap-closed',
): Cells {
  return {
    device,
    run: name,
    clean,
    drain,
    collected_until: until,
    starts: '1',
    temperature: '18 C',
    pressure: '60 psi',
  };
}
