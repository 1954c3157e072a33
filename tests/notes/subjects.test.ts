import { appendFileSync, cpSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { notes } from '../../src/commands/notes.ts';
import { readBench } from '../../src/commands/read-bench.ts';
import { hasErrors } from '../../src/findings/index.ts';
import type {
  BreakEvenRow,
  ClaimRow,
  CostCurveRow,
  CostRow,
  IdleRiseRow,
  ToldApartGroupRow,
} from '../../src/model/index.ts';
import { scratchFolder, VERSION } from './bench-folder.ts';

const scratch = scratchFolder();
let files: ReadonlyMap<string, string> = new Map();
let text = '';

beforeAll(async () => {
  const folder = path.join(scratch.path, 'bench');
  cpSync('samples/fourteen-devices', folder, { recursive: true });
  // A certified claim that this feed could not have tested, and one that it could.
  appendFileSync(
    path.join(folder, 'claims.csv'),
    [
      'tankless-b,Arsenic reduction,arsenic,at-least,80 %,certified,NSF/ANSI 58,,listing,2026-07-01',
      'tankless-a,Certified for lead,lead,at-least,95 %,certified,NSF/ANSI 58,,listing,2026-07-01',
      '',
    ].join('\n'),
  );
  const bench = readBench(folder);
  expect(hasErrors(bench.findings)).toBe(false);
  files = await notes(bench, { version: VERSION, analytes: ANALYTES });
  text = files.get('index.md') ?? '';
}, 120_000);

const ANALYTES = ['calcium', 'magnesium', 'lead', 'arsenic', 'total-dissolved-solids'];

afterAll(() => scratch.remove());

function rowsOf<T>(name: string): T[] {
  return (JSON.parse(files.get(`data/${name}.json`) ?? '{"rows":[]}') as { rows: T[] }).rows;
}

function part(heading: string): string {
  const own = text.split(`\n${heading}\n`)[1];
  if (own === undefined) throw new Error(`no part ${heading}`);
  const rank = heading.split(' ')[0] ?? '##';
  return own.split(new RegExp(`\n#{2,${rank.length}} `))[0] ?? '';
}

/** Cells of the lines of a table whose first cell is the name. */
function cells(body: string, name: string): string[][] {
  return body
    .split('\n')
    .filter((line) => line.startsWith(`| ${name} |`))
    .map((line) => line.slice(2, -2).split(/ ?\| /));
}

describe('claims and certificates in the notes', () => {
  it('give every claim its verdict, and the counts of them', () => {
    const own = part('## Claims and certificates');
    const rows = rowsOf<ClaimRow>('claims');
    expect(rows.length).toBeGreaterThan(5);
    for (const { claim } of rows) expect(own).toContain(`“${claim}”`);
    const contradicted = rows.filter(({ verdict }) => verdict === 'contradicted').length;
    expect(own).toContain(`${contradicted} ${contradicted === 1 ? 'is' : 'are'} contradicted`);
    expect(own).toContain('no certification');
  });

  it('name certified claims that this feed could not have tested, and only those', () => {
    const own = part('### Certificates');
    expect(own).toContain('Said to be certified: 2 claims.');
    expect(own).toMatch(/^- Tankless B, “Arsenic reduction”: the highest feed held 2\.4 ug\/L/m);
    expect(own).not.toMatch(/^- Tankless A, “Certified for lead”/m);
    expect(own).toContain('never proof that a device is certified');
  });

  it('name what the feed held without a certified claim', () => {
    const own = part('### In the feed, with no certified claim behind it');
    expect(own).toMatch(/Beyond these, of .*: .*arsenic/);
    expect(own).toContain('may still be certified');
  });
});

describe('minerals in the notes', () => {
  it('say that a fall in solids behind a mineral stage is no rejection, with the ions beside it', () => {
    const own = part('### Devices with a mineral stage');
    expect(own).toContain('is not a measure of rejection');
    for (const heading of ['(no rejection)', 'Rejection of dissolved solids before the stage']) {
      expect(own).toContain(heading);
    }
  });

  it('draw a fingerprint of each occasion, below the table of its figures', () => {
    const own = part('## What the water keeps of its minerals');
    expect(own).toContain('(charts/minerals.svg)');
    expect(cells(own, 'Feed')[0]?.[1]).toBe('88');
    expect(own).toContain('which is no requirement on any device');
  });
});

describe('pauses in the notes', () => {
  it('keep meters and scales apart', () => {
    const own = part('## The first water after a pause');
    const meters = new Set(rowsOf<IdleRiseRow>('idle-rise').map(({ meter }) => meter));
    expect(meters.size).toBe(2);
    const captions = [...own.matchAll(/^\*\*First water after a pause: (.*)\*\*$/gm)];
    expect(captions.map(([, caption]) => caption)).toEqual([
      'pen meter 1, nacl scale, ppm',
      'pen meter 2, 442 scale, mg/L',
    ]);
    expect(own).toContain('stand apart and are not compared');
  });

  it('set the water saved without the automatic flush beside the solids it costs', () => {
    const own = part('## The first water after a pause');
    const [row] = cells(own, 'Tankless A').filter((each) => each[1] === 'family');
    const rows = rowsOf<IdleRiseRow>('idle-rise').filter(({ scenario }) => scenario === 'family');
    const of = (variant: string) =>
      rows.find((each) => each.device === 'tankless-a' && each.variant === variant);
    const saved =
      (of('standard')?.drain_L_per_year ?? 0) - (of('flush-off')?.drain_L_per_year ?? 0);
    expect(Number(row?.[4])).toBeCloseTo(saved, -1);
    expect(row?.[2]).toMatch(/^\d+ \(\d+ to \d+\)$/);
    expect(row?.[5]).toMatch(/^15\.\d \(/);
    expect(row?.[6]).toMatch(/^34\.\d \(/);
  });
});

describe('water to drain in the notes', () => {
  it('stands with its range beside the estimate', () => {
    const own = part('## Water to drain');
    expect(cells(own, 'Tankless A')[0]?.[3]).toMatch(/^[\d.]+ \([\d.]+ to [\d.]+\)$/);
    expect(own).toMatch(/from [\d.]+ \([\d.]+ to [\d.]+\) L \(Countertop A\)/);
  });

  it('holds yardsticks and calls none of them a rating', () => {
    expect(part('### Beside published yardsticks')).toContain('is no rating');
  });

  it('gives a tank with a refill model its curve, and says why others have none', () => {
    const own = part('## Small pours and large ones');
    expect(own).toContain('Of Tank A the curve is that of refilling the tank after one pour');
    expect(own).toContain('Tank B and Tank C have no curve: their drain depends on how full');
    expect(own).not.toContain('flush volume is not known');
    const [table = ''] = own.split('**Of ');
    expect(cells(table, 'Tank A')).toHaveLength(1);
    expect(cells(table, 'Tank B')).toHaveLength(0);
  });

  it('gives each break-even the pour sizes that are not told apart', () => {
    const own = part('## Small pours and large ones');
    const row = rowsOf<BreakEvenRow>('break-even').find(
      ({ device_a, device_b, variant_a, variant_b }) =>
        [device_a, device_b].join() === 'tankless-a,tankless-e' &&
        [variant_a, variant_b].every((variant) => variant === 'standard'),
    );
    const [printed] = cells(own, 'Tankless E').filter((each) => each[1] === 'Tankless A');
    expect(printed?.[2]).toBe(`${Math.round(row?.pour_mL ?? 0)} mL`);
    const [low, high] = (printed?.[3] ?? '').split(' to ').map(Number);
    expect(low).toBeLessThanOrEqual(row?.low_mL ?? 0);
    expect(high).toBeGreaterThanOrEqual(row?.high_mL ?? Number.POSITIVE_INFINITY);
  });

  it('names the group in which a device drains least', () => {
    const own = part('### Which drains least where');
    expect(own).toMatch(/Among devices with a drain line.*: Countertop A in 25 of 25/);
    expect(own).toMatch(/Among under-sink devices with a drain line/);
    expect(own).toContain(', or Tankless A (flush-off)');
    expect(own).not.toMatch(/tankless-[a-f]/);
  });
});

describe('costs in the notes', () => {
  it('stand in one table with the dates of the prices and what is not counted', () => {
    const own = part('## Costs');
    const row = rowsOf<CostRow>('costs').find(
      ({ device, variant, scenario }) =>
        device === 'tankless-b' && variant === 'standard' && scenario === 'one-glass-at-a-time',
    );
    const [printed] = cells(own, 'Tankless B');
    expect(printed?.[2]).toBe('2026-06-22');
    expect(printed?.[9]).toBe(row?.not_counted.join(', '));
    expect(printed?.[6]).toBe(`at least ${Math.floor(row?.per_year.low ?? 0)}`);
    expect(own).toContain('USD/kWh');
  });

  it('over time are the points of the data, at least where something is missing', () => {
    const points = rowsOf<CostCurveRow>('cost-over-time');
    const end = points.filter(({ device }) => device === 'tank-a').at(-1);
    const table = part('## Costs').split('Money spent by the end')[1] ?? '';
    expect(cells(table, 'Tank A')[0]?.[5]).toBe(String(Math.round(end?.spent ?? 0)));
    expect(cells(table, 'Tankless B')[0]?.[5]).toMatch(/^at least \d+$/);
    expect(cells(table, 'Tankless B')[0]?.[1]).toBe('529');
  });
});

describe('devices told apart in the notes', () => {
  it('are those of the comparison, with the groups that its data hold', () => {
    const own = part('### Which devices are told apart');
    const groups = rowsOf<ToldApartGroupRow>('told-apart-groups').filter(
      ({ analyte, kind }) => analyte === 'arsenic' && kind === 'natural',
    );
    expect(groups).toHaveLength(2);
    const [, ...rest] = cells(own, 'arsenic (total)')[0] ?? [];
    expect(rest[4]?.split('; ')).toHaveLength(2);
    expect(rest[4]).toContain('Pitcher A, Pitcher B and Inline A');
    expect(own).toContain('Not told apart is not the same as equal');
  });
});
