import { defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';
import type { TestSpecification } from 'vitest/node';

/** Where files stand that take longest: one that began last would hold up the end of the run. */
const LONG = [
  'tests/browser/every-page',
  'tests/keeping/kill.test',
  'tests/browser/assessment-entry',
  'tests/api/requests/',
  'tests/fuzz/',
  'tests/keeping/',
  'tests/browser/',
  'tests/usecases/releases/',
  'tests/app/',
];

/** Begins with the files that take longest. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const others = await super.sort(files);
    const rankOf = ({ moduleId }: TestSpecification): number =>
      LONG.findIndex((part) => moduleId.includes(part)) + 1 || LONG.length + 1;
    return others.sort((one, other) => rankOf(one) - rankOf(other));
  }
}

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // An end for what hangs, no measure of speed: a machine at work on other things takes its time.
    testTimeout: 90_000,
    hookTimeout: 120_000,
    maxWorkers: 5,
    sequence: { sequencer: LongestFirst },
    // Each test works on a record of its own and leaves nothing behind, so each worker reads the program in once.
    isolate: false,
    globalSetup: 'tests/support/compile-once.ts',
  },
});
