import { expect, it } from 'vitest';
import type { Result } from '../../../src/domain/cohort/referral-facts.js';
import { contentOfContact, contentOfResult, shareAlike } from '../../../src/usecases/reports/share-alike.js';
import { aResult, aSession } from '../../support/facts.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

it('keeps equal values once, and different ones apart', () => {
  const share = shareAlike((value: { readonly text: string }) => value.text);
  const first = share({ text: 'a' });
  expect(share({ text: 'a' })).toBe(first);
  const other = { text: 'b' };
  expect(share(other)).toBe(other);
});

it('takes no two results and no two contacts for equal that differ in anything', () => {
  const base = aResult('cat-total', 20, { conditions: { form: 'a' } });
  const results: readonly Result[] = [
    base,
    { ...base, measureId: 'hads-anxiety' },
    aResult('cat-total', 21, { conditions: { form: 'a' } }),
    { ...base, conditions: {} },
    { ...base, conditions: { form: null } },
    { ...base, conditions: { form: 'null' } },
    { ...base, conditions: { place: 'a' } },
    { ...base, hadPracticeWalk: true },
    { ...base, hadPracticeWalk: false },
    { ...base, isCeiling: true },
  ];
  expect(new Set(results.map(contentOfResult)).size).toBe(results.length);
  const contact = aSession(plainDate('2026-05-04'));
  const contacts = [
    contact,
    { ...contact, heldOn: plainDate('2026-05-05') },
    { ...contact, mode: 'home' as const },
    { ...contact, isSupervised: !contact.isSupervised },
    { ...contact, outcome: 'did-not-attend' as const },
  ];
  expect(new Set(contacts.map(contentOfContact)).size).toBe(contacts.length);
});
