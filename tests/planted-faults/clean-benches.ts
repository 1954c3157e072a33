import { BenchText, type Cells } from './bench-text.ts';
import { signRows, textRows } from './lab-file.ts';
import {
  CARBON,
  drainOf,
  LAB_LIST,
  measuredAgain,
  membrane,
  SALTS,
  SOFT,
  share,
  TAP,
  through,
  type Water,
  withSums,
} from './waters.ts';

/** Benches without a fault, each of another kind. All invented. */
export const CLEAN_BENCHES: readonly { readonly name: string; readonly bench: () => BenchText }[] =
  [
    { name: 'one pitcher in metric units, a sign column, no bottles.csv', bench: onePitcher },
    { name: 'permeate of three days and no feed', bench: permeateOnly },
    { name: 'two tank devices with their tanks', bench: tankDevices },
    { name: 'a mineral stage on soft water, with a stage sample', bench: mineralStage },
    { name: 'a softener that trades hardness for sodium', bench: softener },
    { name: 'a spiked batch with four analytes', bench: spikedBatch },
    { name: 'rain water full of bacteria', bench: rainWater },
    { name: 'bench logs and a recording without any lab', bench: logsOnly },
    { name: 'two labs, PFAS in ng/L, semicolons and a duplicate near its limit', bench: twoLabs },
    { name: 'very hard water with a drain sample and three jurisdictions', bench: hardWater },
    { name: 'a void sample full of nonsense and its retake', bench: voidSample },
  ];

const OWN = { acquired: 'bought', interests: 'none' };

function device(name: string, technology: string, form: string, more: Cells = {}): Cells {
  return { device: name, name: `The ${name}`, technology, form, drain_line: 'no', ...OWN, ...more };
}

/** Each event has a day of its own: the one of its number of letters. */
function dayOf(event: string): string {
  return `2026-06-0${event.length}`;
}

function sample(name: string, position: string, event: string, more: Cells = {}): Cells {
  return { sample: name, position, event, taken_at: `${dayOf(event)}T08:00`, ...more };
}

function onePitcher(): BenchText {
  const product = through(measuredAgain(TAP, 5), { ...CARBON, ...share(SALTS, 0.93) });
  return new BenchText({ measures: 'metric', currency: 'EUR' })
    .add('devices.csv', [device('jug', 'mixed', 'pitcher', { price: '29 EUR' })])
    .add('samples.csv', [
      sample('1', 'feed', 'one'),
      sample('2', 'product', 'one', { device: 'jug' }),
    ])
    .add('lab/lab.csv', [
      ...signRows('1', '2026-06-03', measuredAgain(TAP, 1)),
      ...signRows('2', '2026-06-03', product),
    ])
    .add('pours.csv', [
      { device: 'jug', run: '1', 'volume (ml)': '1000', 'time (s)': '245' },
      { device: 'jug', run: '2', 'volume (ml)': '1000', 'time (s)': '251' },
      { device: 'jug', run: '3', 'volume (ml)': '500', 'time (s)': '139' },
    ])
    .add('parts.csv', [
      { device: 'jug', part: 'cartridge', 'price (EUR)': '6', lasts: '2 months' },
    ]);
}

function permeateOnly(): BenchText {
  const days = ['one', 'three', 'four4'];
  const rows = days.flatMap((event, at) =>
    textRows(`P-${at}`, dayOf(event), measuredAgain(through(TAP, membrane(0.04)), at)),
  );
  return new BenchText({ reference_levels: ['US-EPA'] })
    .add('devices.csv', [device('ro', 'reverse-osmosis', 'under-sink', { drain_line: 'yes' })])
    .add(
      'samples.csv',
      days.map((event, at) => sample(`P-${at}`, 'product', event, { device: 'ro' })),
    )
    .add('lab/lab.csv', rows);
}

