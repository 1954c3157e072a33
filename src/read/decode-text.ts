import { BenchError, type Finding, finding, place } from '../findings/index.ts';

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252' | 'macintosh';

export interface DecodedText {
  readonly text: string;
  readonly encoding: Encoding;
  readonly findings: readonly Finding[];
}

/**
 * Bytes of a text file to text.
 *
 * UTF-8 is tried strictly, UTF-16 only by its byte-order mark, and Windows-1252 last, with a
 * finding, since any byte sequence passes for it. A byte-order mark and a final DOS end-of-file
 * mark (0x1A) are taken off.
 * @param stated the encoding somebody named, which is then taken at its word
 * @throws {BenchError} file-binary when the bytes hold NULs and no UTF-16 mark
 */
export function decodeText(
  bytes: Uint8Array,
  path: string,
  stated: Encoding | null = null,
): DecodedText {
  if (stated !== null) {
    const text = new TextDecoder(stated).decode(bytes);
    return { text: withoutEndMark(text), encoding: stated, findings: [] };
  }
  const encoding = markedEncoding(bytes);
  if (encoding === 'utf-16le' || encoding === 'utf-16be') {
    const text = new TextDecoder(encoding).decode(bytes);
    return { text: withoutEndMark(text), encoding, findings: [] };
  }
  if (isBinary(bytes)) {
    throw new BenchError(
      'file-binary',
      'the file holds binary data',
      'export it as CSV text; a spreadsheet file has to be saved as CSV first',
      place({ file: path }),
    );
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { text: withoutEndMark(text), encoding: 'utf-8', findings: [] };
  } catch {
    const text = new TextDecoder('windows-1252').decode(bytes);
    return {
      text: withoutEndMark(text),
      encoding: 'windows-1252',
      findings: [
        finding(
          'file-encoding',
          'the file is not UTF-8 and was read as Windows-1252',
          'look at its accented letters and micro signs; save it as UTF-8 if they are wrong',
          place({ file: path }),
        ),
      ],
    };
  }
}

function markedEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return null;
}

function isBinary(bytes: Uint8Array): boolean {
  // Zip containers (spreadsheets) and old office files declare themselves in their first bytes;
  // text never holds a NUL.
  const magic = bytes.subarray(0, 4);
  if (magic[0] === 0x50 && magic[1] === 0x4b && magic[2] === 0x03 && magic[3] === 0x04) return true;
  if (magic[0] === 0xd0 && magic[1] === 0xcf && magic[2] === 0x11 && magic[3] === 0xe0) return true;
  if (magic[0] === 0x25 && magic[1] === 0x50 && magic[2] === 0x44 && magic[3] === 0x46) return true;
  return bytes.includes(0);
}

function withoutEndMark(text: string): string {
  const start = text.startsWith('\ufeff') ? 1 : 0;
  const mark = text.lastIndexOf('\u001a');
  const isFinal = mark !== -1 && text.slice(mark + 1).trim() === '';
  return text.slice(start, isFinal ? mark : text.length);
}
