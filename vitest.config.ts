import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    benchmark: { include: ['src/**/*.bench.ts'] },
    // Tests keep no state between files; one process a core loads the sources once.
    isolate: false,
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
