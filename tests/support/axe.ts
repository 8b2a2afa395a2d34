import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * What the accessibility checker finds on a page, a line each: the rule, and where it is broken.
 *
 * @param rules all of them unless some are named
 */
export async function faultsOfAccess(page: Page, rules: readonly string[] = []): Promise<readonly string[]> {
  // No page of ours has a frame of another origin, for which alone the other way of running is needed; it opens a page more.
  const builder = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  const { violations } = await (rules.length === 0 ? builder : builder.withRules([...rules])).analyze();
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`),
  );
}
