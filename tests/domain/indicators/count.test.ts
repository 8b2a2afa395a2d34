import { describe, expect, it } from 'vitest';
import { asCohort } from '../../../src/domain/cohort/cohorts.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { countFigure, countIndicator } from '../../../src/domain/indicators/count.js';
import { percentagesOf } from '../../../src/domain/indicators/tally.js';
import { UPTAKE } from '../../../src/domain/indicators/definitions/uptake.js';
import { FIGURE_RULES } from '../../../src/domain/indicators/figure-rules.js';
import { ruleOf } from '../../../src/domain/indicators/indicator.js';
import { judgeContext } from '../../../src/domain/indicators/judge-context.js';
import { INDICATORS } from '../../../src/domain/indicators/registered.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { aCourse, aSession, closed } from '../../support/facts.js';
import { aPeriod } from '../../support/worked-quarter.js';

const context = judgeContext({
  period: aPeriod('2026-27-Q1'),
  asAt: plainDate('2026-12-31'),
  settings: DEFAULT_TEAM_SETTINGS,
});

const started = { contacts: [aSession('2026-05-04')] };

describe('counting a figure', () => {
  it('counts a person referred twice once among people, in the numerator if either counts', () => {
    const patientId = 'patient-7';
    const cohort = asCohort('referral', [
      aCourse({ referralId: 'a', patientId, closure: closed('2026-04-20', 'declined') }),
      aCourse({ referralId: 'b', patientId, ...started }),
      aCourse({ referralId: 'c', patientId, ...started }),
      aCourse({ referralId: 'd', ...started }),
    ]);
    const { figure } = countIndicator(UPTAKE, cohort, context);
    expect([figure.numerator, figure.denominator]).toEqual([3, 4]);
    expect(figure.people).toEqual({ numerator: 2, denominator: 2 });
  });

  it('leaves registrations in error out of every rule, and gives everybody a reason', () => {
    const cohort = asCohort('referral', [
      aCourse({ referralId: 'a', closure: closed('2026-04-02', 'registered-in-error') }),
      aCourse({ referralId: 'b', ...started }),
    ]);
    const { figure, members } = countIndicator(UPTAKE, cohort, context);
    expect(figure.excluded).toEqual([{ id: 'registered-in-error', reason: 'registered in error', count: 1 }]);
    const receivedOn = '2026-04-01';
    expect(members).toEqual([
      {
        referralId: 'a',
        patientId: 'patient-of-a',
        receivedOn,
        kind: 'excluded',
        exclusion: 'registered-in-error',
        reason: 'Registered in error',
      },
      {
        referralId: 'b',
        patientId: 'patient-of-b',
        receivedOn,
        kind: 'numerator',
        exclusion: null,
        reason: 'Started on day 33',
      },
    ]);
  });

  it('refuses a cohort that the rule is not for', () => {
    expect(() => countFigure(ruleOf(UPTAKE), asCohort('start', []), context)).toThrow(RangeError);
  });

  it('has no percentage, interval or bounds where nobody counts', () => {
    const { figure } = countIndicator(UPTAKE, asCohort('referral', []), context);
    expect(figure).toMatchObject({
      numerator: 0,
      denominator: 0,
      percentage: null,
      interval: null,
      bounds: null,
    });
  });

  it('has bounds even where everybody is open: 0 to 100 %', () => {
    expect(percentagesOf(0, 0, 3)).toEqual({
      percentage: null,
      interval: null,
      bounds: { worst: 0, best: 100 },
    });
  });
});

describe('the rules of figures', () => {
  it('have ids of their own that can stand in an address', () => {
    const ids = FIGURE_RULES.map((rule) => rule.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => !/^[a-z0-9.-]+$/.test(id))).toEqual([]);
  });

  it('name a rule with its version, and a source', () => {
    expect(FIGURE_RULES.filter((rule) => !/^[a-z0-9/-]+@\d+$/.test(rule.ruleId))).toEqual([]);
    expect(FIGURE_RULES.filter((rule) => rule.source.text === '')).toEqual([]);
  });

  it('include every indicator, whose id is the key of its target', () => {
    expect(INDICATORS.map(({ id, targetKey }) => [id, targetKey]).filter(([id, key]) => id !== key)).toEqual(
      [],
    );
    const known = new Set(INDICATORS.map((indicator) => indicator.targetKey));
    expect(Object.keys(DEFAULT_TEAM_SETTINGS.targets).filter((key) => !known.has(key))).toEqual([]);
  });
});
