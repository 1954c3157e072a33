// Times all three methods for censored results here against the likelihood alone in R, in one run.
// Usage: npm run build && node bench/censored-fits/compare.mjs [sets]
// Without Rscript or its survival package it says so and ends with 0. Different fits, or all three
// methods here slower than the one there, end it with 1.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { randomStream } from '../../dist/simulate/index.js';
import { kaplanMeier, lognormalMle, robustRos } from '../../dist/statistics/index.js';

const SETS = Number(process.argv[2] ?? 10_000);
/** survreg stops on the change of the likelihood, which leaves about half the digits. */
const SAME_FIT = 1e-5;

const say = (line) => process.stdout.write(`${line}\n`);

/** Time of the processor, not of the wall: other work on the machine counts less. */
function processorS() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Sets of 12 to 40 invented results, at least three quantified, some below or between two limits. */
function makeSets(count) {
  const random = randomStream(20260);
  const next = () => random.nextFraction();
  const sets = [];
  while (sets.length < count) {
    const size = 12 + Math.floor(29 * next());
    const centre = -3 + 8 * next();
    const spread = 0.3 + 1.7 * next();
    const limits = Array.from({ length: 1 + Math.floor(3 * next()) }, () =>
      Math.exp(centre + spread * (1.6 * next() - 1)),
    );
    const set = Array.from({ length: size }, () => {
      const normal = Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
      const value = Math.exp(centre + spread * normal);
      const high = limits[Math.floor(limits.length * next())];
      if (value >= high) return { low: value, high: value };
      return value < high / 3 ? { low: 0, high: high / 3 } : { low: high / 3, high };
    });
    if (set.filter(({ low, high }) => low === high).length >= 3) sets.push(set);
  }
  return sets;
}

function timed(sets, fit) {
  const began = processorS();
  const fits = sets.map(fit);
  return { fits, seconds: processorS() - began };
}

function fitInR(sets) {
  const folder = mkdtempSync(join(tmpdir(), 'censored-fits-'));
  try {
    const file = join(folder, 'sets.csv');
    writeFileSync(
      file,
      sets.map((set) => set.flatMap(({ low, high }) => [low, high]).join(',')).join('\n'),
    );
    const script = fileURLToPath(new URL('likelihood.R', import.meta.url));
    const run = spawnSync('Rscript', [script, file], { encoding: 'utf8', maxBuffer: 1e9 });
    if (run.error !== undefined) return 'no Rscript: nothing to compare with';
    if (run.status !== 0) {
      if (/no package called .survival/.test(run.stderr)) {
        return 'R without its survival package: nothing to compare with';
      }
      throw new Error(run.stderr);
    }
    const [head, ...lines] = run.stdout.trim().split('\n');
    const [seconds, inner, version, survival] = head.split(' ');
    const fits = lines.map((line) => line.split(' ').map(Number));
    return { seconds: Number(seconds), inner: Number(inner), version, survival, fits };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const sets = makeSets(SETS);
const methods = { kaplanMeier, robustRos, lognormalMle };
for (const fit of Object.values(methods)) timed(sets.slice(0, 500), fit); // lets the compiler warm up
const here = Object.entries(methods).map(([name, fit]) => ({ name, ...timed(sets, fit) }));
const total = here.reduce((sum, { seconds }) => sum + seconds, 0);
say(`${SETS} sets of 12 to 40 results, each with at least three quantified`);
for (const { name, seconds } of here) say(`  here  ${name}: ${seconds.toFixed(3)} s`);
say(`  here  all three: ${total.toFixed(3)} s`);
const there = fitInR(sets);
if (typeof there === 'string') {
  say(`  ${there}`);
} else {
  const { seconds, inner, version, survival, fits } = there;
  say(`  R ${version}, survival ${survival}, survreg alone: ${seconds.toFixed(3)} s`);
  say(`  the same by its inner survreg.fit, without the formula: ${inner.toFixed(3)} s`);
  const share = (time) => (total / time).toFixed(3);
  say(`  all three here take ${share(seconds)} of the first and ${share(inner)} of the second`);
  const ours = here.at(-1).fits;
  const worst = fits.reduce((most, [mean, sd], at) => {
    const { meanLog, sdLog } = ours[at];
    const off = Math.max(Math.abs(meanLog - mean), Math.abs(sdLog - sd)) / Math.max(sd, 1e-300);
    return Math.max(most, off);
  }, 0);
  say(`  largest difference of a fit, in its own sd: ${worst.toExponential(1)}`);
  if (worst > SAME_FIT || total >= seconds) process.exitCode = 1;
}
