import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

// Made from the build, like the files on disk.
const { generatedDocs } = (await import(
  new URL('../../scripts/generated-docs.mjs', import.meta.url).href
)) as { generatedDocs: () => Promise<Map<string, string>> };
const docs = await generatedDocs();

describe('the documents made from the code', () => {
  it.each([...docs.keys()])('docs/%s is what the code says today', (path) => {
    const onDisk = readFileSync(new URL(`../../docs/${path}`, import.meta.url), 'utf8');
    expect(onDisk, 'run npm run build && npm run docs').toBe(docs.get(path));
  });

  it('describes every column of every bench file', () => {
    const page = docs.get('bench-folder.md') ?? '';
    for (const file of ['devices.csv', 'flush-rules.csv', 'usage/*.csv']) {
      expect(page).toContain(`## ${file}`);
    }
  });
});
