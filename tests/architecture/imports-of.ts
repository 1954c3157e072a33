import { maskSource } from './mask-source.ts';

/** One import or re-export of a source file. */
export interface Import {
  /** As written; null where it is computed and cannot be known. */
  readonly specifier: string | null;
  /** `type`: gone once compiled. `static`: loaded at once. `dynamic`: loaded when reached. */
  readonly kind: 'type' | 'static' | 'dynamic';
  /** 1-based. */
  readonly line: number;
}

/** Every import of a TypeScript source, in the order of the text. */
export function importsOf(source: string): Import[] {
  const code = maskSource(source);
  const found: (Import & { at: number })[] = [];
  const add = (at: number, quoteAt: number, kind: Import['kind']) => {
    const quote = source.charAt(quoteAt);
    const isText = quote === "'" || quote === '"';
    const end = source.indexOf(quote, quoteAt + 1);
    const specifier = isText ? source.slice(quoteAt + 1, end) : null;
    found.push({ specifier, kind, line: source.slice(0, at).split('\n').length, at });
  };
  const bound = /(?<![\w$.])(?:import|export)\s+(type\s+)?(?:[\w$*\s{},]+?)\s*from\s*(?=['"])/g;
  for (const match of code.matchAll(bound)) {
    const isType = match[1] !== undefined && !/type\s+from/.test(match[0]);
    add(match.index, match.index + match[0].length, isType ? 'type' : 'static');
  }
  for (const match of code.matchAll(/(?<![\w$.])import\s*(?=['"])/g)) {
    add(match.index, match.index + match[0].length, 'static');
  }
  for (const match of code.matchAll(/(?<![\w$.])import\s*\(\s*/g)) {
    add(match.index, match.index + match[0].length, 'dynamic');
  }
  for (const match of code.matchAll(/(?<![\w$.])require\s*\(\s*/g)) {
    add(match.index, match.index + match[0].length, 'static');
  }
  return found
    .sort((a, b) => a.at - b.at)
    .map(({ specifier, kind, line }) => ({ specifier, kind, line }));
}