function tankDevices(): BenchText {
  const tank = { drain_line: 'yes', tank: 'yes' };
  const run = (name: string, drain: string, more: Cells = {}): Cells => ({
    device: name,
    run: drain,
    clean: '3 L',
    drain,
    collected_until: 'shut-off',
    starts: '1',
    tank_before: '38 psi',
    tank_after: '262 kPa',
    pressure: '4.1 bar',
    ...more,
  });
  return new BenchText({ measures: 'us' })
    .add('devices.csv', [
      device('t-one', 'reverse-osmosis', 'under-sink', tank),
      device('t-two', 'reverse-osmosis', 'under-sink', tank),
    ])
    .add('tanks.csv', [
      {
        device: 't-one',
        shell: '12 L',
        precharge: '7 psi',
        feed_pressure: '60 psi',
        stop: '40 psi',
        restart: '30 psi',
      },
      {
        device: 't-two',
        shell: '3.2 gal',
        precharge: '50 kPa',
        feed_pressure: '400 kPa',
        stop: '270 kPa',
        restart: '210 kPa',
      },
    ])
    .add('drain-runs.csv', [
      run('t-one', '9.1 L'),
      run('t-one', '9.3 L'),
      run('t-one', '8.8 L'),
      run('t-two', '12 L', { clean: '1 L', drain: '4.6 L' }),
      run('t-two', '13 L', { clean: '4 L', drain: '16 L' }),
    ])
    .add('pours.csv', [
      { device: 't-one', run: '1', volume: '250 ml', time: '5.1 s' },
      { device: 't-one', run: '2', volume: '1 qt', time: '20 s' },
      { device: 't-one', run: '3', volume: '4 L', time: '2:10' },
    ]);
}

function mineralStage(): BenchText {
  const stage = through(SOFT, membrane(0.08));
  const added: Water = withSums({
    ...stage,
    'Calcium as Ca': 14,
    'Magnesium as Mg': 4.2,
    'Alkalinity, Total as CaCO3': 54,
    pH: 8.6,
  });
  const more = { drain_line: 'no', mineral_stage: 'yes' };
  return new BenchText({})
    .add('devices.csv', [device('counter', 'reverse-osmosis', 'countertop', more)])
    .add('samples.csv', [
      sample('feed', 'feed', 'one'),
      sample('stage', 'stage', 'one', { device: 'counter' }),
      sample('product', 'product', 'one', { device: 'counter' }),
    ])
    .add('lab/lab.csv', [
      ...textRows('feed', '2026-06-03', measuredAgain(SOFT, 1)),
      ...textRows('stage', '2026-06-03', measuredAgain(stage, 2)),
      ...textRows('product', '2026-06-03', measuredAgain(added, 3)),
    ]);
}

function softener(): BenchText {
  const hardnessMeq = (60 / 40.078) * 2 + (14 / 24.305) * 2;
  const soft = withSums({
    ...TAP,
    'Calcium as Ca': 1.2,
    'Magnesium as Mg': 0.28,
    Sodium: 20.4 + 22.99 * 0.98 * hardnessMeq,
  });
  return new BenchText({})
    .add('devices.csv', [device('resin', 'ion-exchange', 'inline')])
    .add('samples.csv', [
      sample('in', 'feed', 'one'),
      sample('out', 'product', 'one', { device: 'resin' }),
    ])
    .add('lab/results.csv', [
      ...textRows('in', '2026-06-03', measuredAgain(TAP, 3)),
      ...textRows('out', '2026-06-03', measuredAgain(soft, 4)),
    ]);
}

function spikedBatch(): BenchText {
  const list = LAB_LIST.filter(({ name }) =>
    ['Lead', 'Copper', 'pH', 'Specific Conductance'].includes(name),
  );
  const feed: Water = { ...TAP, Lead: 152, Copper: 2980, pH: 6.5 };
  const devices = ['ro', 'jug', 'block'];
  const waters = [
    through(feed, membrane(0.04)),
    through(feed, CARBON),
    through(feed, { Lead: 0.2 }),
  ];
  return new BenchText({ currency: 'USD' })
    .add('devices.csv', [
      device('ro', 'reverse-osmosis', 'under-sink', { drain_line: 'yes' }),
      device('jug', 'mixed', 'pitcher'),
      device('block', 'carbon', 'inline'),
    ])
    .add('samples.csv', [
      sample('S0', 'feed', 'spike', { kind: 'spiked' }),
      ...devices.map((name, at) =>
        sample(`S${at + 1}`, 'product', 'spike', { kind: 'spiked', device: name }),
      ),
    ])
    .add('lab/spike.csv', [
      ...textRows('S0', '2026-06-05', feed, list),
      ...waters.flatMap((water, at) =>
        textRows(`S${at + 1}`, '2026-06-05', measuredAgain(water, at), list),
      ),
    ]);
}

