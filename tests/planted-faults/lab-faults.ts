import { APRIL, labNumber, MARCH, MAY } from './base-bench.ts';
import type { BenchText, CellPlace } from './bench-text.ts';
import type { Fault } from './fault.ts';

/** A cell of a lab file by sample and analyte. */
function labCell(
  bench: BenchText,
  file: string,
  sample: string,
  analyte: string,
  field: string,
  value: string,
): CellPlace {
  return bench.set(file, { 'Sample ID': labNumber(sample), Analyte: analyte }, field, value);
}

function result(bench: BenchText, file: string, sample: string, analyte: string): string {
  return bench.get(file, { 'Sample ID': labNumber(sample), Analyte: analyte }, 'Result');
}

function setLimits(
  bench: BenchText,
  file: string,
  sample: string,
  analyte: string,
  mdl: string,
  rl: string,
): void {
  labCell(bench, file, sample, analyte, 'MDL', mdl);
  labCell(bench, file, sample, analyte, 'RL', rl);
}

/** Gives each of two samples the bottle of the other. */
function exchangeBottles(bench: BenchText, first: string, second: string): void {
  bench.set('bottles.csv', { sample: first }, 'lab_sample', 'waiting');
  bench.set('bottles.csv', { sample: second }, 'lab_sample', labNumber(first));
  bench.set('bottles.csv', { sample: first }, 'lab_sample', labNumber(second));
}

