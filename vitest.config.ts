import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    benchmark: { include: ['src/**/*.bench.ts'] },
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
