import { describe, expect, it } from 'vitest';
import { type Finding, finding, place } from '../findings/index.ts';
import { findingsText, findingText } from './findings-text.ts';
import { findingsView } from './findings-view.ts';
import { colourStyle } from './style.ts';

const UNIT = finding(
  'unit-unknown',
  '"ugl" is not a known unit',
  'write ug/L, or name the unit in lab/july.layout.json',
  place({ file: 'lab/july.csv', line: 14, column: 6 }),
);

function note(line: number): Finding {
  return finding('rated-only', 'only rated', 'measure it', place({ file: 'a.csv', line }));
}

describe('findings as text', () => {
  it('take two lines: place, level, code and message, then the remedy', () => {
    expect(findingText(UNIT)).toBe(
      'lab/july.csv:14:6: error unit-unknown: "ugl" is not a known unit\n' +
        '  remedy: write ug/L, or name the unit in lab/july.layout.json',
    );
  });

  it('leave out a place that is not known', () => {
    expect(findingText(finding('bench-missing', 'no bench', 'make one'))).toBe(
      'error bench-missing: no bench\n  remedy: make one',
    );
  });

  it('are followed by their number', () => {
    expect(findingsText([UNIT, note(1), note(2)])).toMatch(/\n3 findings \(1 error, 2 notes\)\n$/);
    expect(findingsText([UNIT])).toMatch(/\n1 finding \(1 error\)\n$/);
    expect(findingsText([])).toBe('');
  });

  it('are cut after twenty, and no error hides behind notes', () => {
    const notes = Array.from({ length: 30 }, (_, i) => note(i + 1));
    const lines = findingsText([...notes, UNIT])
      .trimEnd()
      .split('\n');
    expect(lines).toHaveLength(2 * 20 + 1);
    expect(lines.at(-3)).toContain('error unit-unknown');
    expect(lines.at(-1)).toBe('31 findings (1 error, 30 notes); 20 shown, check prints them all');
  });

  it('are all printed where no limit is set', () => {
    const notes = Array.from({ length: 30 }, (_, i) => note(i + 1));
    expect(findingsText(notes, { limit: null }).split('\n')).toHaveLength(2 * 30 + 2);
  });

  it('stand in reading order whatever the order they were raised in', () => {
    const notes = [note(3), note(1), note(2)];
    expect(findingsText(notes)).toBe(findingsText([...notes].reverse()));
    expect(findingsText(notes)).toMatch(/a\.csv:1:.*a\.csv:2:.*a\.csv:3:/s);
  });

  it('show control characters of a cell and keep to two lines', () => {
    const odd = finding('unit-unknown', 'a\n\u001b[2Jb', 'c\rd', place({ file: 'x\u0007.csv' }));
    expect(findingText(odd)).toBe('x\\u0007.csv: error unit-unknown: a \\u001b[2Jb\n  remedy: c d');
  });

  it('colour the level where a style is given', async () => {
    expect(findingText(UNIT, await colourStyle(1))).toContain('\u001b[31merror\u001b[39m');
    expect(findingText(UNIT, await colourStyle(0))).toBe(findingText(UNIT));
  });
});

describe('findings as a table', () => {
  it('has one row a finding, in reading order', () => {
    const view = findingsView([UNIT, note(2)]);
    expect(view.caption).toBe('2 findings about the data');
    expect(view.rows.map(([where]) => where)).toEqual(['a.csv:2', 'lab/july.csv:14:6']);
  });

  it('says where there are none', () => {
    expect(findingsView([]).caption).toBe('No findings about the data');
  });
});
