import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { FolderMarker } from '../../src/report/output-folder.ts';
import { writeFile, writeFolder } from '../../src/report/write-output.ts';

const MARKER: FolderMarker = {
  file: '.pourbench-notes',
  tool: 'pourbench',
  version: '1.0.0',
  schema: 'notes/1',
};

let base: string;

beforeEach(() => {
  base = fs.realpathSync(fs.mkdtempSync(path.join(os.tmpdir(), 'pourbench-write-')));
});

afterEach(() => {
  fs.rmSync(base, { recursive: true, force: true });
});

const at = (...parts: string[]): string => path.join(base, ...parts);
const read = (...parts: string[]): string => fs.readFileSync(at(...parts), 'utf8');

/** All that stands below the base, so that a file left behind shows. */
function everything(): string[] {
  return fs
    .readdirSync(base, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => path.relative(base, path.join(entry.parentPath, entry.name)))
    .sort();
}

function notes(...names: string[]): Map<string, string> {
  return new Map(names.map((name) => [name, `new ${name}\n`]));
}

const write = (files: Map<string, string>, force = false): Promise<void> =>
  writeFolder(at('notes'), files, { marker: MARKER, force });

describe('writing a file', () => {
  it('makes the folders above it and leaves nothing else', async () => {
    await writeFile(at('a', 'b', 'c.csv'), 'x\n');
    expect(read('a', 'b', 'c.csv')).toBe('x\n');
    expect(everything()).toEqual(['a/b/c.csv']);
  });

  it('replaces a file and keeps its permissions', async () => {
    fs.writeFileSync(at('c.csv'), 'old', { mode: 0o640 });
    fs.chmodSync(at('c.csv'), 0o640);
    await writeFile(at('c.csv'), 'new');
    expect(read('c.csv')).toBe('new');
    expect(fs.statSync(at('c.csv')).mode & 0o777).toBe(0o640);
    expect(everything()).toEqual(['c.csv']);
  });

  it('writes through a link to the file behind it', async () => {
    fs.writeFileSync(at('real.csv'), 'old');
    fs.symlinkSync(at('real.csv'), at('link.csv'));
    await writeFile(at('link.csv'), 'new');
    expect(read('real.csv')).toBe('new');
    expect(fs.lstatSync(at('link.csv')).isSymbolicLink()).toBe(true);
  });

  it('writes into a pipe instead of replacing it', async () => {
    execFileSync('mkfifo', [at('pipe')]);
    const reader = fs.promises.readFile(at('pipe'), 'utf8');
    await writeFile(at('pipe'), 'through');
    expect(await reader).toBe('through');
    expect(fs.lstatSync(at('pipe')).isFIFO()).toBe(true);
  });

  it('refuses a folder and an input, and leaves them as they are', async () => {
    fs.mkdirSync(at('folder'));
    fs.writeFileSync(at('devices.csv'), 'device');
    await expect(writeFile(at('folder'), 'x')).rejects.toMatchObject({ code: 'output-exists' });
    const input = path.join(base, 'folder', '..', 'devices.csv');
    await expect(writeFile(input, 'x', [at('devices.csv')])).rejects.toMatchObject({
      code: 'output-exists',
    });
    expect(read('devices.csv')).toBe('device');
  });

  it('says why it cannot, names the file, and takes back the folders it made', async () => {
    fs.writeFileSync(at('file'), '');
    await expect(writeFile(at('file', 'below.csv'), 'x')).rejects.toMatchObject({
      code: 'output-unwritable',
      message: expect.stringContaining('a part of the path is a file'),
      place: { file: at('file', 'below.csv') },
    });
    const long = 'x'.repeat(300);
    await expect(writeFile(at('made', long), 'x')).rejects.toMatchObject({
      code: 'output-unwritable',
    });
    expect(fs.readdirSync(base)).toEqual(['file']);
  });
});

