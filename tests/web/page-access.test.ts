import { describe, expect, it } from 'vitest';
import { PAGE_ACCESS, mayOpen } from '../../src/auth/access.js';
import { ROLES } from '../../src/domain/account/role.js';
import type { Role } from '../../src/domain/account/role.js';

const A = 'admin';
const C = 'clinician';
const L = 'lead';
const P = 'commissioner';

/** Who may open which page, written out by hand: what the program is held to. */
const TABLE: Readonly<Record<string, 'anybody' | readonly Role[]>> = {
  'page:home': 'anybody',
  'page:releases': [L, P],
  'page:release': [L, P],
  'page:release-draft': [L],
  'page:release-withdrawal': [L],
  'page:sign-in': 'anybody',
  'page:sign-in-code': 'anybody',
  'page:sign-in-provider': 'anybody',
  'page:invitation': 'anybody',
  'page:sign-out': 'anybody',
  'page:unsent-form': [A, C, L, P],
  'page:account': [A, C, L, P],
  'page:passphrase': [A, C, L, P],
  'page:second-factor': [A, C, L, P],
  'page:work-list': [A, C, L],
  'page:assessment': [C, L],
  'page:report': [L],
  'page:report-chapter': [L],
  'page:report-figure': [L],
  'page:report-entries-in-error': [L],
  'page:report-file': [L],
  'page:closing': [A, C, L],
  'page:letter': [C, L],
  'page:own-tokens': [A, C, L, P],
  'page:sign-out-everywhere': [A, C, L, P],
  'page:search': [A, C, L],
  'page:classes': [A, C, L],
  'page:new-class': [A, C, L],
  'page:class': [A, C, L],
  'page:definitions': [A, C, L, P],
  'page:referral': [A, C, L],
  'page:figures-of-referral': [C, L],
  'page:course-file': [C, L],
  'page:import': [L],
  'page:export': [L],
  'page:team': [L],
  'page:accounts': [L],
  'page:tokens': [L],
  'page:audit-trail': [L],
  'page:settings': [L],
  'page:register-referral': [A, C, L],
  'page:triage': [C, L],
  'page:offers': [A, C, L],
  'page:planned-start': [A, C, L],
  'page:referral-in-error': [A, C, L],
  'page:assessment-in-error': [C, L],
  'page:offer-in-error': [A, C, L],
  'page:class-in-error': [A, C, L],
  'page:merge': [L],
  'page:cautions': [C, L],
  'page:assessment-correction': [C, L],
  'page:assessment-history': [C, L],
};

describe('the table of pages', () => {
  it('names every page that the program decides about, and no other', () => {
    expect(Object.keys(PAGE_ACCESS).sort()).toEqual(Object.keys(TABLE).sort());
  });

  it.each(Object.entries(TABLE))('opens %s to those of the table', (pageId, who) => {
    for (const role of ROLES) {
      expect(mayOpen(role, pageId), role).toBe(who === 'anybody' || who.includes(role));
    }
    expect(mayOpen(null, pageId)).toBe(who === 'anybody');
  });

  it('opens a page that it does not name to nobody', () => {
    for (const pageId of ['page:no-such', '', 'toString', '__proto__']) {
      expect([null, ...ROLES].filter((role) => mayOpen(role, pageId))).toEqual([]);
    }
  });
});
