// Writes the parts of docs/ that come from the code: JSON Schemas, findings, bench files, commands.
// Run after a build: `npm run build && npm run docs`. Tests compare the files with what this makes.
import { mkdirSync, writeFileSync } from 'node:fs';
import { generatedDocs } from './generated-docs.mjs';

const docs = new URL('../docs/', import.meta.url);
for (const [path, text] of await generatedDocs()) {
  const target = new URL(path, docs);
  mkdirSync(new URL('.', target), { recursive: true });
  writeFileSync(target, text);
}
