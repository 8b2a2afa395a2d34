import { describe, expect, it } from 'vitest';
import { eventsOf } from '../../seeds/events.js';
import type { DemoEvent } from '../../seeds/events.js';
import { offerAsKnown } from '../../seeds/offers.js';
import { addDays, plainDate } from '../../src/domain/calendar/plain-date.js';
import { aPlan } from './planned.js';

const plan = aPlan(0.2);
const streams = plan.teams.map((team) => ({ team, events: eventsOf(team, plan.lastDay) }));

describe('what is entered, day by day', () => {
  it('is in order of date and goes on until the last week, never beyond the last day', () => {
    for (const { events } of streams) {
      const days = events.map(({ on }) => on);
      expect(days).toEqual([...days].sort());
      expect(days.filter((day) => day > plan.lastDay)).toEqual([]);
      expect((days.at(-1) ?? '') > addDays(plan.lastDay, -7)).toBe(true);
    }
  });

  it('enters a referral before all else about it, and its closure last', () => {
    for (const { events } of streams) {
      const stream = new Map<string, string[]>();
      const keyOf = ({ deed }: DemoEvent): readonly string[] => {
        if (deed.kind === 'hold-session') return deed.register.map(({ courseKey }) => courseKey);
        return 'course' in deed ? [deed.course.key] : [];
      };
      for (const event of events) {
        for (const key of keyOf(event)) stream.set(key, [...(stream.get(key) ?? []), kindOf(event)]);
      }
      expect(stream.size).toBeGreaterThan(10);
      for (const kinds of stream.values()) {
        expect(kinds.indexOf('register')).toBe(0);
        expect(kinds.lastIndexOf('register')).toBe(0);
        // A slip in an assessment may still be found after the closure, and somebody may come to a follow-up.
        const afterClosure = kinds.includes('close') ? kinds.slice(kinds.indexOf('close') + 1) : [];
        expect(afterClosure.filter((kind) => kind !== 'correct-assessment' && kind !== 'follow-up')).toEqual(
          [],
        );
      }
    }
  });

  it('enters every register once, on the day of the class', () => {
    for (const { events } of streams) {
      const sessions = events.flatMap(({ on, deed }) =>
        deed.kind === 'hold-session' ? [{ on, ...deed.session }] : [],
      );
      expect(new Set(sessions.map(({ key }) => key)).size).toBe(sessions.length);
      expect(sessions.filter(({ on, heldOn }) => on !== heldOn)).toEqual([]);
    }
  });

  it('leaves an offer without its answer until the answer has come', () => {
    const offer = {
      kind: 'assessment',
      offeredOn: plainDate('2026-11-02'),
      appointmentOn: plainDate('2026-11-30'),
      response: 'accepted',
      respondedOn: plainDate('2026-11-09'),
      recordedOn: plainDate('2026-11-09'),
    } as const;
    expect(offerAsKnown(offer, plainDate('2026-11-01'))).toBeNull();
    expect(offerAsKnown(offer, plainDate('2026-11-08'))).toEqual({
      ...offer,
      response: 'awaiting-reply',
      respondedOn: null,
      recordedOn: '2026-11-02',
    });
    expect(offerAsKnown(offer, plainDate('2026-11-09'))).toEqual(offer);
  });
});

function kindOf({ deed }: DemoEvent): string {
  return deed.kind === 'assess' && deed.entry.timepoint === 'follow-up' ? 'follow-up' : deed.kind;
}