describe('writing a folder', () => {
  it('fills a missing folder and marks it with what it wrote', async () => {
    await write(notes('index.md', 'devices/a.md'));
    expect(everything()).toEqual([
      'notes/.pourbench-notes',
      'notes/devices/a.md',
      'notes/index.md',
    ]);
    expect(JSON.parse(read('notes', '.pourbench-notes'))).toMatchObject({
      tool: { name: 'pourbench', version: '1.0.0' },
      schema: 'notes/1',
      files: [{ path: 'devices/a.md' }, { path: 'index.md' }],
    });
  });

  it('fills an empty folder', async () => {
    fs.mkdirSync(at('notes'), { mode: 0o750 });
    await write(notes('index.md'));
    expect(read('notes', 'index.md')).toBe('new index.md\n');
    expect(fs.statSync(at('notes')).mode & 0o777).toBe(0o750);
  });

  it('gives the same bytes whatever the order of the files', async () => {
    await write(notes('a.md', 'b.md'));
    const first = read('notes', '.pourbench-notes');
    await write(notes('b.md', 'a.md'));
    expect(read('notes', '.pourbench-notes')).toBe(first);
  });

  it('replaces its own files, so that old pages do not stay', async () => {
    await write(notes('index.md', 'devices/gone.md'));
    await write(notes('index.md', 'new.md'));
    expect(everything()).toEqual(['notes/.pourbench-notes', 'notes/index.md', 'notes/new.md']);
  });

  it('keeps files of others inside a folder of its own', async () => {
    await write(notes('index.md', 'devices/a.md'));
    fs.mkdirSync(at('notes', 'photos', 'empty'), { recursive: true });
    fs.writeFileSync(at('notes', 'photos', 'one.jpg'), 'photo', { mode: 0o600 });
    fs.utimesSync(at('notes', 'photos', 'one.jpg'), 1_000_000, 1_000_000);
    fs.writeFileSync(at('notes', 'devices', 'own.txt'), 'own words');
    fs.symlinkSync('index.md', at('notes', 'start.md'));
    await write(notes('index.md'));
    expect(read('notes', 'photos', 'one.jpg')).toBe('photo');
    expect(fs.statSync(at('notes', 'photos', 'one.jpg')).mtimeMs).toBe(1_000_000_000);
    expect(fs.statSync(at('notes', 'photos', 'one.jpg')).mode & 0o777).toBe(0o600);
    expect(read('notes', 'devices', 'own.txt')).toBe('own words');
    expect(fs.readlinkSync(at('notes', 'start.md'))).toBe('index.md');
    expect(fs.existsSync(at('notes', 'photos', 'empty'))).toBe(true);
    expect(fs.existsSync(at('notes', 'devices', 'a.md'))).toBe(false);
    expect(fs.readdirSync(base)).toEqual(['notes']);
  });

  it('refuses a folder with files of others and no marker, and changes nothing', async () => {
    fs.mkdirSync(at('notes'));
    fs.writeFileSync(at('notes', 'thesis.md'), 'years of work');
    await expect(write(notes('index.md'))).rejects.toMatchObject({
      code: 'output-exists',
      remedy: expect.stringContaining('--force'),
    });
    expect(everything()).toEqual(['notes/thesis.md']);
  });

  it('takes no marker for its own that is not', async () => {
    const texts = ['', '{', '[]', '{"tool":{"name":"another"},"schema":"notes/1","files":[]}'];
    for (const text of texts) {
      fs.rmSync(at('notes'), { recursive: true, force: true });
      fs.mkdirSync(at('notes'));
      fs.writeFileSync(at('notes', '.pourbench-notes'), text);
      await expect(write(notes('index.md'))).rejects.toMatchObject({ code: 'output-exists' });
    }
  });

  it('with force overwrites files of the same name only, and removes none', async () => {
    fs.mkdirSync(at('notes'));
    fs.writeFileSync(at('notes', 'thesis.md'), 'years of work');
    fs.writeFileSync(at('notes', 'index.md'), 'theirs');
    await write(notes('index.md'), true);
    expect(read('notes', 'thesis.md')).toBe('years of work');
    expect(read('notes', 'index.md')).toBe('new index.md\n');
    await write(notes('index.md'));
    expect(read('notes', 'thesis.md')).toBe('years of work');
  });

  it('refuses to undo changes somebody made to its pages, unless forced', async () => {
    await write(notes('index.md', 'devices/a.md'));
    fs.appendFileSync(at('notes', 'index.md'), 'my own paragraph\n');
    fs.appendFileSync(at('notes', 'devices', 'a.md'), 'another\n');
    await expect(write(notes('index.md'))).rejects.toMatchObject({
      code: 'output-exists',
      message: expect.stringContaining('changed since'),
    });
    expect(read('notes', 'index.md')).toContain('my own paragraph');
    await write(notes('index.md'), true);
    expect(read('notes', 'index.md')).toBe('new index.md\n');
    expect(read('notes', 'devices', 'a.md')).toContain('another');
  });

  it('refuses to put a new page in the place of a file of somebody else', async () => {
    await write(notes('index.md'));
    fs.writeFileSync(at('notes', 'photos.md'), 'theirs');
    await expect(write(notes('index.md', 'photos.md'))).rejects.toMatchObject({
      code: 'output-exists',
      message: expect.stringContaining('photos.md'),
    });
    expect(read('notes', 'photos.md')).toBe('theirs');
  });

  it('never looks outside the folder, whatever a marker lists', async () => {
    fs.writeFileSync(at('outside.txt'), 'outside');
    await write(notes('index.md'));
    const marker = JSON.parse(read('notes', '.pourbench-notes')) as { files: object[] };
    marker.files.push({ path: '../outside.txt', sha256: 'x' });
    fs.writeFileSync(at('notes', '.pourbench-notes'), JSON.stringify(marker));
    await write(notes('index.md'));
    expect(read('outside.txt')).toBe('outside');
  });

  it('refuses a file, the working folder, those above it, and what is protected', async () => {
    fs.writeFileSync(at('file'), 'x');
    fs.mkdirSync(at('bench', 'lab'), { recursive: true });
    fs.writeFileSync(at('bench', 'bench.json'), '{}');
    const options = { marker: MARKER, force: true, protect: [at('bench')] };
    const refused = [
      at('file'),
      at('bench'),
      base,
      process.cwd(),
      path.dirname(process.cwd()),
      '/',
    ];
    for (const target of refused) {
      await expect(writeFolder(target, notes('index.md'), options)).rejects.toMatchObject({
        code: 'output-exists',
      });
    }
    expect(everything()).toEqual(['bench/bench.json', 'file']);
  });

  it('knows the bench behind a link', async () => {
    fs.mkdirSync(at('bench'));
    fs.symlinkSync(at('bench'), at('link'));
    const options = { marker: MARKER, protect: [at('bench')] };
    await expect(writeFolder(at('link'), notes('index.md'), options)).rejects.toMatchObject({
      code: 'output-exists',
    });
  });

  it('may write beside the files of a bench, in a folder of its own', async () => {
    fs.mkdirSync(at('bench'));
    const options = { marker: MARKER, protect: [at('bench')] };
    await writeFolder(at('bench', 'notes'), notes('index.md'), options);
    expect(read('bench', 'notes', 'index.md')).toBe('new index.md\n');
  });

  it('refuses paths that leave the folder or meet on other systems', async () => {
    for (const name of ['../a.md', '/a.md', 'a//b.md', './a.md', 'a\\b.md', '.pourbench-notes']) {
      await expect(write(notes(name))).rejects.toThrow(RangeError);
    }
    await expect(write(notes('A.md', 'a.md'))).rejects.toThrow(RangeError);
    expect(fs.readdirSync(base)).toEqual([]);
  });

  it('leaves the old folder whole and nothing beside it when a file cannot be written', async () => {
    await write(notes('index.md'));
    fs.writeFileSync(at('notes', 'devices'), 'a file where a folder is wanted');
    const before = everything();
    await expect(write(notes('index.md', 'devices/a.md'))).rejects.toMatchObject({
      code: 'output-unwritable',
    });
    expect(everything()).toEqual(before);
    expect(fs.readdirSync(base)).toEqual(['notes']);
  });

  it('puts the old folder back when the new one cannot be moved in', async () => {
    await write(notes('index.md'));
    const before = read('notes', '.pourbench-notes');
    vi.resetModules();
    vi.doMock('node:fs/promises', async (original) => {
      const real = await original<typeof import('node:fs/promises')>();
      let moves = 0;
      const rename: typeof real.rename = async (from, to) => {
        moves += 1;
        if (moves === 2) {
          throw Object.assign(new Error('full'), { code: 'ENOSPC', syscall: 'rename' });
        }
        return real.rename(from, to);
      };
      return { ...real, rename };
    });
    try {
      const failing = await import('../../src/report/write-output.ts');
      await expect(
        failing.writeFolder(at('notes'), notes('index.md', 'new.md'), { marker: MARKER }),
      ).rejects.toMatchObject({
        code: 'output-unwritable',
        message: expect.stringContaining('the disk is full'),
      });
    } finally {
      vi.doUnmock('node:fs/promises');
      vi.resetModules();
    }
    expect(read('notes', '.pourbench-notes')).toBe(before);
    expect(fs.readdirSync(base)).toEqual(['notes']);
  });
});
