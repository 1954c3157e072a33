import { createHash } from 'node:crypto';

/** What a folder the tool wrote carries, so that it can be told from other folders. */
export interface FolderMarker {
  /** Name of the marker file, such as `.pourbench-notes`. */
  readonly file: string;
  readonly tool: string;
  readonly version: string;
  /** Kind and number of the folder's layout, such as `notes/1`; the number may rise. */
  readonly schema: string;
}

/** SHA-256 in hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/**
 * The files of an output folder with the marker among them: JSON that names the tool, its version,
 * the schema, and every file with its SHA-256, in order of path.
 *
 * @throws {RangeError} a path leaves the folder, is the marker's, or differs from another by case
 *   only
 */
export function filesWithMarker(
  files: ReadonlyMap<string, string>,
  marker: FolderMarker | null,
): Map<string, string> {
  const seen = new Set(marker === null ? [] : [marker.file.toLowerCase()]);
  for (const name of files.keys()) {
    const parts = name.split('/');
    if (/[\\:\0]/.test(name) || parts.some((part) => part === '' || /^\.{1,2}$/.test(part))) {
      throw new RangeError(`not a path below the folder: ${name}`);
    }
    if (seen.has(name.toLowerCase())) throw new RangeError(`two files at ${name}`);
    seen.add(name.toLowerCase());
  }
  if (marker === null) return new Map(files);
  const names = [...files.keys()].sort();
  const content = {
    tool: { name: marker.tool, version: marker.version },
    schema: marker.schema,
    files: names.map((name) => ({ path: name, sha256: sha256(files.get(name) ?? '') })),
  };
  return new Map([...files, [marker.file, `${JSON.stringify(content, null, 2)}\n`]]);
}

/**
 * The files an existing marker lists, by path; null where the text is not a marker of this tool
 * and of this kind of folder.
 */
export function listedFiles(text: string, marker: FolderMarker): Map<string, string> | null {
  const content = parsed(text);
  if (!isRecord(content)) return null;
  const { tool, schema, files } = content;
  if (!isRecord(tool) || !Array.isArray(files) || typeof schema !== 'string') return null;
  const { name } = tool;
  if (name !== marker.tool || kindOf(schema) !== kindOf(marker.schema)) return null;
  const listed = new Map<string, string>();
  for (const entry of files) {
    if (!isRecord(entry)) return null;
    const { path, sha256: sum } = entry;
    if (typeof path !== 'string' || typeof sum !== 'string') return null;
    listed.set(path, sum);
  }
  return listed;
}

function kindOf(schema: string): string {
  return schema.split('/')[0] ?? '';
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
