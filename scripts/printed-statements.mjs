// How often a printed reduction is false: writes docs/printed-statements.md. Takes some minutes.
// Usage: node scripts/printed-statements.mjs [trials a cell, 100000]
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createViteServer } from 'vitest/node';

// The simulation is TypeScript beside its test; the server of the test runner loads it.
const server = await createViteServer({
  root: fileURLToPath(new URL('..', import.meta.url)),
  configFile: false,
  server: { middlewareMode: true, hmr: false, ws: false, watch: null },
  appType: 'custom',
});
try {
  const { printedStatementsPage } = await server.ssrLoadModule(
    '/tests/outside-checks/printed-statements/page.ts',
  );
  const trials = Number(process.argv[2] ?? 100_000);
  const page = printedStatementsPage({ trials, seed: 1 });
  writeFileSync(new URL('../docs/printed-statements.md', import.meta.url), page);
} finally {
  await server.close();
}
