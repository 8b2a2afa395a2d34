import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planFinisher, planStopper } from '../../seeds/attendance.js';
import type { ExpectedSession } from '../../seeds/attendance.js';
import type { PlannedContact } from '../../seeds/plan.js';
import { randomFor } from '../../seeds/random.js';
import { addDays, plainDate } from '../../src/domain/calendar/plain-date.js';

/** A programme of twelve or sixteen sessions of which some are cancelled, never the first. */
const programmes = fc
  .tuple(fc.constantFrom(6, 12, 16), fc.array(fc.integer({ min: 1, max: 15 }), { maxLength: 3 }))
  .map(([count, cancelled]): readonly ExpectedSession[] =>
    Array.from({ length: count }, (_, index) => ({
      session: {
        key: `session ${index}`,
        siteName: 'Dune Hall',
        heldOn: addDays(plainDate('2026-04-02'), 3 * index),
        mode: 'centre',
        isSupervised: true,
      },
      isCancelled: cancelled.includes(index),
    })),
  );

/** Attended over planned less cancelled by the service. */
function attendedShare(contacts: readonly PlannedContact[], planned: number): number {
  const count = (outcome: string): number => contacts.filter((contact) => contact.outcome === outcome).length;
  return count('attended') / (planned - count('cancelled-by-service'));
}

describe('attendance', () => {
  it('of somebody who finishes reaches three quarters of the sessions that were held', () => {
    fc.assert(
      fc.property(programmes, fc.integer(), (expected, seed) => {
        const contacts = planFinisher(randomFor(seed, 'finisher'), expected);
        expect(contacts).toHaveLength(expected.length);
        expect(attendedShare(contacts, expected.length)).toBeGreaterThanOrEqual(0.75);
      }),
    );
  });

  it('of somebody who stops has a start and stays below three quarters', () => {
    fc.assert(
      fc.property(programmes, fc.integer(), (expected, seed) => {
        const { contacts } = planStopper(randomFor(seed, 'stopper'), expected);
        expect(contacts.some((contact) => contact.outcome === 'attended')).toBe(true);
        expect(attendedShare(contacts, expected.length)).toBeLessThan(0.75);
      }),
    );
  });

  it('has every session that the service cancelled as cancelled by the service, and no other', () => {
    fc.assert(
      fc.property(programmes, fc.integer(), (expected, seed) => {
        const contacts = planFinisher(randomFor(seed, 'cancelled'), expected);
        contacts.forEach((contact, index) => {
          expect(contact.outcome === 'cancelled-by-service').toBe(expected[index]?.isCancelled);
        });
      }),
    );
  });
});
