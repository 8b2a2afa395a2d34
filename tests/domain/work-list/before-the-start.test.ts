import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { aCat, anAssessment } from '../../support/facts.js';
import { accepted, anOffer, duesBy, quietReason } from '../../support/work.js';

/** The referral of every test is received on 1 April 2026 unless it says otherwise. */
const triaged = { triage: accepted('2026-04-03') };

describe('triage', () => {
  it.each([
    ['on the day of receipt', '2026-04-01', 0],
    ['nine days later', '2026-04-10', 9],
  ])('is due from receipt: %s', (_name, asAt, daysLate) => {
    const due = { dueOn: '2026-04-01', reason: 'Received 1 April 2026, not triaged', daysLate };
    expect(duesBy({}, asAt)).toEqual({ triage: due });
  });

  it('is due no more once it is decided', () => {
    expect(duesBy(triaged, '2026-04-03')).not.toHaveProperty('triage');
  });

  it('is not asked for where the person has been assessed all the same', () => {
    const facts = { assessments: [anAssessment('baseline', '2026-04-08', [aCat(20)])] };
    expect(duesBy(facts, '2026-04-08')).not.toHaveProperty('triage');
  });
});

describe('booking', () => {
  it('is due from the day of acceptance', () => {
    expect(duesBy(triaged, '2026-04-10')).toEqual({
      booking: { dueOn: '2026-04-03', reason: 'Accepted 3 April 2026, no assessment offered', daysLate: 7 },
    });
  });

  it('is due again after a refusal, and says so', () => {
    const offers = [anOffer('assessment', '2026-04-07', 'declined', '2026-04-20')];
    expect(duesBy({ ...triaged, offers }, '2026-04-08')['booking']).toEqual({
      dueOn: '2026-04-07',
      reason: 'Declined the assessment offered on 7 April 2026: offer another, or close',
      daysLate: 1,
    });
  });

  it('is due where nobody replied, and where an acceptance has no day', () => {
    const none = [anOffer('assessment', '2026-04-07', 'no-reply')];
    expect(duesBy({ ...triaged, offers: none }, '2026-04-08')['booking']?.reason).toMatch(/^No reply/);
    const dayless = [anOffer('assessment', '2026-04-07', 'accepted')];
    expect(duesBy({ ...triaged, offers: dayless }, '2026-04-08')['booking']?.reason).toBe(
      'Accepted the assessment offered on 7 April 2026, no day agreed',
    );
  });

  it.each([
    ['14 days after the offer', null, '2026-04-21'],
    ['14 days after the offer though the day offered is later', '2026-04-22', '2026-04-21'],
    ['on the day offered where that is sooner', '2026-04-20', '2026-04-20'],
  ])('while an answer is awaited is due %s', (_name, appointmentOn, dueOn) => {
    const offers = [anOffer('assessment', '2026-04-07', 'awaiting-reply', appointmentOn)];
    expect(duesBy({ ...triaged, offers }, '2026-04-08')['booking']?.dueOn).toBe(dueOn);
  });

  it('looks at the latest offer of an assessment, of one day the one recorded later', () => {
    const offers = [
      anOffer('assessment', '2026-04-07', 'declined', '2026-04-20'),
      anOffer('assessment', '2026-04-07', 'accepted', '2026-04-21'),
      anOffer('programme', '2026-04-09', 'declined'),
    ];
    expect(Object.keys(duesBy({ ...triaged, offers }, '2026-04-10'))).toEqual(['assessments']);
  });
});

describe('a baseline assessment', () => {
  const offers = [anOffer('assessment', '2026-04-07', 'accepted', '2026-05-20')];
  const facts = { ...triaged, offers };

  it('is quiet until 14 days before the day agreed, and says for when it is booked', () => {
    expect(duesBy(facts, '2026-05-05')).toEqual({});
    expect(quietReason(facts, '2026-05-05')).toBe('Assessment booked for 20 May 2026');
  });

  it.each([
    ['2026-05-06', -14, 'Assessment booked for 20 May 2026'],
    ['2026-05-20', 0, 'Assessment booked for 20 May 2026'],
    ['2026-05-21', 1, 'Assessment was booked for 20 May 2026, none recorded'],
  ])('is due as at %s', (asAt, daysLate, reason) => {
    expect(duesBy(facts, asAt)['assessments']).toEqual({ dueOn: '2026-05-20', reason, daysLate });
  });

  it('is due as well where it was booked before anybody wrote a decision down', () => {
    expect(Object.keys(duesBy({ offers }, '2026-05-20'))).toEqual(['triage', 'assessments']);
  });

  it('is due no more once something was measured, and still due after a visit without a result', () => {
    const measured = [anAssessment('baseline', '2026-05-20', [aCat(20)])];
    expect(duesBy({ ...facts, assessments: measured }, '2026-05-20')).not.toHaveProperty('assessments');
    const nothing = [anAssessment('baseline', '2026-05-20', [])];
    expect(duesBy({ ...facts, assessments: nothing }, '2026-05-20')).toHaveProperty('assessments');
  });
});

