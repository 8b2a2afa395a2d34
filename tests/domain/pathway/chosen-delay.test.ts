import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY } from '../../../src/domain/indicators/definitions/started-within-90-days-less-chosen-delay.js';
import { STARTED_WITHIN_90_DAYS } from '../../../src/domain/indicators/definitions/started-within-90-days.js';
import { judgeContext } from '../../../src/domain/indicators/judge-context.js';
import { chosenDelayDays } from '../../../src/domain/pathway/chosen-delay.js';
import { quarterOf } from '../../../src/domain/calendar/period.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { aCourse, aSession, closed } from '../../support/facts.js';

type Offer = ReferralFacts['offers'][number];

/** Received on 1 April 2026, day 0; days are counted from there. Counted by hand. */
const day = (number: number) => addDays(plainDate('2026-04-01'), number);

function offer(
  kind: Offer['kind'],
  offered: number,
  appointment: number | null,
  response: Offer['response'],
): Offer {
  return {
    kind,
    offeredOn: day(offered),
    appointmentOn: appointment === null ? null : day(appointment),
    response,
  };
}

const startedOn = (number: number) => ({ contacts: [aSession(day(number))] });
const delayOf = (facts: Parameters<typeof aCourse>[0], asAt?: string) =>
  chosenDelayDays(aCourse(facts, asAt));

describe('days that a person chose to wait', () => {
  it('go from a day that was declined to the next day offered for the same step', () => {
    const offers = [
      offer('assessment', 10, 20, 'declined'),
      offer('assessment', 15, 34, 'accepted'),
      offer('programme', 40, 90, 'accepted'),
    ];
    expect(delayOf({ offers, ...startedOn(90) })).toBe(14);
  });

  it('count once where two offers share them, and go on over several', () => {
    const offers = [
      offer('programme', 10, 50, 'declined'),
      offer('programme', 20, 60, 'declined'),
      offer('assessment', 20, 55, 'declined'),
      offer('assessment', 30, 65, 'accepted'),
      offer('programme', 40, 75, 'accepted'),
    ];
    // 50 to 75 without a gap: the assessment of 55 to 65 lies within.
    expect(delayOf({ offers, ...startedOn(75) })).toBe(25);
  });

  it('end with the start, a leaving or the cut', () => {
    const offers = [offer('programme', 10, 50, 'declined')];
    expect(delayOf({ offers, ...startedOn(80) })).toBe(30);
    expect(delayOf({ offers, closure: closed(day(70), 'declined') })).toBe(20);
    expect(delayOf({ offers }, day(62))).toBe(12);
    expect(delayOf({ offers }, day(40))).toBe(0);
  });

  it('are none where no day was offered, nobody replied, or the place was taken', () => {
    const offers = [
      offer('programme', 10, null, 'declined'),
      offer('programme', 20, 40, 'no-reply'),
      offer('programme', 30, 60, 'awaiting-reply'),
      offer('programme', 35, 70, 'accepted'),
    ];
    expect(delayOf({ offers, ...startedOn(70) })).toBe(0);
  });

  it('are never fewer than none nor more than the wait, and never turn a start in time into a late one', () => {
    const anOffer = fc.record({
      kind: fc.constantFrom<Offer['kind']>('assessment', 'programme'),
      offered: fc.integer({ min: 0, max: 150 }),
      ahead: fc.option(fc.integer({ min: 0, max: 60 })),
      response: fc.constantFrom<Offer['response']>('accepted', 'declined', 'no-reply', 'awaiting-reply'),
    });
    const context = judgeContext({
      period: quarterOf(plainDate('2026-04-01')),
      asAt: plainDate('2026-12-31'),
      settings: DEFAULT_TEAM_SETTINGS,
    });
    fc.assert(
      fc.property(fc.array(anOffer, { maxLength: 5 }), fc.integer({ min: 1, max: 200 }), (made, start) => {
        const offers = made.map(({ kind, offered, ahead, response }) =>
          offer(kind, offered, ahead === null ? null : offered + ahead, response),
        );
        const course = aCourse({ offers, ...startedOn(start) });
        const days = chosenDelayDays(course);
        expect(days).toBeGreaterThanOrEqual(0);
        expect(days).toBeLessThanOrEqual(daysBetween(day(0), day(start)));
        const raw = STARTED_WITHIN_90_DAYS.judge(course, context).kind;
        const adjusted = STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY.judge(course, context);
        if (raw === 'numerator') expect(adjusted.kind).toBe('numerator');
        expect(adjusted.kind === 'numerator').toBe(start - days <= 90);
      }),
    );
  });
});
