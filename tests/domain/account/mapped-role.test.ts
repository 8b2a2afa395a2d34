import { describe, expect, it } from 'vitest';
import { mappedRole } from '../../../src/domain/account/mapped-role.js';

const MAPPING = new Map([
  ['pr-office', 'admin'],
  ['pr-clinicians', 'clinician'],
  ['pr-leads', 'lead'],
] as const);

describe('the role that a provider gives', () => {
  it.each([
    [['pr-office'], 'admin'],
    [['pr-office', 'pr-leads', 'staff'], 'lead'],
    [['pr-clinicians', 'pr-office'], 'clinician'],
    [['staff'], null],
    [['PR-LEADS'], null],
    [['lead'], null],
    [['constructor', '__proto__'], null],
    [[], null],
  ] as const)('of %j is %s', (values, role) => {
    expect(mappedRole(values, MAPPING)).toBe(role);
  });
});
