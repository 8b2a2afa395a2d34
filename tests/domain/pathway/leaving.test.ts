import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { isCompeting, leftBeforeStart } from '../../../src/domain/pathway/leaving.js';
import { CLOSURE_REASONS } from '../../../src/domain/referral/closed-sets.js';
import { aCourse, aSession, closed } from '../../support/facts.js';

describe('leaving before the start', () => {
  it('is by closure, with its reason', () => {
    expect(leftBeforeStart(aCourse({ closure: closed('2026-04-21', 'died') }))).toEqual({
      on: '2026-04-21',
      reason: 'died',
    });
  });

  it('is by triage where nobody has closed the referral', () => {
    const triage = { decision: 'not-suitable', decidedOn: plainDate('2026-04-05') } as const;
    expect(leftBeforeStart(aCourse({ triage }))).toEqual({
      on: '2026-04-05',
      reason: 'triaged-not-suitable',
    });
  });

  it('takes the reason of closure where there are both', () => {
    const triage = { decision: 'redirected', decidedOn: plainDate('2026-04-05') } as const;
    const course = aCourse({ triage, closure: closed('2026-04-05', 'transferred') });
    expect(leftBeforeStart(course)?.reason).toBe('transferred');
  });

  it('is not said of those who wait or have started', () => {
    const triage = { decision: 'accepted', decidedOn: plainDate('2026-04-05') } as const;
    expect(leftBeforeStart(aCourse({ triage }))).toBeNull();
    const started = aCourse({ contacts: [aSession('2026-05-04')], closure: closed('2026-05-20', 'died') });
    expect(leftBeforeStart(started)).toBeNull();
  });

  it('competes with the start only by death, move and transfer', () => {
    expect(CLOSURE_REASONS.filter(isCompeting)).toEqual(['moved-away', 'transferred', 'died']);
  });
});
