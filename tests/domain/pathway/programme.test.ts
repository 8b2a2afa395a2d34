import { describe, expect, it } from 'vitest';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { attendanceOf, attendedShare, startOf } from '../../../src/domain/pathway/programme.js';
import { aReferral, aSession, sessionsFrom } from '../../support/facts.js';

describe('the start', () => {
  it('is the first supervised session attended', () => {
    const contacts = [
      { ...aSession('2026-05-01'), isSupervised: false },
      aSession('2026-05-04', 'did-not-attend'),
      aSession('2026-05-07', 'cancelled-by-service'),
      aSession('2026-05-11'),
      aSession('2026-05-14'),
    ];
    expect(startOf(aReferral({ contacts }))).toBe('2026-05-11');
  });

  it('does not depend on the order of the sessions', () => {
    expect(startOf(aReferral({ contacts: [aSession('2026-05-14'), aSession('2026-05-11')] }))).toBe(
      '2026-05-11',
    );
  });

  it('is absent while nothing supervised was attended', () => {
    const contacts = [
      { ...aSession('2026-05-01'), isSupervised: false },
      aSession('2026-05-04', 'did-not-attend'),
    ];
    expect(startOf(aReferral({ contacts }))).toBeNull();
  });
});

describe('the attended share', () => {
  it('leaves sessions cancelled by the service out of the denominator: 9 of 12 less 3', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 7, missed: 2, cancelledByService: 3 });
    const attendance = attendanceOf(aReferral({ contacts }));
    expect(attendance).toMatchObject({ planned: 12, cancelledByService: 3, expected: 9, attended: 7 });
    expect(attendedShare(attendance)).toEqual(fraction(7, 9));
  });

  it('counts sessions cancelled by the patient as missed', () => {
    const contacts = [aSession('2026-05-04'), aSession('2026-05-07', 'cancelled-by-patient')];
    const attendance = attendanceOf(aReferral({ contacts, plannedSessions: 2 }));
    expect(attendedShare(attendance)).toEqual(fraction(1, 2));
  });

  it('counts supervised sessions only', () => {
    const contacts = [aSession('2026-05-04'), { ...aSession('2026-05-05'), isSupervised: false }];
    expect(attendanceOf(aReferral({ contacts })).attended).toBe(1);
  });

  it('may pass one where sessions were added', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 3 });
    expect(attendedShare(attendanceOf(aReferral({ contacts, plannedSessions: 2 })))).toEqual(fraction(3, 2));
  });

  it('does not exist where the service cancelled every planned session', () => {
    const contacts = sessionsFrom('2026-05-04', { attended: 0, cancelledByService: 2 });
    expect(attendedShare(attendanceOf(aReferral({ contacts, plannedSessions: 2 })))).toBeNull();
  });
});