function rainWater(): BenchText {
  const rows = (name: string, results: Cells): Cells[] =>
    Object.entries(results).map(([analyte, result]) => ({
      'Sample ID': name,
      Analyte: analyte,
      Result: result,
      Units: analyte === 'Turbidity' ? 'NTU' : 'MPN/100mL',
      RL: analyte === 'Turbidity' ? '0.1' : '1',
    }));
  return new BenchText({})
    .add('devices.csv', [device('ultra', 'ultrafiltration', 'countertop')])
    .add('samples.csv', [
      { ...sample('R1', 'feed', 'rain'), taken_at: '2026-06-04T09:00' },
      { ...sample('R2', 'product', 'rain', { device: 'ultra' }), taken_at: '2026-06-04T09:20' },
    ])
    .add('bottles.csv', [
      bottle('R1', 'rain', 'B-1', '2026-06-04T13:00', '9.5 C'),
      bottle('R2', 'rain', 'B-2', '2026-06-04T13:00', '9.5 C'),
    ])
    .add('lab/rain.csv', [
      ...rows('B-1', { 'Total Coliforms': '>2419.6', 'E. coli': '38.4', Turbidity: '3.8' }),
      ...rows('B-2', { 'Total Coliforms': '<1', 'E. coli': '<1', Turbidity: '<0.1' }),
    ]);
}

function bottle(name: string, lab: string, number: string, at: string, warm: string): Cells {
  return { sample: name, lab, lab_sample: number, received_at: at, receipt_temperature: warm };
}

function logsOnly(): BenchText {
  const split = (run: string, volume: string, time: string): Cells => ({
    device: 'ro',
    run,
    volume,
    time,
    reading: 'split',
  });
  const total = (run: string, volume: string, time: string): Cells => ({
    device: 'ro',
    run,
    volume,
    time,
    reading: 'cumulative',
  });
  return new BenchText({ measures: 'imperial' })
    .add('devices.csv', [
      device('ro', 'reverse-osmosis', 'under-sink', { drain_line: 'yes', uv: 'yes' }),
    ])
    .add('pours.csv', [
      split('1', '52 ml', '1 s'),
      split('1', '448 ml', '13.6 s'),
      split('2', '50 ml', '1 s'),
      split('2', '450 ml', '13.9 s'),
      total('3', '250 ml', '7.2 s'),
      total('3', '1 L', '29.4 s'),
      total('4', '1/2 gal', '1:07'),
    ])
    .add('drain-runs.csv', [
      {
        device: 'ro',
        run: '1',
        clean: '498 g',
        drain: '801 g',
        collected_until: 'tap-closed',
        starts: '1',
        temperature: '12 C',
      },
      {
        device: 'ro',
        run: '2',
        clean: '2 L',
        drain: '2.9 L',
        collected_until: 'tap-closed',
        starts: '1',
      },
      {
        device: 'ro',
        run: '3',
        clean: '4 L',
        drain: '5.7 L',
        collected_until: 'tap-closed',
        starts: '1',
      },
    ])
    .add('flush-rules.csv', [
      { device: 'ro', rule: 'purge', trigger: 'start', after: '2 h', volume: '350 ml' },
    ])
    .add('usage/week.csv', [
      { at: '2026-06-01T00:00', volume: '', what: 'power-on' },
      { at: '2026-06-01T07:10', volume: '250 ml', what: '' },
      { at: '2026-06-02T07:10', volume: '1 pint', what: 'pour' },
      { at: '2026-06-03T00:00', volume: '', what: 'end' },
    ])
    .add('energy.csv', [{ device: 'ro', state: 'standby', 'power (W)': '1.4' }]);
}

