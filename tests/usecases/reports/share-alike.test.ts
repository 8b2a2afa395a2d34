import { expect, it } from 'vitest';
import type { Result } from '../../../src/domain/cohort/referral-facts.js';
import { CONTACTS, RESULTS, shareAlike } from '../../../src/usecases/reports/share-alike.js';
import { aResult, aSession } from '../../support/facts.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

it('keeps equal values once, and different ones apart', () => {
  const share = shareAlike(RESULTS);
  const first = share(aResult('cat-total', 20, { conditions: { form: 'a' } }));
  expect(share(aResult('cat-total', 20, { conditions: { form: 'a' } }))).toBe(first);
  const other = aResult('cat-total', 21, { conditions: { form: 'a' } });
  expect(share(other)).toBe(other);
});

it('takes no two results and no two contacts for equal that differ in anything', () => {
  const base = aResult('cat-total', 20, { conditions: { form: 'a' } });
  const results: readonly Result[] = [
    base,
    { ...base, measureId: 'hads-anxiety' },
    aResult('cat-total', 21, { conditions: { form: 'a' } }),
    { ...base, value: { ...base.value, denominator: base.value.denominator + 1 } },
    { ...base, conditions: {} },
    { ...base, conditions: { form: 'a', place: 'b' } },
    { ...base, conditions: { form: null } },
    { ...base, conditions: { form: 'null' } },
    { ...base, conditions: { place: 'a' } },
    { ...base, hadPracticeWalk: true },
    { ...base, hadPracticeWalk: false },
    { ...base, isCeiling: true },
  ];
  expect(new Set(results.map(shareAlike(RESULTS))).size).toBe(results.length);
  const contact = aSession(plainDate('2026-05-04'));
  const contacts = [
    contact,
    { ...contact, heldOn: plainDate('2026-05-05') },
    { ...contact, mode: 'home' as const },
    { ...contact, isSupervised: !contact.isSupervised },
    { ...contact, outcome: 'did-not-attend' as const },
  ];
  const share = shareAlike(CONTACTS);
  expect(new Set(contacts.map(share)).size).toBe(contacts.length);
  expect(share({ ...contact })).toBe(contact);
});
