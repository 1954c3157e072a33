import type { Fault } from './fault.ts';

const TIMED = { device: 'ro-one', run: '3' };

/** Faults of the bench logs, each planted in the base bench. */
export const LOG_FAULTS: readonly Fault[] = [
  {
    name: 'a pour of 39.8 s was noted as 3:58',
    code: 'pour-unlike',
    plant: (bench) => bench.set('pours.csv', TIMED, 'time', '3:58'),
  },
  {
    name: 'a drain volume in litres was noted as twice as much',
    code: 'drain-run-unlike',
    plant: (bench) =>
      bench.set('drain-runs.csv', { device: 'ro-two', run: '2' }, 'drain', '24.4 L'),
  },
  {
    name: 'a bucket took in an idle flush',
    code: 'run-holds-flush',
    plant: (bench) =>
      bench.set('drain-runs.csv', { device: 'ro-one', run: '2' }, 'drain', '2.33 L'),
  },
  {
    name: 'the flush at the start of every run is also a rule',
    code: 'flush-counted-twice',
    plant: (bench) => {
      const drains = { 1: '1050 ml', 2: '1.81 L', 3: '3.3 L', 4: '6.28 L' };
      for (const [run, drain] of Object.entries(drains)) {
        bench.set('drain-runs.csv', { device: 'ro-one', run }, 'drain', drain);
      }
      return bench.place('flush-rules.csv', { rule: 'start-purge' }, 'rule');
    },
  },
  {
    name: 'one flush was written down twice',
    code: 'flush-repeated',
    plant: (bench) =>
      bench.append(
        'flushes.csv',
        { device: 'ro-one', rule: 'idle-flush', volume: '825 ml', at: '2026-03-20T10:00' },
        'at',
      ),
  },
  {
    name: 'two flushes ran into one bucket',
    code: 'flush-unlike',
    plant: (bench) => bench.set('flushes.csv', { volume: '830 ml' }, 'volume', '1.66 L'),
  },
  {
    name: 'a water temperature in Fahrenheit was noted in Celsius',
    code: 'temperature-implausible',
    plant: (bench) => bench.set('pours.csv', TIMED, 'temperature', '64 C'),
  },
  {
    name: 'a feed pressure in psi was noted in kPa',
    code: 'pressure-implausible',
    plant: (bench) =>
      bench.set('drain-runs.csv', { device: 'ro-one', run: '3' }, 'pressure', '60 kPa'),
  },
  {
    name: 'a feed pressure in psi was noted in bar',
    code: 'pressure-implausible',
    plant: (bench) => bench.set('tanks.csv', { device: 'ro-two' }, 'feed_pressure', '60 bar'),
  },
  {
    name: 'the two pressures of a tank were exchanged',
    code: 'tank-pressures-order',
    plant: (bench) => {
      bench.set('tanks.csv', { device: 'ro-two' }, 'stop', '33 psi');
      return bench.set('tanks.csv', { device: 'ro-two' }, 'restart', '40 psi');
    },
  },
  {
    name: 'a part has neither a life nor a capacity',
    code: 'part-life-missing',
    plant: (bench) => bench.set('parts.csv', { part: 'membrane' }, 'lasts', ''),
  },
  {
    name: 'a part has its price in another currency',
    code: 'currency-differs',
    plant: (bench) => bench.set('parts.csv', { part: 'carbon block' }, 'price', '36 EUR'),
  },
  {
    name: 'a claim names an analyte that does not exist',
    code: 'claim-analyte-unknown',
    plant: (bench) => bench.set('claims.csv', { device: 'inline' }, 'analyte', 'toxins'),
  },
  {
    name: 'a window ends before it starts',
    code: 'window-backwards',
    plant: (bench) => bench.set('scenarios.csv', { scenario: 'family' }, 'window', '09:00-07:00'),
  },
];
