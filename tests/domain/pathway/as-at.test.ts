import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { factsAsAt } from '../../../src/domain/pathway/as-at.js';
import { aCat, anAssessment, aReferral, aSession, closed } from '../../support/facts.js';

const facts = aReferral({
  triage: { decision: 'accepted', decidedOn: plainDate('2026-04-03') },
  offers: [
    {
      kind: 'assessment',
      offeredOn: plainDate('2026-04-04'),
      appointmentOn: plainDate('2026-04-10'),
      response: 'accepted',
    },
    { kind: 'programme', offeredOn: plainDate('2026-04-20'), appointmentOn: null, response: 'accepted' },
  ],
  pathway: 'after-exacerbation',
  hospitalDischargedOn: plainDate('2026-04-05'),
  contacts: [aSession('2026-05-04'), aSession('2026-05-07')],
  assessments: [
    anAssessment('baseline', '2026-04-10', [aCat(20)]),
    anAssessment('discharge', '2026-06-15', [aCat(18)]),
  ],
  exercisePlanGivenOn: plainDate('2026-06-15'),
  closure: closed('2026-06-16'),
});

describe('the data cut', () => {
  it('leaves out a referral received after it', () => {
    expect(factsAsAt(facts, plainDate('2026-03-31'))).toBeNull();
  });

  it('sees the facts of its own day', () => {
    const seen = factsAsAt(facts, plainDate('2026-05-04'));
    expect(seen?.contacts.map(({ heldOn }) => heldOn)).toEqual(['2026-05-04']);
    expect(factsAsAt(facts, plainDate('2026-06-16'))?.closure).not.toBeNull();
  });

  it('sees nothing dated later, of whatever kind', () => {
    const seen = factsAsAt(facts, plainDate('2026-04-02'));
    expect(seen).toMatchObject({
      triage: null,
      offers: [],
      hospitalDischargedOn: null,
      contacts: [],
      assessments: [],
      exercisePlanGivenOn: null,
      closure: null,
    });
  });

  it('leaves facts alone of which none is later', () => {
    expect(factsAsAt(facts, plainDate('2026-07-01'))).toBe(facts);
  });

  it('knows a registration in error whatever its date', () => {
    const inError = aReferral({ closure: closed('2026-09-01', 'registered-in-error') });
    expect(factsAsAt(inError, plainDate('2026-04-30'))?.closure?.reason).toBe('registered-in-error');
  });
});
