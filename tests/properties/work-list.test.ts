import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../src/domain/cohort/referral-facts.js';
import { courseOf } from '../../src/domain/pathway/course.js';
import { stageOfCourse } from '../../src/domain/pathway/stage.js';
import { OFFER_KINDS, OFFER_RESPONSES } from '../../src/domain/referral/closed-sets.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import { groupWork } from '../../src/domain/work-list/group-work.js';
import { programmeEndOf } from '../../src/domain/work-list/programme-end.js';
import { WORK_GROUPS } from '../../src/domain/work-list/work-list.js';
import { workOf } from '../../src/domain/work-list/work-of.js';
import type { Work } from '../../src/domain/work-list/work-of.js';
import { anyDay, anyStore } from '../support/arbitrary-facts.js';

const anyOffer = fc.record({
  kind: fc.constantFrom(...OFFER_KINDS),
  offeredOn: anyDay,
  appointmentOn: fc.option(anyDay),
  response: fc.constantFrom(...OFFER_RESPONSES),
});

/** Referrals of any course, with offers and plans. */
const anyOffered: fc.Arbitrary<readonly ReferralFacts[]> = fc
  .tuple(
    anyStore,
    fc.array(fc.tuple(fc.array(anyOffer, { maxLength: 4 }), fc.option(anyDay)), { maxLength: 12 }),
  )
  .map(([store, extras]) =>
    store.map((facts, index) => {
      const [offers = [], plannedStartOn = null] = extras[index] ?? [];
      return { ...facts, offers, plannedStartOn };
    }),
  );

function workAt(facts: ReferralFacts, asAt: Parameters<typeof courseOf>[1], mayBeDuplicate = false) {
  const course = courseOf(facts, asAt);
  if (course === null) return null;
  const stage = stageOfCourse(course);
  const work = workOf({ course, stage, settings: DEFAULT_TEAM_SETTINGS, mayBeDuplicate });
  return { course, stage, work };
}

const duesOf = (work: Work) => (work.kind === 'due' ? work.dues : []);

describe('the work list of any store on any day', () => {
  it('has every open referral in a group or quiet with a reason, and nobody who is closed', () => {
    fc.assert(
      fc.property(anyOffered, anyDay, fc.boolean(), (store, asAt, mayBeDuplicate) => {
        for (const facts of store) {
          const found = workAt(facts, asAt, mayBeDuplicate);
          if (found === null) continue;
          const { stage, work } = found;
          if (stage === 'closed') expect(work).toEqual({ kind: 'quiet', reason: 'Closed' });
          else if (work.kind === 'quiet')
            expect(work.reason).toMatch(/^(In the programme|Start planned|Assessment booked)/);
          else expect(work.dues.length).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('names each referral once in a group, with days that fit the due day and words without a result', () => {
    fc.assert(
      fc.property(anyOffered, anyDay, (store, asAt) => {
        for (const facts of store) {
          const dues = duesOf(workAt(facts, asAt)?.work ?? { kind: 'quiet', reason: '' });
          expect(new Set(dues.map((due) => due.group)).size).toBe(dues.length);
          for (const due of dues) {
            expect(due.daysLate).toBe(daysBetween(due.dueOn, asAt));
            expect(due.reason).not.toMatch(/undefined|null|\d+ (m|points|repetitions)\b/);
          }
        }
      }),
    );
  });

  it('has counts that add up, in whatever order of groups', () => {
    fc.assert(
      fc.property(
        anyOffered,
        anyDay,
        fc.shuffledSubarray([...WORK_GROUPS], { minLength: 10 }),
        (store, asAt, order) => {
          const entries = store.flatMap((facts) =>
            duesOf(workAt(facts, asAt)?.work ?? { kind: 'quiet', reason: '' }).map((due) => ({
              ...due,
              id: facts.referralId,
            })),
          );
          const groups = groupWork(entries, order);
          expect(groups.map(({ group }) => group)).toEqual(order);
          expect(groups.reduce((sum, { count }) => sum + count, 0)).toBe(entries.length);
          expect(groups.flatMap((group) => group.entries)).toHaveLength(entries.length);
          const late = entries.filter((entry) => entry.dueOn < asAt).length;
          expect(groups.reduce((sum, group) => sum + group.late, 0)).toBe(late);
        },
      ),
    );
  });

  it('ends a programme by the rule by which the stage ends it', () => {
    fc.assert(
      fc.property(anyOffered, anyDay, (store, asAt) => {
        for (const facts of store) {
          const found = workAt({ ...facts, closure: null }, asAt);
          if (found === null || found.course.startedOn === null) continue;
          const { endedOn } = programmeEndOf(found.course, found.course.startedOn);
          if (found.stage === 'in-programme') expect(endedOn).toBeNull();
          if (found.stage === 'awaiting-discharge-assessment') expect(endedOn).not.toBeNull();
          if (endedOn !== null) expect(endedOn >= found.course.startedOn && endedOn <= asAt).toBe(true);
        }
      }),
    );
  });
});
