import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ACCESS } from '../../../src/auth/access.js';
import type { Access } from '../../../src/auth/access.js';
import { isWithin, lowerRole, ROLES, TEAM_ROLES } from '../../../src/domain/account/role.js';
import {
  isAlive,
  isTouchDue,
  maySecondFactorFollow,
  SESSION_IDLE_S,
  SESSION_LONGEST_S,
} from '../../../src/domain/account/session-life.js';
import { delayAfter, DELAY_KINDS, LONGEST_DELAY_S } from '../../../src/domain/account/sign-in-delay.js';
import { checkSignInName, normaliseSignInName } from '../../../src/domain/account/sign-in-name.js';
import { epochMs, laterBy, secondsBetween } from '../../../src/domain/calendar/instant.js';

const NOON = '2026-11-25T12:00:00.000Z';

describe('the rank of roles', () => {
  it.each([
    ['admin', 'lead', true],
    ['clinician', 'lead', true],
    ['lead', 'lead', true],
    ['admin', 'clinician', true],
    ['clinician', 'admin', false],
    ['lead', 'clinician', false],
    ['commissioner', 'commissioner', true],
    ['commissioner', 'lead', false],
    ['admin', 'commissioner', false],
  ] as const)('a token as %s of somebody who is %s: %s', (token, owner, allowed) => {
    expect(isWithin(token, owner)).toBe(allowed);
  });

  it('gives a token the lower of its own role and that of its owner, and none across', () => {
    expect(lowerRole('lead', 'admin')).toBe('admin');
    expect(lowerRole('admin', 'lead')).toBe('admin');
    expect(lowerRole('commissioner', 'lead')).toBeNull();
    expect(lowerRole('lead', 'commissioner')).toBeNull();
    for (const role of ROLES) expect(lowerRole(role, role)).toBe(role);
  });

  it('is that of the table of access: a higher role of a team may do all that a lower one may', () => {
    const entries: readonly (readonly [string, Access])[] = Object.entries(ACCESS);
    for (const [operationId, access] of entries) {
      if (typeof access === 'string') continue;
      TEAM_ROLES.forEach((role, rank) => {
        if (!access.includes(role)) return;
        for (const higher of TEAM_ROLES.slice(rank)) expect(access, operationId).toContain(higher);
      });
    }
  });
});

describe('a sign-in name', () => {
  it.each(['h.turnstone', 'abc', 'heather@marram-coast.example', 'a_1', '42a'])('may be %s', (name) => {
    expect(checkSignInName('/signInName', name)).toEqual([]);
  });

  it.each(['', 'ab', '.abc', 'abc.', 'a b c', 'Abc', 'a'.repeat(81), 'å.ö', 'a\u0000c', 'abc\n'])(
    'may not be "%s"',
    (name) => {
      expect(checkSignInName('/signInName', name)).toMatchObject([{ code: 'sign-in-name-shape' }]);
    },
  );

  it('is looked for without the space around it, in lower case', () => {
    expect(normaliseSignInName('  H.Turnstone\t')).toBe('h.turnstone');
  });
});

describe('the delay of sign-in attempts', () => {
  it.each([
    ['account', 1, 0],
    ['account', 4, 0],
    ['account', 5, 5],
    ['account', 6, 10],
    ['account', 12, 640],
    ['account', 13, 900],
    ['account', 100_000, 900],
    ['address', 20, 0],
    ['address', 21, 5],
    ['address', 22, 10],
  ] as const)('by %s after %i wrong attempts: %i s', (kind, failures, seconds) => {
    expect(delayAfter(kind, failures)).toBe(seconds);
  });

  it('never shrinks with more failures, and never passes its longest', () => {
    fc.assert(
      fc.property(fc.constantFrom(...DELAY_KINDS), fc.nat(100_000), (kind, failures) => {
        const delay = delayAfter(kind, failures);
        expect(delay).toBeLessThanOrEqual(LONGEST_DELAY_S);
        expect(delayAfter(kind, failures + 1)).toBeGreaterThanOrEqual(delay);
      }),
    );
  });
});

describe('the life of a session', () => {
  const session = (lastUsedS: number) => ({
    createdAt: NOON,
    lastUsedAt: laterBy(NOON, lastUsedS),
    expiresAt: laterBy(NOON, SESSION_LONGEST_S),
  });

  it('is half an hour after its last use, and twelve hours at most', () => {
    expect([SESSION_IDLE_S, SESSION_LONGEST_S]).toEqual([1800, 43_200]);
    expect(isAlive(session(0), laterBy(NOON, 1799.999))).toBe(true);
    expect(isAlive(session(0), laterBy(NOON, 1800))).toBe(false);
    expect(isAlive(session(43_000), laterBy(NOON, 43_199))).toBe(true);
    expect(isAlive(session(43_000), laterBy(NOON, 43_200))).toBe(false);
  });

  it('leaves ten minutes for the second factor', () => {
    expect(maySecondFactorFollow(session(0), laterBy(NOON, 599))).toBe(true);
    expect(maySecondFactorFollow(session(0), laterBy(NOON, 600))).toBe(false);
  });

  it('is noted once a minute', () => {
    expect(isTouchDue(session(0), laterBy(NOON, 59.999))).toBe(false);
    expect(isTouchDue(session(0), laterBy(NOON, 60))).toBe(true);
  });
});

describe('instants', () => {
  it('are counted in UTC, whatever the clocks of London do', () => {
    // The night in which London's clocks go back.
    expect(laterBy('2026-10-24T23:30:00.000Z', 7200)).toBe('2026-10-25T01:30:00.000Z');
    expect(secondsBetween('2026-10-24T23:30:00.000Z', '2026-10-25T01:30:00.000Z')).toBe(7200);
    expect(epochMs('1970-01-01T00:00:59.000Z')).toBe(59_000);
    expect(() => epochMs('soon')).toThrow(RangeError);
  });
});
