import { expect, it } from 'vitest';
import type { IssuedRelease } from '../../../src/domain/release/issued.js';
import { DEFAULT_DISCLOSURE, policyOf } from '../../../src/domain/release/policy.js';
import { protectCount } from '../../../src/domain/release/protected-count.js';
import type { ProtectedCount } from '../../../src/domain/release/protected-count.js';
import type { ProtectedRelease, ProtectedSummary } from '../../../src/domain/release/protected-release.js';
import { releaseDocument } from '../../../src/reports/release/release-document.js';
import { releaseFhir } from '../../../src/reports/release/release-fhir.js';
import { releaseRows } from '../../../src/reports/release/release-rows.js';
import { renderRelease } from '../../../src/usecases/releases/render-release.js';
import { countText } from '../../../src/reports/release/release-words.js';

// What the types refuse is checked when the types are: a line below that compiled would be an error of its own.

it('takes a protected count where it would print one, and the types refuse any other', () => {
  const policy = policyOf(DEFAULT_DISCLOSURE, 'rounded');
  expect(countText(protectCount(43, policy, null))).toBe('45');
  // @ts-expect-error a number is no protected count
  const number: () => string = () => countText(43);
  // @ts-expect-error nor is an object that looks like one
  const alike: ProtectedCount = { kind: 'shown', value: 43 };
  // @ts-expect-error nor can a summary be made without being cleared
  const summary: ProtectedSummary = {
    id: 'median-wait',
    title: 'Wait',
    unit: 'days',
    n: 12,
    kind: 'median-wait',
    value: 40,
    sd: null,
    quartiles: null,
  };
  expect([number, alike, summary]).toHaveLength(3);
});

it('has renderers that take a protected release only: the types refuse the counts behind it', () => {
  const refusedByTypes = (issued: IssuedRelease, release: ProtectedRelease): void => {
    // @ts-expect-error counts as they were counted
    releaseRows(issued);
    // @ts-expect-error counts as they were counted
    releaseDocument(issued);
    // @ts-expect-error counts as they were counted
    releaseFhir(issued);
    // @ts-expect-error counts as they were counted, into any kept form
    void renderRelease(issued);
    const totals = [{ universe: 'received', words: '', count: { kind: 'shown', value: 3 } }] as const;
    // @ts-expect-error an unprotected count among protected ones
    releaseRows({ ...release, totals });
  };
  expect(refusedByTypes).toBeTypeOf('function');
});