describe('a start', () => {
  const assessed = { ...triaged, assessments: [anAssessment('baseline', '2026-04-20', [aCat(20)])] };

  it('is due from the assessment where none is planned', () => {
    expect(duesBy(assessed, '2026-04-22')['starts']).toEqual({
      dueOn: '2026-04-20',
      reason: 'Assessed 20 April 2026, no start planned',
      daysLate: 2,
    });
  });

  it.each([
    ['2026-04-22', undefined],
    ['2026-04-23', -14],
    ['2026-05-07', 0],
    ['2026-05-08', 1],
  ])('is due on the planned day, seen from 14 days before: as at %s', (asAt, daysLate) => {
    const planned = { ...assessed, plannedStartOn: plainDate('2026-05-07') };
    expect(duesBy(planned, asAt)['starts']?.daysLate).toBe(daysLate);
    const placed = { ...assessed, offers: [anOffer('programme', '2026-04-21', 'accepted', '2026-05-07')] };
    expect(duesBy(placed, asAt)['starts']?.daysLate).toBe(daysLate);
  });

  it('that lies further ahead keeps the referral quiet', () => {
    const planned = { ...assessed, plannedStartOn: plainDate('2026-05-07') };
    expect(quietReason(planned, '2026-04-22')).toBe('Start planned for 7 May 2026');
  });

  it('is due again where the place was refused', () => {
    const offers = [anOffer('programme', '2026-04-21', 'declined')];
    expect(duesBy({ ...assessed, offers }, '2026-04-22')['starts']?.reason).toBe(
      'Declined the place offered on 21 April 2026: offer another, or close',
    );
  });
});

describe('a wait', () => {
  it.each([
    ['2026-06-08', undefined],
    ['2026-06-09', -21],
    ['2026-06-30', 0],
    ['2026-07-01', 1],
  ])('is near its target from 21 days before day 90: as at %s', (asAt, daysLate) => {
    expect(duesBy(triaged, asAt)['waits']?.daysLate).toBe(daysLate);
  });

  it('says its day', () => {
    expect(duesBy(triaged, '2026-06-30')['waits']).toEqual({
      dueOn: '2026-06-30',
      reason: 'Waiting since receipt: day 90; day 90 is the last that counts',
      daysLate: 0,
    });
  });

  const after = { pathway: 'after-exacerbation', hospitalDischargedOn: plainDate('2026-03-30') } as const;

  it.each([
    ['2026-04-12', undefined],
    ['2026-04-13', -14],
    ['2026-04-27', 0],
    ['2026-04-28', 1],
  ])('after an exacerbation is near from 14 days before day 28: as at %s', (asAt, daysLate) => {
    expect(duesBy({ ...triaged, ...after }, asAt)['waits']?.daysLate).toBe(daysLate);
  });

  it('is held to a month where that is the target that the team set itself', () => {
    const month = {
      targets: { 'started-within-one-month-of-hospital-discharge': { percent: 60, source: 'The team' } },
    };
    expect(duesBy({ ...triaged, ...after }, '2026-04-28', month)['waits']?.dueOn).toBe('2026-04-30');
  });

  it('counts from receipt where the hospital discharge is not recorded', () => {
    const facts = { ...triaged, ...after, hospitalDischargedOn: null };
    expect(duesBy(facts, '2026-06-30')['waits']?.reason).toMatch(/^Waiting since receipt: day /);
  });

  it('is over for somebody whom triage did not accept', () => {
    const triage = { decision: 'redirected', decidedOn: plainDate('2026-04-03') } as const;
    expect(Object.keys(duesBy({ triage }, '2026-07-30'))).toEqual(['closure']);
  });
});
