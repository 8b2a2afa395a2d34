import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    maxWorkers: 4,
    // Each test works on a record of its own and leaves nothing behind, so each worker reads the program in once.
    isolate: false,
    globalSetup: 'tests/support/compile-once.ts',
  },
});
