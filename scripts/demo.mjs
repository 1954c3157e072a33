// The main job on the sample bench: review notes of fourteen devices. It can be run again and
// again: a folder of notes that the tool wrote itself is written anew without being asked.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const BENCH = 'samples/fourteen-devices';
const NOTES = 'notes/fourteen-devices';

if (!existsSync(path.join(ROOT, 'dist/cli/main.js'))) {
  console.error('The tool is not built: run `npm ci` or `npm run build` first.');
  process.exit(2);
}

console.log(`pourbench notes ${BENCH} -o ${NOTES}`);
const { status } = spawnSync(
  process.execPath,
  ['bin/pourbench.js', 'notes', BENCH, '-o', NOTES, '--quiet'],
  { cwd: ROOT, stdio: 'inherit' },
);
if (status === 0) console.log(`The notes are in ${path.join(ROOT, NOTES, 'index.md')}`);
process.exitCode = status ?? 70;
