// Reads, normalises and reduces a bench with one lab file of a million rows in one process, and
// reports time and peak memory. The bench is invented and made anew in a temporary folder.
// Run after a build: node scripts/million-rows.mjs [rows]
import {
  createWriteStream,
  mkdirSync,
  mkdtempSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { readBench } from '../dist/commands/read-bench.js';
import { reductions } from '../dist/commands/reductions.js';

const ROWS = Number(process.argv[2] ?? 1_000_000);
const DEVICES = 20;
const REPLICATES = 25;
const ANALYTES = [
  ['Lead', '7439-92-1', 'ug/L', 0.1, 0.5],
  ['Copper', '7440-50-8', 'ug/L', 0.5, 1],
  ['Calcium as Ca', '7440-70-2', 'mg/L', 0.05, 0.2],
  ['Magnesium as Mg', '7439-95-4', 'mg/L', 0.02, 0.1],
  ['Sodium', '7440-23-5', 'mg/L', 0.1, 0.5],
  ['Potassium', '7440-09-7', 'mg/L', 0.05, 0.2],
  ['Chloride', '16887-00-6', 'mg/L', 0.1, 0.5],
  ['Sulfate as SO4', '14808-79-8', 'mg/L', 0.1, 0.5],
  ['Nitrate as N', '14797-55-8', 'mg/L', 0.02, 0.1],
  ['Fluoride', '16984-48-8', 'mg/L', 0.02, 0.1],
  ['Zinc', '7440-66-6', 'ug/L', 0.5, 2],
  ['Barium', '7440-39-3', 'ug/L', 0.2, 1],
  ['Arsenic', '7440-38-2', 'ug/L', 0.1, 0.5],
  ['Cadmium', '7440-43-9', 'ug/L', 0.05, 0.2],
  ['Chromium', '7440-47-3', 'ug/L', 0.2, 1],
  ['Nickel', '7440-02-0', 'ug/L', 0.2, 1],
  ['Uranium', '7440-61-1', 'ug/L', 0.05, 0.2],
  ['Chloroform', '67-66-3', 'ug/L', 0.1, 0.5],
  ['Boron', '7440-42-8', 'ug/L', 2, 10],
  ['Strontium', '7440-24-6', 'ug/L', 0.5, 2],
];

/** Numbers without a pattern that come out the same each time. */
function* numbers(seed) {
  let state = seed >>> 0;
  for (;;) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    yield state / 2 ** 32;
  }
}

async function writeBench(folder) {
  mkdirSync(path.join(folder, 'lab'), { recursive: true });
  writeFileSync(
    path.join(folder, 'bench.json'),
    JSON.stringify({ title: 'A million rows (invented)' }),
  );
  const devices = Array.from({ length: DEVICES }, (_, i) => `device-${i + 1}`);
  const header = 'device,name,form,technology,drain_line\n';
  writeFileSync(
    path.join(folder, 'devices.csv'),
    header + devices.map((name) => `${name},${name},pitcher,carbon,no\n`).join(''),
  );
  const samples = createWriteStream(path.join(folder, 'samples.csv'));
  const lab = createWriteStream(path.join(folder, 'lab', 'results.csv'));
  samples.write('sample,position,device,event\n');
  lab.write(
    'Sample ID,Client ID,Collected,Analyte,CAS,Result,Units,MDL,RL,Qualifier,Method,Project\n',
  );
  const random = numbers(1);
  let written = 0;
  for (let number = 0; written < ROWS; number += 1) {
    const event = Math.floor(number / (REPLICATES * (DEVICES + 1)));
    const slot = Math.floor(number / REPLICATES) % (DEVICES + 1);
    const sample = `S-${100000 + number}`;
    const isFeed = slot === 0;
    samples.write(
      `${sample},${isFeed ? 'feed' : 'product'},${isFeed ? '' : devices[slot - 1]},event-${event}\n`,
    );
    for (const [name, cas, unit, mdl, rl] of ANALYTES) {
      if (written >= ROWS) break;
      const value = (isFeed ? 40 : 4) * rl * random.next().value;
      const text = value < mdl ? 'ND' : value.toPrecision(3);
      const line = `${sample},client-${number},2026-07-14T08:10,${name},${cas},${text},${unit},${mdl},${rl},,200.8,invented demo data\n`;
      if (!lab.write(line)) await new Promise((done) => lab.once('drain', done));
      written += 1;
    }
  }
  await Promise.all([samples, lab].map((stream) => new Promise((done) => stream.end(done))));
}

/** Peak resident memory so far; the kernel counts it in kilobytes. */
const peakMegabytes = () => Math.round(process.resourceUsage().maxRSS / 1024);

const folder = mkdtempSync(path.join(tmpdir(), 'million-rows-'));
try {
  await writeBench(folder);
  const bytes = statSync(path.join(folder, 'lab', 'results.csv')).size;
  const start = performance.now();
  const bench = readBench(folder);
  const read = performance.now();
  const { rows } = reductions(bench, {});
  const reduced = performance.now();
  const errors = bench.findings.filter(({ level }) => level === 'error');
  console.log(`lab file: ${(bytes / 1e6).toFixed(1)} MB, ${bench.results.files[0].rowsRead} rows`);
  console.log(
    `results: ${bench.results.length}, distinct: ${bench.results.distinct.length}, errors: ${errors.length}`,
  );
  for (const { code, message } of errors.slice(0, 3)) console.log(`  ${code}: ${message}`);
  console.log(`read and normalised: ${((read - start) / 1000).toFixed(1)} s`);
  console.log(`reduced: ${((reduced - read) / 1000).toFixed(1)} s, ${rows.length} reductions`);
  console.log(`peak memory: ${peakMegabytes()} MB`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
