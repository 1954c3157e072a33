import { describe, expect, it } from 'vitest';
import { preservativesIn } from '../../../src/analyse/quality/preservatives.ts';
import { analyseBy, bottleLines } from '../../../src/analyse/sheets/index.ts';
import { analyteIndex } from '../../../src/reference/index.ts';
import { DEADLINES, GROUP_DEADLINES } from './published-deadlines.ts';

const index = analyteIndex([]);

const lineOf = (key: string) => {
  const analyte = index.byKey(key);
  if (analyte === undefined) throw new Error(`no analyte ${key}`);
  const [line] = bottleLines([analyte]);
  if (line === undefined) throw new Error(`no bottle for ${key}`);
  return line;
};

/** Six months are 181 to 184 days by the calendar; all other times are exact. */
function expectTime(hours: number | undefined, printed: string) {
  const { groups } = /^(?<count>[\d.]+) (?<unit>minutes|hours|days|months)$/.exec(printed) ?? {};
  const count = Number(groups?.['count']);
  if (groups?.['unit'] === 'months') {
    expect(hours).toBeGreaterThanOrEqual((181 / 6) * count * 24);
    expect(hours).toBeLessThanOrEqual((184 / 6) * count * 24);
    return;
  }
  const hoursEach = { minutes: 1 / 60, hours: 1, days: 24 }[groups?.['unit'] ?? ''];
  expect(hours).toBe(count * (hoursEach ?? Number.NaN));
}

describe('maximum holding time and preservation', () => {
  it.each(DEADLINES)('$rule ($verified), $key: $time in $preservative', (row) => {
    const line = lineOf(row.key);
    expectTime(line.time?.hours, row.time);
    expect(preservativesIn(line.preservative)).toEqual(
      expect.arrayContaining([...row.preservative]),
    );
    expect(line.time?.warmestC ?? null).toBe(row.warmestC);
    expect(line.time?.rule).toBe(row.rule);
    expect(line.time?.verified).toBe(row.verified);
  });

  it('cover every analyte that has a deadline, by name or by its group', () => {
    const listed = new Set(DEADLINES.map(({ key }) => key));
    const groups = new Map(GROUP_DEADLINES.map((row) => [row.group, row]));
    const unlisted = index.analytes.filter((analyte) => {
      const [line] = bottleLines([analyte]);
      return line?.time != null && !listed.has(analyte.key) && !groups.has(analyte.group);
    });
    expect(unlisted.map(({ key }) => key)).toEqual([]);
  });

  it.each(GROUP_DEADLINES)('$rule ($verified), the rest of $group: $time', (row) => {
    const listed = new Set(DEADLINES.map(({ key }) => key));
    const rest = index.analytes.filter(
      (analyte) =>
        analyte.group === row.group &&
        !listed.has(analyte.key) &&
        !row.without.includes(analyte.key),
    );
    expect(rest.length).toBeGreaterThan(3);
    for (const analyte of rest) {
      const [line] = bottleLines([analyte]);
      expectTime(line?.time?.hours, row.time);
      expect(line?.time?.rule).toBe(row.rule);
      expect(line?.time?.verified).toBe(row.verified);
      const named = preservativesIn(line?.preservative ?? '');
      expect(named).toEqual(expect.arrayContaining([...row.preservative]));
    }
    for (const key of row.without) expect(lineOf(key).time).toBeNull();
  });
});

describe('what has no known holding time', () => {
  it.each(['legionella', 'caffeine', 'microplastics', 'arsenic-iii', 'iodine-131'])(
    '%s has a line that says to ask the lab',
    (key) => {
      const line = lineOf(key);
      expect(line.time).toBeNull();
      expect(line.preservative).toBe('as the lab says');
    },
  );

  it.each(['temperature', 'langelier-index'])('%s has no bottle at all', (key) => {
    const analyte = index.byKey(key);
    expect(analyte === undefined ? null : bottleLines([analyte])).toEqual([]);
  });

  it('leaves out no analyte that goes into a bottle', () => {
    const lines = bottleLines(index.analytes);
    const bottled = lines.flatMap(({ analytes }) => analytes.map(({ key }) => key));
    expect(new Set(bottled).size).toBe(bottled.length);
    expect(bottled).toHaveLength(index.analytes.length - 5);
  });
});

describe('40 CFR 141.852(a)(3), latest start of a coliform test on the wall clock', () => {
  it('counts 30 hours over the end of a month, and needs a time of day', () => {
    const taken = { text: '2026-02-28T20:15', seconds: Date.UTC(2026, 1, 28, 20, 15) / 1000 };
    expect(analyseBy({ ...taken, hasTime: true }, 30)).toBe('2026-03-02T02:15');
    expect(analyseBy({ ...taken, hasTime: false }, 30)).toBeNull();
    expect(analyseBy(null, 30)).toBeNull();
  });
});
