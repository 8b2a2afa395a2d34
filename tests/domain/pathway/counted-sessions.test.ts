import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { factsAsAt } from '../../../src/domain/pathway/as-at.js';
import { attendanceOf, startOf } from '../../../src/domain/pathway/programme.js';
import { checkSessionCounts } from '../../../src/domain/session/session-counts.js';
import type { SessionCounts } from '../../../src/domain/session/session-counts.js';
import { aReferral } from '../../support/facts.js';

const COUNTS: SessionCounts = {
  startedOn: plainDate('2026-05-04'),
  countedOn: plainDate('2026-06-12'),
  attended: 9,
  didNotAttend: 2,
  cancelledByPatient: 1,
  cancelledByService: 1,
};

describe('sessions known by their counts', () => {
  it('start the person and count beside those of registers', () => {
    const facts = aReferral({
      counted: COUNTS,
      contacts: [
        { heldOn: plainDate('2026-06-15'), mode: 'centre', isSupervised: true, outcome: 'attended' },
      ],
    });
    expect(startOf(facts)).toBe('2026-05-04');
    expect(attendanceOf(facts)).toMatchObject({
      attended: 10,
      didNotAttend: 2,
      cancelledByService: 1,
      expected: 11,
    });
  });

  it('are the first session and no more before the last of them was counted', () => {
    const facts = aReferral({ counted: COUNTS });
    expect(factsAsAt(facts, plainDate('2026-05-03'))?.counted).toBeNull();
    expect(factsAsAt(facts, plainDate('2026-06-11'))?.counted).toMatchObject({
      attended: 1,
      didNotAttend: 0,
    });
    expect(factsAsAt(facts, plainDate('2026-06-12'))?.counted).toEqual(COUNTS);
  });

  it('are refused where they contradict themselves or the course', () => {
    const course = {
      receivedOn: plainDate('2026-04-01'),
      closedOn: plainDate('2026-07-01'),
      today: plainDate('2026-11-01'),
    };
    expect(checkSessionCounts(COUNTS, course)).toEqual([]);
    const codes = (changes: Partial<SessionCounts>): readonly string[] =>
      checkSessionCounts({ ...COUNTS, ...changes }, course).map(({ code }) => code);
    expect(codes({ attended: 0 })).toEqual(['start-with-sessions']);
    expect(codes({ startedOn: null })).toEqual(['start-with-sessions']);
    expect(codes({ attended: 61 })).toEqual(['out-of-range']);
    expect(codes({ didNotAttend: 1.5 })).toEqual(['out-of-range']);
    expect(codes({ startedOn: plainDate('2026-03-31') })).toEqual(['before-receipt']);
    expect(codes({ countedOn: plainDate('2026-05-03') })).toEqual(['out-of-order']);
    expect(codes({ countedOn: plainDate('2026-07-02') })).toEqual(['after-closure']);
  });
});