/** Faults of lab results, samples and bottles, each planted in the base bench. */
export const LAB_FAULTS: readonly Fault[] = [
  {
    name: 'a duplicate is 40 % above its original',
    code: 'duplicate-differs',
    plant: (bench) => labCell(bench, MARCH, 'm-feed-dup', 'Barium', 'Result', '96.0'),
  },
  {
    name: 'the bottles of a duplicate and of a product were exchanged',
    code: 'duplicate-unlike',
    plant: (bench) => {
      exchangeBottles(bench, 'm-feed-dup', 'm-ro-one');
      return bench.place('samples.csv', { sample: 'm-feed-dup' }, 'of');
    },
  },
  {
    name: 'a duplicate of a natural feed is marked as spiked',
    code: 'duplicate-mismatch',
    plant: (bench) => bench.set('samples.csv', { sample: 'm-feed-dup' }, 'kind', 'spiked'),
  },
  {
    name: 'the field blank holds as much lead as the products',
    code: 'blank-contaminated',
    plant: (bench) => labCell(bench, APRIL, 'a-blank', 'Lead', 'Result', '1.1'),
  },
  {
    name: 'a bottle for nitrate travelled for 60 hours',
    code: 'holding-time-over',
    plant: (bench) =>
      bench.set('bottles.csv', { sample: 'y-feed' }, 'received_at', '2026-05-14T20:00'),
  },
  {
    name: 'a bottle for bacteria travelled for 31 hours',
    code: 'holding-time-over',
    plant: (bench) =>
      bench.set('bottles.csv', { sample: 'a-ro-one' }, 'received_at', '2026-04-15T15:30'),
  },
  {
    name: 'a bottle arrived at 14 °C',
    code: 'receipt-warm',
    plant: (bench) =>
      bench.set('bottles.csv', { sample: 'm-inline' }, 'receipt_temperature', '14 C'),
  },
  {
    name: 'a bottle arrived frozen',
    code: 'receipt-frozen',
    plant: (bench) =>
      bench.set('bottles.csv', { sample: 'm-inline' }, 'receipt_temperature', '-3 C'),
  },
  {
    name: 'a bottle was received a day before its sample was taken',
    code: 'bottle-time-backwards',
    plant: (bench) =>
      bench.set('bottles.csv', { sample: 'a-feed' }, 'received_at', '2026-04-13T09:00'),
  },
  {
    name: 'a report of February came with the numbers of May',
    code: 'sampling-date-differs',
    plant: (bench) => {
      for (const analyte of bench.column(MAY, { 'Sample ID': labNumber('y-feed') }, 'Analyte')) {
        labCell(bench, MAY, 'y-feed', analyte, 'Collected', '2026-02-10');
      }
      return bench.place('samples.csv', { sample: 'y-feed' }, 'taken_at');
    },
  },
  {
    name: 'a sodium lost its decimal point',
    code: 'ion-balance-off',
    plant: (bench) => labCell(bench, APRIL, 'a-feed', 'Sodium', 'Result', '204'),
  },
  {
    name: 'a calcium as CaCO3 stands as Ca',
    code: 'ion-balance-off',
    plant: (bench) => labCell(bench, MARCH, 'm-inline', 'Calcium as Ca', 'Result', '150'),
  },
  {
    name: 'an alkalinity as HCO3 stands as CaCO3',
    code: 'ion-balance-off',
    plant: (bench) =>
      labCell(bench, APRIL, 'a-inline', 'Alkalinity, Total as CaCO3', 'Result', '190'),
  },
  {
    name: 'the nitrate of a feed is NO3 and stands as N',
    code: 'nitrate-basis-suspect',
    plant: (bench) => labCell(bench, APRIL, 'a-feed', 'Nitrate as N', 'Result', '11.1'),
  },
  {
    name: 'the nitrate of a product is NO3 and stands as N',
    code: 'nitrate-basis-suspect',
    plant: (bench) => labCell(bench, MAY, 'y-inline', 'Nitrate as N', 'Result', '11.1'),
  },
  {
    name: 'the dissolved solids are twice what the ions make',
    code: 'dissolved-solids-off',
    plant: (bench) => labCell(bench, MAY, 'y-feed', 'Total Dissolved Solids', 'Result', '580'),
  },
  {
    name: 'a conductivity in mS/cm stands in uS/cm',
    code: 'conductivity-off',
    plant: (bench) => {
      setLimits(bench, APRIL, 'a-inline', 'Specific Conductance', '0.001', '0.002');
      return labCell(bench, APRIL, 'a-inline', 'Specific Conductance', 'Result', '0.51');
    },
  },
  {
    name: 'a hardness in German degrees stands in mg/L',
    code: 'hardness-disagrees',
    plant: (bench) => labCell(bench, APRIL, 'a-feed', 'Hardness, Total as CaCO3', 'Result', '11.6'),
  },
  {
    name: 'free chlorine is above total chlorine',
    code: 'part-above-total',
    plant: (bench) => labCell(bench, APRIL, 'a-feed', 'Chlorine, Free', 'Result', '1.9'),
  },
  {
    name: 'E. coli are above total coliforms',
    code: 'part-above-total',
    plant: (bench) => {
      labCell(bench, MAY, 'y-feed', 'Total Coliforms', 'Result', '2.0');
      return labCell(bench, MAY, 'y-feed', 'E. coli', 'Result', '12');
    },
  },
  {
    name: 'the total of trihalomethanes is below its members',
    code: 'total-below-parts',
    plant: (bench) => labCell(bench, MARCH, 'm-feed', 'Total Trihalomethanes', 'Result', '25.0'),
  },
  {
    name: 'the lab prints 0.8 for whatever it did not detect',
    code: 'result-repeats-constant',
    plant: (bench) => {
      const analytes = ['Lead', 'Arsenic, Total', 'Dibromochloromethane', 'Bromoform'];
      const samples = ['m-ro-one', 'm-ro-two', 'm-inline'];
      for (const analyte of analytes) {
        for (const sample of samples) {
          if (result(bench, MARCH, sample, analyte) === '0.8') continue;
          labCell(bench, MARCH, sample, analyte, 'Result', '0.8');
        }
      }
      const first = { 'Sample ID': labNumber('m-ro-one'), Analyte: 'Arsenic, Total' };
      return bench.place(MARCH, first, 'Result');
    },
  },
  {
    name: 'the lab prints the reporting limit of bromoform instead of less than it',
    code: 'result-equals-limit',
    plant: (bench) => {
      for (const sample of ['a-ro-one', 'a-ro-two', 'a-inline']) {
        labCell(bench, APRIL, sample, 'Bromoform', 'Result', '0.4');
      }
      const first = { 'Sample ID': labNumber('a-ro-one'), Analyte: 'Bromoform' };
      return bench.place(APRIL, first, 'Result');
    },
  },
  {
    name: 'the report of April repeats the figures of March for one sample',
    code: 'sample-repeats-another',
    plant: (bench) => {
      for (const analyte of bench.column(APRIL, { 'Sample ID': labNumber('a-feed') }, 'Analyte')) {
        const old = result(bench, MARCH, 'm-feed', analyte);
        if (old !== result(bench, APRIL, 'a-feed', analyte)) {
          labCell(bench, APRIL, 'a-feed', analyte, 'Result', old);
        }
      }
      return bench.place('samples.csv', { sample: 'a-feed' }, 'sample');
    },
  },
  {
    name: 'the bottles of feed and product were exchanged',
    code: 'feed-product-exchanged',
    plant: (bench) => {
      exchangeBottles(bench, 'a-feed', 'a-ro-two');
      return bench.place('samples.csv', { sample: 'a-ro-two' }, 'position');
    },
  },
  {
    name: 'the bottles of product and drain were exchanged',
    code: 'bottles-exchanged',
    plant: (bench) => {
      exchangeBottles(bench, 'm-ro-one', 'm-ro-one-drain');
      return bench.place('samples.csv', { sample: 'm-ro-one' }, 'position');
    },
  },
  {
    name: 'the drain bottle was filled with feed',
    code: 'drain-balance-off',
    plant: (bench) => {
      exchangeBottles(bench, 'm-feed-dup', 'm-ro-one-drain');
      return bench.place('samples.csv', { sample: 'm-ro-one-drain' }, 'sample');
    },
  },
  {
    name: 'one analyte of the drain does not balance',
    code: 'drain-balance-off',
    plant: (bench) => labCell(bench, MARCH, 'm-ro-one-drain', 'Silica as SiO2', 'Result', '9.7'),
  },
  {
    name: 'a lead of a product in ng/L stands in ug/L',
    code: 'unit-suspect',
    plant: (bench) => labCell(bench, APRIL, 'a-inline', 'Lead', 'Result', '1380'),
  },
  {
    name: 'a copper of a feed in mg/L stands in ug/L',
    code: 'unit-suspect',
    plant: (bench) => {
      setLimits(bench, MAY, 'y-feed', 'Copper', '0.0003', '0.001');
      return labCell(bench, MAY, 'y-feed', 'Copper', 'Result', '0.119');
    },
  },
  {
    name: 'a barium of a duplicate in mg/L stands in ug/L',
    code: 'unit-suspect',
    plant: (bench) => {
      setLimits(bench, MARCH, 'm-feed-dup', 'Barium', '0.0003', '0.001');
      return labCell(bench, MARCH, 'm-feed-dup', 'Barium', 'Result', '0.0642');
    },
  },
  {
    name: 'the reporting limit of arsenic lies above the reference level',
    code: 'limit-above-level',
    plant: (bench) => {
      labCell(bench, MARCH, 'm-ro-two', 'Arsenic, Total', 'RL', '20');
      return labCell(bench, MARCH, 'm-ro-two', 'Arsenic, Total', 'Result', '<20');
    },
  },
  {
    name: 'a second feed of an event holds half the chloride',
    code: 'feed-disagrees',
    plant: (bench) => {
      bench.set('samples.csv', { sample: 'm-feed-dup' }, 'of', '');
      return labCell(bench, MARCH, 'm-feed-dup', 'Chloride', 'Result', '17.5');
    },
  },
  {
    name: 'a lab prints zero for a chemical',
    code: 'result-zero',
    plant: (bench) => labCell(bench, APRIL, 'a-ro-one', 'Chloroform', 'Result', '0'),
  },
  {
    name: 'the unit slid into the column of the result',
    code: 'row-shifted',
    plant: (bench) => labCell(bench, APRIL, 'a-feed', 'Turbidity', 'Result', 'NTU'),
  },
  {
    name: 'the name says lead and the CAS number copper',
    code: 'analyte-conflict',
    plant: (bench) => labCell(bench, APRIL, 'a-feed', 'Lead', 'CAS', '7440-50-8'),
  },
  {
    name: 'a product of spiked water is marked as natural',
    code: 'kind-mismatch',
    plant: (bench) => bench.set('samples.csv', { sample: 's-inline' }, 'kind', 'natural'),
  },
];
