import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/index.ts';
import { baseBench } from './base-bench.ts';
import type { Fault } from './fault.ts';
import { LAB_FAULTS } from './lab-faults.ts';
import { LOG_FAULTS } from './log-faults.ts';

let clean: readonly Finding[] = [];

beforeAll(() => {
  clean = baseBench().read().findings;
});

it('holds at least 40 faults, each told apart by its name', () => {
  const names = [...LAB_FAULTS, ...LOG_FAULTS].map(({ name }) => name);
  expect(names.length).toBeGreaterThanOrEqual(40);
  expect(new Set(names).size).toBe(names.length);
});

it('is planted in a bench that raises nothing above a note', () => {
  expect(clean.filter(({ level }) => level !== 'note')).toEqual([]);
});

function check({ name, code, plant }: Fault): void {
  it(`${code}: ${name}`, () => {
    const bench = baseBench();
    const place = plant(bench);
    expect(clean.map((item) => item.code)).not.toContain(code);
    const found = bench.read().findings;
    const places = found
      .filter((item) => item.code === code)
      .map(({ place: { file, line, column } }) => ({ file, line, column }));
    expect(places).toContainEqual(place);
    const own = found.find(
      (item) =>
        item.code === code && item.place.file === place.file && item.place.line === place.line,
    );
    expect(own?.level).not.toBe('note');
    expect(own?.remedy).not.toBe('');
  });
}

describe('a fault of lab results raises its code at its cell', () => {
  for (const fault of LAB_FAULTS) check(fault);
});

describe('a fault of the bench logs raises its code at its cell', () => {
  for (const fault of LOG_FAULTS) check(fault);
});
