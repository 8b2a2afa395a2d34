import { defineConfig } from 'vitest/config';

const tests = (...folders: readonly string[]): string[] =>
  folders.map((folder) => `tests/${folder}/**/*.test.ts`);

/** Pure rules, and tests that each work on a record of their own: nothing is left behind, so the program is read in once. */
const RULES = tests('domain', 'published', 'plots');
const DOORS = tests('api', 'web', 'usecases', 'storage', 'reports', 'properties');

export default defineConfig({
  test: {
    testTimeout: 30_000,
    hookTimeout: 60_000,
    maxWorkers: 4,
    projects: [
      { extends: true, test: { name: 'rules', include: RULES, isolate: false } },
      { extends: true, test: { name: 'doors', include: DOORS, isolate: false } },
      {
        extends: true,
        // Tests that run the program in processes of its own, in a browser, or from the seeds.
        test: {
          name: 'service',
          include: ['tests/**/*.test.ts'],
          isolate: false,
          exclude: [...RULES, ...DOORS, 'node_modules/**'],
          globalSetup: 'tests/support/compile-once.ts',
        },
      },
    ],
  },
});
