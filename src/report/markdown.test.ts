import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeMarkdown, escapeMarkdownLine, markdownTables } from './markdown.ts';
import type { View } from './view.ts';

const VIEW: View = {
  caption: 'Lead was not detected behind one of two devices',
  columns: [
    { head: 'device', align: 'left' },
    { head: 'reduction (%)', align: 'right' },
  ],
  rows: [
    ['Tankless A', '≥ 98.4'],
    ['Pitcher B', '91.6'],
  ],
  legend: ['≥: at least'],
};

describe('Markdown tables', () => {
  it('have caption, head, alignment row and legend', () => {
    expect(markdownTables([VIEW])).toBe(
      [
        '**Lead was not detected behind one of two devices**',
        '',
        '| device | reduction (%) |',
        '| --- | ---: |',
        '| Tankless A | ≥ 98.4 |',
        '| Pitcher B | 91.6 |',
        '',
        '- ≥: at least',
        '',
      ].join('\n'),
    );
  });

  it('say that there are no rows', () => {
    expect(markdownTables([{ ...VIEW, rows: [] }])).toContain('No rows.');
    expect(markdownTables([])).toBe('');
  });

  it('fill a short row and refuse a long one', () => {
    expect(markdownTables([{ ...VIEW, rows: [['A']] }])).toContain('| A |  |');
    expect(() => markdownTables([{ ...VIEW, rows: [['a', 'b', 'c']] }])).toThrow(RangeError);
  });

  it('keep a line break of a cell as a break and never as a row', () => {
    expect(markdownTables([{ ...VIEW, rows: [['a\nb', '1']] }])).toContain('| a<br>b | 1 |');
  });

  it('have as many cells in every row as columns, whatever the texts hold', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.string(), fc.string())), (rows) => {
        const table = markdownTables([{ ...VIEW, rows, legend: [] }])
          .split('\n')
          .slice(2);
        for (const line of table.slice(0, rows.length + 2)) {
          // A bar divides cells unless an odd number of backslashes stands in front of it.
          const bars = [...line.matchAll(/(\\*)\|/g)].filter(
            ([, slashes = '']) => slashes.length % 2 === 0,
          );
          expect(bars).toHaveLength(3);
        }
        expect(table.filter((line) => line.startsWith('|'))).toHaveLength(rows.length + 2);
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});

describe('text in Markdown', () => {
  it('cannot become HTML, link, emphasis, code or cell', () => {
    expect(escapeMarkdown('<script>alert(1)</script>')).toBe(
      '&lt;script&gt;alert(1)&lt;/script&gt;',
    );
    expect(escapeMarkdown('[a](javascript:x)')).toBe('\\[a\\](javascript:x)');
    expect(escapeMarkdown('a|b `c` *d* _e_ ~f~ $g$')).toBe(
      'a\\|b \\`c\\` \\*d\\* \\_e\\_ \\~f\\~ \\$g\\$',
    );
    expect(escapeMarkdown('\\|')).toBe('\\\\\\|');
    expect(escapeMarkdown('&lt;')).toBe('&amp;lt;');
  });

  it('is not linked where it looks like an address', () => {
    expect(escapeMarkdown('https://example.org')).toBe('https\\://example.org');
    expect(escapeMarkdown('www.example.org')).toBe('www\\.example.org');
    expect(escapeMarkdown('a@example.org')).toBe('a@&NoBreak;example.org');
  });

  it('stays on one line and shows control characters', () => {
    expect(escapeMarkdown('a\r\nb\tc')).toBe('a b c');
    expect(escapeMarkdown('a\u0000b\u202ec')).toBe('a\\\\u0000b\\\\u202ec');
  });

  it('opens neither heading, list nor rule at the start of a line', () => {
    expect(escapeMarkdownLine('# a')).toBe('\\# a');
    expect(escapeMarkdownLine('- a')).toBe('\\- a');
    expect(escapeMarkdownLine('---')).toBe('\\---');
    expect(escapeMarkdownLine(' 12) a')).toBe('12\\) a');
    expect(escapeMarkdownLine('> a')).toBe('&gt; a');
  });
});
