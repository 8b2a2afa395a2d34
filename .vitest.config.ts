import { defineConfig } from 'vitest/config';

/** Pure rules share nothing that one test could leave behind for another: their files are read in once. */
const PURE = ['tests/domain/**', 'tests/published/**', 'tests/plots/**'].map(
  (folder) => `${folder}/*.test.ts`,
);

export default defineConfig({
  test: {
    testTimeout: 30_000,
    hookTimeout: 60_000,
    maxWorkers: 3,
    projects: [
      { extends: true, test: { name: 'rules', include: PURE, isolate: false } },
      {
        extends: true,
        test: { name: 'service', include: ['tests/**/*.test.ts'], exclude: [...PURE, 'node_modules/**'] },
      },
    ],
  },
});
