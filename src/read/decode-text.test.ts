import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import { decodeText } from './decode-text.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string) => Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le'));

describe('the text of a file', () => {
  it('is UTF-8 without its byte-order mark', () => {
    expect(decodeText(utf8('\ufeffµg/L'), 'x')).toEqual({
      text: 'µg/L',
      encoding: 'utf-8',
      findings: [],
    });
  });

  it('is UTF-16 of either order by its mark', () => {
    const little = utf16('µg/L\t1');
    const big = Uint8Array.from(Buffer.from(little).swap16());
    expect(decodeText(little, 'x')).toMatchObject({ text: 'µg/L\t1', encoding: 'utf-16le' });
    expect(decodeText(big, 'x')).toMatchObject({ text: 'µg/L\t1', encoding: 'utf-16be' });
  });

  it('is Windows-1252 with a note where it is not UTF-8', () => {
    const { text, findings } = decodeText(Uint8Array.of(0xb5, 0x67, 0x2f, 0x4c), 'x');
    expect(text).toBe('µg/L');
    expect(findings.map(({ code }) => code)).toEqual(['file-encoding']);
  });

  it('is in the encoding somebody stated, without a note', () => {
    const { text, findings } = decodeText(Uint8Array.of(0xb5), 'x', 'macintosh');
    expect(text).toBe('µ');
    expect(findings).toEqual([]);
  });

  it('ends before a DOS end mark, which is kept anywhere else', () => {
    expect(decodeText(utf8('a,b\n1,2\n\u001a'), 'x').text).toBe('a,b\n1,2\n');
    expect(decodeText(utf8('a\u001ab'), 'x').text).toBe('a\u001ab');
  });

  it('is refused where the bytes are a spreadsheet or hold NULs', () => {
    for (const bytes of [Uint8Array.of(0x50, 0x4b, 3, 4), Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0)]) {
      expect(() => decodeText(bytes, 'x')).toThrow(BenchError);
    }
    expect(() => decodeText(Uint8Array.of(0x61, 0, 0x62), 'x')).toThrow(BenchError);
  });

  it('is empty for no bytes', () => {
    expect(decodeText(new Uint8Array(), 'x').text).toBe('');
  });
});
