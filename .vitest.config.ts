import { statfsSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

const IN_MEMORY = '/dev/shm';
const ENOUGH_BYTES = 4_000_000_000;

/** A folder in memory where the machine has a large one: the records of tests need to survive no loss of power. */
function folderInMemory(): string | null {
  try {
    const { bavail, bsize } = statfsSync(IN_MEMORY);
    return bavail * bsize >= ENOUGH_BYTES ? IN_MEMORY : null;
  } catch {
    return null;
  }
}

const temporary = folderInMemory();

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    maxWorkers: 4,
    // Each test works on a record of its own and leaves nothing behind, so each worker reads the program in once.
    isolate: false,
    env: temporary === null ? {} : { TMPDIR: temporary },
    globalSetup: 'tests/support/compile-once.ts',
  },
});
