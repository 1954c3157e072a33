// Holds the drain simulation against a C program that draws and plays the same years, in one run.
// Usage: npm run build && node bench/drain-engine/compare.mjs [years]
// Without a C compiler it says so and ends with 0; different totals end it with 1. The rate is
// reported and never decides.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { randomStream, scenarioYears, yearPlayer } from '../../dist/simulate/index.js';

const YEARS = Number(process.argv[2] ?? 1000);
const DAYS = 365;
const FLOW = 1.8;
/** Totals of a thousand years; the logarithms of the two languages may differ in the last bit. */
const SAME_TOTAL = 1e-9;

const DAILY = Array(7).fill(true);
const KITCHEN = [
  { weekdays: DAILY, fromS: 23_400, toS: 30_600, poursPerDay: 5, volumeL: 0.3, spread: 'random' },
  { weekdays: DAILY, fromS: 30_600, toS: 64_800, poursPerDay: 6, volumeL: 0.25, spread: 'random' },
  { weekdays: DAILY, fromS: 64_800, toS: 70_200, poursPerDay: 3, volumeL: 1.5, spread: 'together' },
  { weekdays: DAILY, fromS: 70_200, toS: 82_800, poursPerDay: 5, volumeL: 0.25, spread: 'random' },
];
const IDLE = { rule: 'after use', trigger: 'idle', afterS: 600, volumeL: 1.4 };
const DEVICES = {
  'one-rule': { drainRatio: 0.5, cleanFlowLPerMin: FLOW, flushRules: [IDLE] },
  'eight-rules': {
    drainRatio: 0.5,
    perStartL: 0.02,
    cleanFlowLPerMin: FLOW,
    flushRules: [
      { rule: 'at power-on', trigger: 'power-on', volumeL: 2 },
      { ...IDLE, minIntervalS: 1200, quiet: { fromS: 79_200, toS: 25_200, mode: 'defer' } },
      { rule: 'standby', trigger: 'idle', afterS: 10_800, repeat: true, volumeL: 0.6 },
      { rule: 'every half day', trigger: 'interval', afterS: 43_200, volumeL: 0.8 },
      { rule: 'rested', trigger: 'interval', afterS: 21_600, anchor: 'last-flush', volumeL: 0.5 },
      { rule: 'first water', trigger: 'start', afterS: 7200, volumeL: 0.2, water: 'clean' },
      { rule: 'by volume', trigger: 'produced', afterL: 10, volumeL: 0.6 },
      { rule: 'reservoir', trigger: 'dump', afterL: 40, volumeL: 3 },
    ],
  },
};

const say = (line) => process.stdout.write(`${line}\n`);

/** Time of the processor, not of the wall: other work on the machine counts less. */
function processorNs() {
  const { user, system } = process.cpuUsage();
  return (user + system) * 1000;
}

const median = (values) => values.sort((a, b) => a - b)[values.length >> 1];

/** Litres one flush sends to drain, with the drain of making the product it spends. */
const perFlush = ({ volumeL, water }, ratio) => volumeL * (1 + (water === 'clean' ? ratio : 0));

function playHere(device, years) {
  const { drainRatio, perStartL = 0, flushRules } = device;
  const kitchen = scenarioYears(KITCHEN, { days: DAYS });
  const player = yearPlayer(device, { endS: DAYS * 86_400 }, years);
  const sum = { pours: 0, cleanL: 0, drainL: 0 };
  const drawNs = [];
  const playNs = [];
  for (let seed = 0; seed < years; seed++) {
    const began = processorNs();
    kitchen.draw((group) => randomStream(seed, group));
    const pours = kitchen.pours(FLOW);
    const drawn = processorNs();
    player.play(seed, pours);
    const ended = processorNs();
    const { cleanL, starts, flushes } = player.played;
    sum.pours += pours.atS.length;
    sum.cleanL += cleanL[seed];
    sum.drainL += drainRatio * cleanL[seed] + perStartL * starts[seed];
    for (const [row, rule] of flushRules.entries()) {
      sum.drainL += flushes[row][seed] * perFlush(rule, drainRatio);
    }
    drawNs.push((drawn - began) / pours.atS.length);
    playNs.push((ended - drawn) / pours.atS.length);
  }
  return { ...sum, drawNs: median(drawNs), playNs: median(playNs) };
}

function playInC(folder) {
  const source = fileURLToPath(new URL('drain-engine.c', import.meta.url));
  const program = join(folder, 'drain-engine');
  const built = spawnSync('cc', ['-O3', '-o', program, source, '-lm'], { encoding: 'utf8' });
  if (built.error !== undefined) return null;
  if (built.status !== 0) throw new Error(built.stderr);
  const run = spawnSync(program, [String(YEARS)], { encoding: 'utf8' });
  if (run.status !== 0) throw new Error(`the C program ended with ${run.status}`);
  const lines = run.stdout.trim().split('\n');
  return new Map(
    lines.map((line) => {
      const [name, ...figures] = line.split(' ');
      const [pours, cleanL, drainL, drawNs, playNs] = figures.map(Number);
      return [name, { pours, cleanL, drainL, drawNs, playNs }];
    }),
  );
}

const near = (a, b) => Math.abs(a - b) <= SAME_TOTAL * Math.abs(b);
const folder = mkdtempSync(join(tmpdir(), 'drain-engine-'));
try {
  const inC = playInC(folder);
  if (inC === null) say('no C compiler (cc): nothing to compare with');
  for (const [name, device] of Object.entries(DEVICES)) {
    playHere(device, Math.min(YEARS, 200)); // lets the compiler of the runtime do its work first
    const here = playHere(device, YEARS);
    const { drawNs, playNs } = here;
    say(`${name}: ${YEARS} years, ${here.pours} pours, ${here.drainL.toFixed(3)} L to drain`);
    say(`  this package  draw ${drawNs.toFixed(1)} ns, play ${playNs.toFixed(1)} ns a pour`);
    const there = inC?.get(name);
    if (there === undefined) continue;
    say(`  C, -O3        draw ${there.drawNs.toFixed(1)} ns, play ${there.playNs.toFixed(1)} ns`);
    const both = (there.drawNs + there.playNs) / (drawNs + playNs);
    say(
      `  rate of C: draw ${(there.drawNs / drawNs).toFixed(2)}, ` +
        `play ${(there.playNs / playNs).toFixed(2)}, both ${both.toFixed(2)}`,
    );
    const isSame =
      here.pours === there.pours &&
      near(here.cleanL, there.cleanL) &&
      near(here.drainL, there.drainL);
    say(`  totals: ${isSame ? 'the same' : 'DIFFERENT'}`);
    if (!isSame) process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
