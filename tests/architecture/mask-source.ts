/**
 * TypeScript source with every comment and the inside of every text and pattern turned into
 * spaces, so that what is left can be searched for code. Length, positions and line breaks stay.
 */
export function maskSource(source: string): string {
  const out = source.split('');
  const blank = (from: number, to: number) => {
    for (let i = from; i < to; i++) if (out[i] !== '\n') out[i] = ' ';
  };
  const length = out.length;
  /** One entry for each `${` that is open: how many `{` are open inside it. */
  const holes: number[] = [];
  let at = 0;
  while (at < length) {
    const two = source.slice(at, at + 2);
    const one = source.charAt(at);
    if (two === '//') {
      const end = endOr(source.indexOf('\n', at), length);
      blank(at, end);
      at = end;
    } else if (two === '/*') {
      const end = endOr(source.indexOf('*/', at + 2) + 2, length, 2);
      blank(at, end);
      at = end;
    } else if (one === "'" || one === '"') {
      const end = endOfText(source, at + 1, one);
      blank(at + 1, end);
      at = end + 1;
    } else if (one === '`' || (one === '}' && holes.at(-1) === 0)) {
      if (one === '}') holes.pop();
      const end = endOfTemplate(source, at + 1);
      blank(at + 1, end);
      if (source.charAt(end) === '$') {
        holes.push(0);
        at = end + 2;
      } else {
        at = end + 1;
      }
    } else if (one === '/' && startsPattern(out, at)) {
      const end = endOfPattern(source, at + 1);
      blank(at + 1, end);
      at = end + 1;
    } else {
      const open = holes.length - 1;
      if (open >= 0 && one === '{') holes[open] = (holes[open] ?? 0) + 1;
      if (open >= 0 && one === '}') holes[open] = (holes[open] ?? 0) - 1;
      at += 1;
    }
  }
  return out.join('');
}

function endOr(found: number, otherwise: number, least = 0): number {
  return found < least ? otherwise : found;
}

function endOfText(source: string, from: number, quote: string): number {
  let at = from;
  while (at < source.length && source.charAt(at) !== quote && source.charAt(at) !== '\n') {
    at += source.charAt(at) === '\\' ? 2 : 1;
  }
  return at;
}

/** The closing backtick, or the dollar of the next hole. */
function endOfTemplate(source: string, from: number): number {
  let at = from;
  while (at < source.length && source.charAt(at) !== '`' && source.slice(at, at + 2) !== '${') {
    at += source.charAt(at) === '\\' ? 2 : 1;
  }
  return at;
}

function endOfPattern(source: string, from: number): number {
  let inClass = false;
  let at = from;
  while (at < source.length && source.charAt(at) !== '\n') {
    const one = source.charAt(at);
    if (one === '/' && !inClass) return at;
    if (one === '[') inClass = true;
    if (one === ']') inClass = false;
    at += one === '\\' ? 2 : 1;
  }
  return at;
}

/** A slash divides after a value and opens a pattern after anything else. */
function startsPattern(out: readonly string[], at: number): boolean {
  let back = at - 1;
  while (back >= 0 && /\s/.test(out[back] ?? '')) back -= 1;
  const before = out.slice(Math.max(0, back - 9), back + 1).join('');
  return !/[\w$)\]}'"`]$/.test(before) || /\b(return|typeof|case|in|of)$/.test(before);
}
