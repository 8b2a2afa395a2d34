import { existsSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { brokenRule, importsOf, readSource, sourceFiles, targetOf } from '../support/import-rules.js';

const FILES = [...sourceFiles('src'), ...sourceFiles('migrations'), ...sourceFiles('seeds')];
const LINES = FILES.flatMap((file) => importsOf(file, readSource(file)));

/** More than this is no longer read at a glance. */
const MOST_LINES = 250;

describe('imports', () => {
  it('point inward', () => {
    const broken = LINES.flatMap((line) => {
      const rule = brokenRule(line);
      return rule === null ? [] : [`${line.file} imports '${line.specifier}': ${rule}`];
    });
    expect(broken).toEqual([]);
  });

  it('lead to files that are there', () => {
    const lost = LINES.filter(
      (line) =>
        line.specifier.startsWith('.') && !existsSync(targetOf(line)) && !existsSync(`${targetOf(line)}x`),
    );
    expect(lost).toEqual([]);
  });

  it('are all seen by this test', () => {
    for (const file of FILES) {
      const text = readSource(file);
      // Adding to the types of a package is no import of it.
      const imports = text.replace(/^declare module .*$/gm, '{');
      const compiler = ts.preProcessFile(imports, true, true).importedFiles.map((found) => found.fileName);
      const seen = importsOf(file, text).map((line) => line.specifier);
      expect([...seen].sort(), file).toEqual([...compiler].sort());
    }
  });
});

describe('the rules themselves', () => {
  it.each([
    ['src/domain/change/change.ts', '../../storage/page.js', 'domain does not import storage'],
    ['src/domain/change/change.ts', 'node:fs', 'domain does not import the package node:fs'],
    ['src/domain/change/change.ts', 'zod', 'domain does not import the package zod'],
    [
      'src/domain/cohort/cohorts.ts',
      'simple-statistics',
      'simple-statistics is imported in src/domain/statistics only',
    ],
    ['src/app/main.ts', 'simple-statistics', 'simple-statistics is imported in src/domain/statistics only'],
    ['src/storage/page.ts', '../usecases/context.js', 'storage does not import usecases'],
    ['src/auth/token.ts', '../storage/page.js', 'auth does not import storage'],
    ['src/reports/quarterly/quarter.ts', '../../usecases/context.js', 'reports does not import usecases'],
    ['src/usecases/sign-in.ts', 'kysely', 'usecases does not import the package kysely'],
    ['src/usecases/sign-in.ts', '../http/guard.js', 'usecases does not import http'],
    ['src/http/guard.ts', '../storage/page.js', 'http imports types of storage only'],
    ['src/http/guard.ts', '../web/page.js', 'http does not import web'],
    ['src/web/page.ts', '../http/guard.js', 'web does not import http'],
    ['src/http/guard.ts', '../app/config.js', 'http does not import app'],
    ['migrations/0001_record.ts', '../src/domain/account/role.js', 'migrations does not import domain'],
    ['seeds/plan.ts', '../src/storage/page.js', 'seeds does not import storage'],
    ['src/elsewhere/x.ts', './y.js', 'elsewhere is no part that the rules know'],
  ])('refuse that %s imports %s', (file, specifier, rule) => {
    expect(brokenRule({ file, specifier, isTypeOnly: false })).toBe(rule);
  });

  it.each([
    ['src/domain/statistics/summary.ts', 'simple-statistics', false],
    ['src/http/schema/paging.ts', '../../storage/page.js', true],
    ['src/usecases/sign-in.ts', '../storage/page.js', false],
    ['src/app/main.ts', '../../seeds/plan.js', false],
  ])('allow that %s imports %s', (file, specifier, isTypeOnly) => {
    expect(brokenRule({ file, specifier, isTypeOnly })).toBeNull();
  });

  it('see imports of every form, and none in comments', () => {
    const text = [
      "import a from 'a';",
      "import type { B } from './b.js';",
      "import {\n  c,\n  d,\n} from './c.js';",
      "import './e.js';",
      "export { f } from './f.js';",
      "export * from './g.js';",
      "const h = await import('./h.js');",
      "// import i from './i.js';",
      "/* import j from './j.js'; */",
    ].join('\n');
    expect(importsOf('src/x.ts', text).map((line) => [line.specifier, line.isTypeOnly])).toEqual([
      ['a', false],
      ['./b.js', true],
      ['./c.js', false],
      ['./e.js', false],
      ['./f.js', false],
      ['./g.js', false],
      ['./h.js', false],
    ]);
  });
});

describe('files', () => {
  it('name every export', () => {
    const nameless = FILES.filter((file) =>
      /^export default\b|\bexport \{[^}]*\bas default\b/m.test(readSource(file)),
    );
    expect(nameless).toEqual([]);
  });

  it(`of the program have at most ${MOST_LINES} lines`, () => {
    const long = sourceFiles('src')
      .map((file) => ({ file, lines: readSource(file).trimEnd().split('\n').length }))
      .filter(({ lines }) => lines > MOST_LINES);
    expect(long).toEqual([]);
  });

  it('are named in kebab-case, migrations by their number', () => {
    const odd = FILES.filter(
      (file) => !/^(?:[a-z0-9-]+\/)+(?:\d{4}_[a-z0-9_]+|[a-z0-9]+(?:-[a-z0-9]+)*)\.tsx?$/.test(file),
    );
    expect(odd).toEqual([]);
  });

  it('are not gathered in barrels', () => {
    const barrels = FILES.filter((file) => file.endsWith('/index.ts') && file !== 'migrations/index.ts');
    expect(barrels).toEqual([]);
  });
});