function twoLabs(): BenchText {
  const pfas = (number: string, results: Cells): Cells[] =>
    Object.entries(results).map(([name, value]) => ({
      'Sample Number': number,
      Compound: name,
      Sign: value.startsWith('<') ? '<' : '',
      Value: value.replace('<', ''),
      Units: 'ng/L',
      MDL: '0.6',
      MRL: '2',
    }));
  const names = ['feed', 'feed-dup', 'out', 'blank'];
  const waters = [TAP, TAP, through(TAP, CARBON)];
  return new BenchText({ reference_levels: ['US-EPA'] })
    .add('devices.csv', [device('block', 'carbon', 'faucet-mount')])
    .add('samples.csv', [
      sample('feed', 'feed', 'one', { taken_at: '2026-06-03' }),
      sample('feed-dup', 'feed', 'one', { of: 'feed', taken_at: '2026-06-03' }),
      sample('out', 'product', 'one', { device: 'block', taken_at: '2026-06-03' }),
      sample('blank', 'blank', 'one', { taken_at: '2026-06-03' }),
    ])
    .add('bottles.csv', [
      ...names
        .slice(0, 3)
        .map((name, at) => bottle(name, 'minerals', `A${at}`, '2026-06-04', '3 C')),
      ...names.map((name, at) => bottle(name, 'pfas', `B${at}`, '2026-06-12T10:00', '9 C')),
    ])
    .add(
      'lab/minerals.csv',
      waters.flatMap((water, at) => textRows(`A${at}`, '2026-06-03', measuredAgain(water, at))),
    )
    .add(
      'lab/pfas.csv',
      [
        ...pfas('B0', { PFOA: '6.8', PFOS: '9.1', PFBS: '2.4', PFHxS: '<2' }),
        ...pfas('B1', { PFOA: '7.4', PFOS: '8.2', PFBS: '3.9', PFHxS: '2.3' }),
        ...pfas('B2', { PFOA: '<2', PFOS: '<2', PFBS: '<2', PFHxS: '<2' }),
        ...pfas('B3', { PFOA: '<2', PFOS: '<2', PFBS: '<2', PFHxS: '<2' }),
      ],
      ';',
    );
}

function hardWater(): BenchText {
  const hard = withSums(through(TAP, share(SALTS, 2.4)));
  const product = through(hard, membrane(0.07));
  const ratio = 0.5;
  return new BenchText({ reference_levels: ['US-EPA', 'WHO', 'EU'] })
    .add('devices.csv', [device('ro', 'reverse-osmosis', 'under-sink', { drain_line: 'yes' })])
    .add('samples.csv', [
      sample('F', 'feed', 'one'),
      sample('P', 'product', 'one', { device: 'ro' }),
      sample('P2', 'product', 'one', { device: 'ro', of: 'P' }),
      sample('D', 'drain', 'one', { device: 'ro' }),
    ])
    .add('drain-runs.csv', [
      { device: 'ro', run: '1', clean: '2 L', drain: '1 L', collected_until: 'tap-closed' },
      { device: 'ro', run: '2', clean: '4 L', drain: '2.02 L', collected_until: 'tap-closed' },
    ])
    .add('lab/lab.csv', [
      ...textRows('F', '2026-06-03', measuredAgain(hard, 1)),
      ...textRows('P', '2026-06-03', measuredAgain(product, 2)),
      ...textRows('P2', '2026-06-03', measuredAgain(product, 3)),
      ...textRows('D', '2026-06-03', measuredAgain(drainOf(hard, product, ratio), 4)),
    ]);
}

function voidSample(): BenchText {
  const nonsense = through(TAP, { ...share(SALTS, 7), Lead: 4000, 'Nitrate as N': 4.43 });
  const status = { status: 'void', reason: 'the bottle had no label' };
  return new BenchText({})
    .add('devices.csv', [device('block', 'carbon', 'inline')])
    .add('samples.csv', [
      sample('1', 'feed', 'one'),
      sample('2', 'product', 'one', { device: 'block', ...status }),
      sample('3', 'product', 'one', { device: 'block', replaces: '2' }),
    ])
    .add('lab/lab.csv', [
      ...textRows('1', '2026-06-03', measuredAgain(TAP, 1)),
      ...textRows('2', '2026-06-03', nonsense),
      ...textRows('3', '2026-06-03', measuredAgain(through(TAP, CARBON), 2)),
    ]);
}
