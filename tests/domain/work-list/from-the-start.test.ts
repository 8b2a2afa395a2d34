import { describe, expect, it } from 'vitest';
import { aCat, anAssessment, aSession, aShuttleWalk, closed, sessionsFrom } from '../../support/facts.js';
import { accepted, anOffer, duesBy, quietReason, workInput } from '../../support/work.js';
import { workOf } from '../../../src/domain/work-list/work-of.js';

/** Measured with a walk on 20 April, started on Monday 4 May 2026: 12 sessions in 6 weeks, so planned to end 15 June. */
const baseline = anAssessment('baseline', '2026-04-20', [aShuttleWalk(200), aCat(20)]);
const inProgramme = (attended: number) => ({
  triage: accepted('2026-04-03'),
  assessments: [baseline],
  contacts: sessionsFrom('2026-05-04', { attended }),
});

describe('a discharge assessment', () => {
  it('is not thought of in the middle of a programme', () => {
    expect(duesBy(inProgramme(4), '2026-05-18')).toEqual({});
    expect(quietReason(inProgramme(4), '2026-05-18')).toBe(
      'In the programme: 4 of 12 sessions attended, ends 15 June 2026',
    );
  });

  it.each([
    ['2026-05-31', undefined],
    ['2026-06-01', -14],
    ['2026-06-14', -1],
    ['2026-06-15', 0],
    ['2026-06-16', 1],
  ])('is due by the planned end, seen from 14 days before: as at %s', (asAt, daysLate) => {
    expect(duesBy(inProgramme(4), asAt)['discharge-assessments']?.daysLate).toBe(daysLate);
  });

  it('is seen as soon as two sessions are left', () => {
    expect(duesBy(inProgramme(9), '2026-05-25')).toEqual({});
    expect(duesBy(inProgramme(10), '2026-05-25')).toEqual({});
    // The tenth session is on 4 June, from when the planned end is near by itself.
    const longer = { ...inProgramme(10), plannedWeeks: 12 };
    expect(duesBy(longer, '2026-06-03')).toEqual({});
    expect(duesBy(longer, '2026-06-04')['discharge-assessments']).toEqual({
      dueOn: '2026-07-27',
      reason: '2 of 12 sessions left, programme ends 27 July 2026',
      daysLate: -53,
    });
  });

  it('is due on the day of the last session where that comes before the planned end', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 10, missed: 2 });
    const due = duesBy({ ...inProgramme(0), contacts, plannedWeeks: 12 }, '2026-06-20');
    expect(due['discharge-assessments']).toEqual({
      dueOn: '2026-06-11',
      reason: 'Programme over on 11 June 2026, no discharge assessment',
      daysLate: 9,
    });
  });

  it('counts no session that the service cancelled towards the end', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 9, cancelledByService: 1 });
    const facts = { ...inProgramme(0), contacts, plannedWeeks: 12 };
    expect(duesBy(facts, '2026-06-10')['discharge-assessments']?.reason).toMatch(/^2 of 11 sessions left/);
  });

  it('is due on the day that was agreed after the start, and by the end again when that has passed', () => {
    const offers = [anOffer('assessment', '2026-06-02', 'accepted', '2026-06-18')];
    const facts = { ...inProgramme(4), offers };
    expect(duesBy(facts, '2026-06-18')['discharge-assessments']?.dueOn).toBe('2026-06-18');
    expect(duesBy(facts, '2026-06-19')['discharge-assessments']?.dueOn).toBe('2026-06-15');
    const before = [anOffer('assessment', '2026-04-07', 'accepted', '2026-06-18')];
    expect(duesBy({ ...facts, offers: before }, '2026-06-18')['discharge-assessments']?.dueOn).toBe(
      '2026-06-15',
    );
  });
});

describe('a result about to be lost', () => {
  const walkless = anAssessment('baseline', '2026-04-20', [aCat(20)]);

  it('is the baseline walk of somebody in the programme', () => {
    const facts = { ...inProgramme(2), assessments: [walkless] };
    expect(duesBy(facts, '2026-05-07')).toEqual({
      'pairs-at-risk': {
        dueOn: '2026-05-04',
        reason: 'In the programme since 4 May 2026, no baseline walk',
        daysLate: 3,
      },
    });
    expect(duesBy({ ...facts, assessments: [] }, '2026-05-07')).toHaveProperty('pairs-at-risk');
  });

  it('is none where the walk was recorded as not done', () => {
    const notDone = { ...walkless, notDone: [{ testId: 'incremental-shuttle-walk', reason: 'not-safe' }] };
    expect(duesBy({ ...inProgramme(2), assessments: [notDone] }, '2026-05-07')).toEqual({});
  });

  it.each([
    ['2026-06-28', undefined],
    [
      '2026-06-29',
      'Finished on 15 June 2026 without a discharge test, counts as not completed after 24 August 2026',
    ],
    [
      '2026-08-24',
      'Finished on 15 June 2026 without a discharge test, counts as not completed after 24 August 2026',
    ],
    [
      '2026-08-25',
      'Finished on 15 June 2026 without a discharge test, counts as not completed since 25 August 2026',
    ],
  ])('is the discharge test from 14 days after the end: as at %s', (asAt, reason) => {
    expect(duesBy(inProgramme(4), asAt)['pairs-at-risk']?.reason).toBe(reason);
  });

  it('is the walk of a discharge assessment that has none, where the baseline has one', () => {
    const discharge = anAssessment('discharge', '2026-06-16', [aCat(18)]);
    const facts = { ...inProgramme(12), assessments: [baseline, discharge] };
    expect(duesBy(facts, '2026-06-16')['pairs-at-risk']?.reason).toBe(
      'Discharge assessment of 16 June 2026 has no walk',
    );
    const never = { ...facts, assessments: [walkless, discharge] };
    expect(duesBy(never, '2026-06-16')).not.toHaveProperty('pairs-at-risk');
  });

  it('is said once with both reasons, due by the earlier', () => {
    const facts = { ...inProgramme(4), assessments: [walkless] };
    const due = duesBy(facts, '2026-06-30')['pairs-at-risk'];
    expect(due?.dueOn).toBe('2026-05-04');
    expect(due?.reason).toMatch(/^In the programme since .*; Finished on /);
  });
});

describe('a closure', () => {
  it('is due from the discharge assessment', () => {
    const assessments = [baseline, anAssessment('discharge', '2026-06-16', [aShuttleWalk(250)])];
    expect(duesBy({ ...inProgramme(12), assessments }, '2026-06-20')).toEqual({
      closure: {
        dueOn: '2026-06-16',
        reason: 'Discharge assessment done on 16 June 2026, not closed',
        daysLate: 4,
      },
    });
  });

  it('leaves nothing due', () => {
    expect(duesBy({ ...inProgramme(4), closure: closed('2026-06-01') }, '2026-09-30')).toEqual({});
    expect(quietReason({ closure: closed('2026-06-01') }, '2026-09-30')).toBe('Closed');
  });
});

it('asks for two like records to be compared, beside whatever else is due', () => {
  const work = workOf({ ...workInput({}, '2026-04-02'), mayBeDuplicate: true });
  expect(work.kind === 'due' ? work.dues.map((due) => due.group) : []).toEqual(['triage', 'duplicates']);
});

it('takes a missed session for no start: such a person still waits', () => {
  const contacts = [aSession('2026-05-04', 'did-not-attend')];
  const facts = { triage: accepted('2026-04-03'), assessments: [baseline], contacts };
  expect(Object.keys(duesBy(facts, '2026-05-05'))).toEqual(['starts']);
});
