import { describe, expect, it } from 'vitest';
import { importsOf } from './imports-of.ts';
import { maskSource } from './mask-source.ts';

describe('masking a source', () => {
  it('keeps length and line breaks, and blanks comments, texts, templates and patterns', () => {
    const source = `a = 'x\\'y'; // 'z
b = /['/]x/.test(c) / 2; /* \`
 */ d = \`e \${f({ g: '}' })} h\`; 'µ😀'`;
    const masked = maskSource(source);
    expect(masked).toHaveLength(source.length);
    expect(masked.replace(/ +/g, ' ')).toBe(
      `a = ' ';${' '}
b = / /.test(c) / 2;${' '}
 d = \` \${f({ g: ' ' })} \`; ' '`,
    );
  });

  it('ends at the end of a source that leaves something open', () => {
    for (const source of ["'a", '`a', `\`a \${b`, '/* a', '// a', 'x = /a', '']) {
      expect(maskSource(source)).toHaveLength(source.length);
    }
  });
});

describe('the imports of a source', () => {
  it('are found in every form, with their lines', () => {
    const source = [
      "import a from 'a';",
      "import * as b from 'b';",
      "import c, { d as e } from 'c';",
      "import type { F } from 'f';",
      "import { type G } from 'g';",
      "import 'h';",
      "export * from 'i';",
      "export type { J } from 'j';",
      "export { k } from 'k';",
      "const l = await import('l');",
      'const m = import(`m`);',
      "type N = import('n').N;",
      "import type from 'o';",
    ].join('\n');
    expect(importsOf(source).map((each) => [each.specifier, each.kind, each.line])).toEqual([
      ['a', 'static', 1],
      ['b', 'static', 2],
      ['c', 'static', 3],
      ['f', 'type', 4],
      ['g', 'static', 5],
      ['h', 'static', 6],
      ['i', 'static', 7],
      ['j', 'type', 8],
      ['k', 'static', 9],
      ['l', 'dynamic', 10],
      [null, 'dynamic', 11],
      ['n', 'dynamic', 12],
      ['o', 'static', 13],
    ]);
  });

  it('are not found in comments, texts, names and properties', () => {
    const source = [
      "// import a from 'a';",
      'const b = "import c from \'c\'";',
      "const d = e.import('f');",
      "const reimport = (x: string) => x; reimport('g');",
      "export const from = 'h';",
      'const i = import.meta.url;',
    ].join('\n');
    expect(importsOf(source)).toEqual([]);
  });
});
