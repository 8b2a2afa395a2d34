import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** What the accessibility checker finds on a page, a line each: the rule, and where it is broken. */
export async function faultsOfAccess(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`),
  );
}
