import { describe, expect, it } from 'vitest';
import { analyseBy, bottleLines } from '../../../src/analyse/sheets/index.ts';
import { analyteIndex } from '../../../src/reference/index.ts';

/** Analyte, hours, and the part of the preservative that has to be named. */
const TABLE_II: readonly (readonly [string, number, string])[] = [
  ['ph', 0.25, 'none'],
  ['chlorine-free', 0.25, 'none'],
  ['chlorine-total', 0.25, 'none'],
  ['nitrate', 48, 'none'],
  ['nitrite', 48, 'none'],
  ['orthophosphate', 48, 'none'],
  ['turbidity', 48, 'none'],
  ['total-dissolved-solids', 7 * 24, 'none'],
  ['total-alkalinity', 14 * 24, 'none'],
  ['cyanide-total', 14 * 24, 'sodium hydroxide'],
  ['chloroform', 14 * 24, 'thiosulfate'],
  ['ammonia', 28 * 24, 'sulfuric acid'],
  ['nitrate-nitrite', 28 * 24, 'sulfuric acid'],
  ['total-organic-carbon', 28 * 24, 'sulfuric acid'],
  ['sulfate', 28 * 24, 'none'],
  ['conductivity', 28 * 24, 'none'],
  ['chloride', 28 * 24, 'none'],
  ['fluoride', 28 * 24, 'none'],
  ['mercury', 28 * 24, 'nitric acid'],
  ['chromium-6', 28 * 24, 'buffer'],
];

const lineOf = (key: string) => {
  const analyte = analyteIndex([]).byKey(key);
  if (analyte === undefined) throw new Error(`no analyte ${key}`);
  const [line] = bottleLines([analyte]);
  if (line === undefined) throw new Error(`no bottle for ${key}`);
  return line;
};

describe('40 CFR 136.3 table II (US EPA; from memory), maximum holding time', () => {
  it.each(TABLE_II)('of %s is %d hours, preserved with: %s', (key, hours, preservative) => {
    const line = lineOf(key);
    expect(line.time.hours).toBe(hours);
    expect(line.preservative).toContain(preservative);
  });

  it.each(['lead', 'copper', 'arsenic', 'total-hardness'])(
    'of %s is six months in nitric acid, between 181 and 184 days',
    (key) => {
      const line = lineOf(key);
      expect(line.preservative).toContain('nitric acid');
      expect(line.time.hours / 24).toBeGreaterThanOrEqual(181);
      expect(line.time.hours / 24).toBeLessThanOrEqual(184);
    },
  );
});

describe('40 CFR 141.852(a)(3) (US EPA; from memory), time from collection to incubation', () => {
  it.each(['total-coliform', 'e-coli'])('of %s is 30 hours', (key) => {
    expect(lineOf(key).time.hours).toBe(30);
    const taken = { text: '2026-02-28T20:15', seconds: Date.UTC(2026, 1, 28, 20, 15) / 1000 };
    expect(analyseBy({ ...taken, hasTime: true }, 30)).toBe('2026-03-02T02:15');
    expect(analyseBy({ ...taken, hasTime: false }, 30)).toBeNull();
    expect(analyseBy(null, 30)).toBeNull();
  });
});
