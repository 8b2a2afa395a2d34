import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What the accessibility checker finds on a page, a line each: the rule, and where it is broken. No page of ours has a
 * frame: it is looked at as one document.
 *
 * @param rules all of them unless some are named
 */
export async function faultsOfAccess(page: Page, rules: readonly string[] = []): Promise<readonly string[]> {
  const options: RunOptions = {
    resultTypes: ['violations'],
    ...(rules.length === 0 ? {} : { runOnly: { type: 'rule', values: [...rules] } }),
  };
  // The checker is large, and stays in the page for the next look at it.
  if (!(await page.evaluate<boolean>(`'axe' in window`))) await page.evaluate(AXE);
  return page.evaluate<
    readonly string[]
  >(`axe.run(document, ${JSON.stringify(options)}).then(({ violations }) =>
    violations.flatMap(({ id, help, nodes }) =>
      nodes.map(({ target }) => id + ': ' + help + ' (' + target.join(' ') + ')')))`);
}
