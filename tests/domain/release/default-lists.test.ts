import { describe, expect, it } from 'vitest';
import { withDefaultLists } from '../../../src/domain/release/default-lists.js';
import { issuedTotal } from '../../../src/domain/release/hiding/hide.js';
import { DEFAULT_DISCLOSURE, policyOf } from '../../../src/domain/release/policy.js';
import type { ReleaseMode } from '../../../src/domain/release/policy.js';

/** Lists by default where so many were received and discharged. */
function listsOf(received: number, discharged: number, mode: ReleaseMode = 'rounded') {
  const policy = policyOf(DEFAULT_DISCLOSURE, mode);
  const totals = [issuedTotal('received', received, policy), issuedTotal('discharged', discharged, policy)];
  return (choices: Readonly<Record<string, string>>) => withDefaultLists(totals, policy, choices);
}

describe('a table that nobody chose the groups of', () => {
  it('is merged where few people are printed, as far as its percentage with a target needs', () => {
    expect(listsOf(40, 200)({})).toEqual({ start: 'medium' });
    expect(listsOf(200, 60)({})).toMatchObject({ 'change.cat-total': 'coarse' });
    expect(listsOf(200, 60)({})).not.toHaveProperty('start');
  });

  it('hangs on the printed number alone, so that it tells no more than that', () => {
    // 97 is printed as 95 and 98 as 100.
    expect(listsOf(97, 200)({})).toEqual({ start: 'medium' });
    expect(listsOf(98, 200)({})).toEqual({});
    expect(listsOf(99, 200, 'exact')({})).toEqual({ start: 'medium' });
    expect(listsOf(3, 200)({})).toEqual({ start: 'medium' });
  });

  it('is printed as the lead chose', () => {
    expect(listsOf(40, 200)({ start: 'fine' })).toEqual({ start: 'fine' });
    expect(listsOf(40, 200)({ start: 'left-out' })).toEqual({ start: 'left-out' });
  });
});
