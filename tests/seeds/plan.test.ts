import { describe, expect, it } from 'vitest';
import { FAMILY_NAMES } from '../../seeds/names.js';
import { planDemo } from '../../seeds/team-plan.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { checkNhsNumber } from '../../src/domain/identity/nhs-number.js';
import { checkPatient } from '../../src/domain/patient/patient.js';
import { checkReferral } from '../../src/domain/referral/referral.js';
import { aPlan, assessmentsOf, coursesOf } from './planned.js';

const plan = aPlan(0.5);
const courses = coursesOf(plan);
const people = [...new Set(courses.map((course) => course.person))];

describe('the plan of the demo', () => {
  it('is the same for the same seed, and another for another', () => {
    expect(aPlan(0.1, 11)).toEqual(aPlan(0.1, 11));
    expect(aPlan(0.1, 11).teams).not.toEqual(aPlan(0.1, 12).teams);
  });

  it('covers three financial years up to the evening before today', () => {
    expect(plan).toMatchObject({ firstDay: '2024-04-01', lastDay: '2026-11-24' });
    const days = courses.map((course) => course.details.receivedOn);
    expect(days.every((day) => day >= '2024-04-01' && day <= '2026-11-24')).toBe(true);
  });

  it('covers twelve closed quarters when it is of four financial years, whatever the day', () => {
    const of = (today: string) =>
      planDemo({ today: plainDate(today), seed: 7, scale: 0.05, financialYears: 4 }).firstDay;
    expect([of('2026-04-01'), of('2026-11-25'), of('2027-03-31')]).toEqual(Array(3).fill('2023-04-01'));
  });

  it.each(['2026-04-01', '2027-01-01', '2028-02-29', '2030-03-31'])('can be made on %s', (today) => {
    const made = aPlan(0.1, 3, plainDate(today));
    expect(coursesOf(made).length).toBeGreaterThan(90);
  });

  it('has about 400 and 100 referrals a year', () => {
    const perYear = aPlan(1).teams.map(({ courses: own }) => own.length / (968 / 365.25));
    // 1 April 2024 to 24 November 2026 is 968 days.
    expect(perYear[0]).toBeCloseTo(400, -1);
    expect(perYear[1]).toBeCloseTo(100, -1);
  });

  it('never repeats an NHS number, over both teams, traced ones included', () => {
    const numbers = people.flatMap(({ details, correction }) =>
      [details.nhsNumber, correction?.changes.nhsNumber ?? null].filter((number) => number !== null),
    );
    expect(numbers.length).toBeGreaterThan(500);
    expect(new Set(numbers).size).toBe(numbers.length);
    expect(numbers.filter((number) => checkNhsNumber(number, 'demo').kind === 'invalid')).toEqual([]);
  });

  it('names people after plants and birds of the shore only', () => {
    const names = new Set<string>(FAMILY_NAMES);
    expect(people.filter(({ details }) => !names.has(details.familyName))).toEqual([]);
  });

  it('breaks no rule for people and referrals', () => {
    for (const { details, person } of courses) {
      const today = details.receivedOn;
      expect(checkPatient(person.details, { range: 'demo', today }).faults).toEqual([]);
      const placed = { ...details, siteId: 'a site', commissionerId: null };
      expect(checkReferral(placed, { today, bornOn: person.details.bornOn })).toEqual([]);
    }
  });

  it('refers a person again only when the former referral is closed, and nobody who died', () => {
    const again = courses.filter((course) => course.isReferredAgain);
    expect(again.length).toBeGreaterThan(10);
    for (const course of again) {
      const before = courses.filter(
        (other) => other.person === course.person && other.details.receivedOn < course.details.receivedOn,
      );
      expect(before.length).toBeGreaterThan(0);
      for (const former of before) {
        expect(former.closure?.reason).not.toBe('died');
        expect((former.closure?.recordedOn ?? '9999') < course.details.receivedOn).toBe(true);
      }
    }
  });

  it('lets nothing happen after a death', () => {
    const deaths = courses.filter((course) => course.closure?.reason === 'died');
    expect(deaths.length).toBeGreaterThan(5);
    for (const { closure, contacts, baseline, discharge } of deaths) {
      const last = closure?.closedOn ?? '';
      const days = [
        ...contacts.map(({ session }) => session.heldOn),
        ...[baseline, discharge].flatMap((assessment) => assessment?.entry.assessedOn ?? []),
      ];
      expect(days.filter((day) => day > last)).toEqual([]);
    }
  });

  it('dates a closure by its day, and enters a death some days after it', () => {
    const closures = courses.flatMap(({ closure }) => closure ?? []);
    for (const { closedOn, reason, recordedOn } of closures) {
      if (reason === 'died') expect(recordedOn > closedOn).toBe(true);
      else expect(recordedOn).toBe(closedOn);
    }
  });

  it('confirms unusual values, and has zero metres as a result', () => {
    const all = aPlan(2);
    const assessments = coursesOf(all).flatMap(assessmentsOf);
    expect(assessments.filter(({ entry }) => entry.confirmed.length > 0).length).toBeGreaterThan(20);
    const zero = assessments.filter(({ results }) =>
      results.some(
        ({ measureId, value }) => measureId === 'incremental-shuttle-walk-distance' && value.numerator === 0,
      ),
    );
    expect(zero.length).toBeGreaterThan(0);
  });
});
