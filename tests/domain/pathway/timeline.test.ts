import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { timelineOf } from '../../../src/domain/pathway/timeline.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { aCourse, aSession, closed } from '../../support/facts.js';

const on = plainDate;
const wordsAt = (changes: Partial<Omit<ReferralFacts, 'patient'>>, asAt: string) =>
  timelineOf(aCourse({ receivedOn: on('2026-04-02'), ...changes }, asAt)).map(
    (event) => `${event.on} ${event.words}${event.isPlanned ? ' (planned)' : ''}`,
  );

describe('the course as dated events', () => {
  it('has what happened on one day in the order of the pathway', () => {
    const triage = { decision: 'accepted', decidedOn: on('2026-04-02') } as const;
    expect(wordsAt({ triage }, '2026-05-01')).toEqual([
      '2026-04-02 Referral received',
      '2026-04-02 Triage: accepted',
    ]);
  });

  it('has nothing later than the day on which it is asked, but for what is planned', () => {
    const triage = { decision: 'accepted', decidedOn: on('2026-04-03') } as const;
    const changes = { triage, plannedStartOn: on('2026-05-04') };
    expect(wordsAt(changes, '2026-04-02')).toEqual([
      '2026-04-02 Referral received',
      '2026-05-04 Start planned (planned)',
    ]);
    expect(wordsAt(changes, '2026-04-03')).toHaveLength(3);
  });

  it('has no planned start once somebody has started or left', () => {
    const closure = closed('2026-04-20', 'declined');
    expect(wordsAt({ plannedStartOn: on('2026-05-04'), closure }, '2026-06-01')).toEqual([
      '2026-04-02 Referral received',
      '2026-04-20 Closed: declined',
    ]);
  });

  it('names the start and the latest class attended, and no class missed', () => {
    const contacts = [
      aSession('2026-05-04'),
      aSession('2026-05-07'),
      aSession('2026-05-11', 'did-not-attend'),
    ];
    expect(wordsAt({ contacts }, '2026-06-01').slice(1)).toEqual([
      '2026-05-04 Programme started',
      '2026-05-07 Latest class attended',
    ]);
  });
});
