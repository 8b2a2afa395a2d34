import { describe, expect, it } from 'vitest';
import { checkCourse } from '../../../src/domain/assessment/check-course.js';
import type { CourseContext } from '../../../src/domain/assessment/check-course.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { Timepoint } from '../../../src/domain/referral/closed-sets.js';
import { aContext, foundIn } from '../../support/assessment-entries.js';

const codes = (timepoint: Timepoint, date: string, course: Partial<CourseContext> = {}) =>
  foundIn(checkCourse({ timepoint, assessedOn: plainDate(date) }, aContext(course))).map((found) =>
    found.replace(' /assessedOn', ''),
  );

const other = (timepoint: Timepoint, date: string) => ({ timepoint, assessedOn: plainDate(date) });

describe('an assessment', () => {
  it('lies between receipt and today, both included', () => {
    expect(codes('baseline', '2026-04-02')).toEqual([]);
    expect(codes('baseline', '2026-11-25')).toEqual([]);
    expect(codes('baseline', '2026-04-01')).toEqual(['before-receipt']);
    expect(codes('baseline', '2026-11-26')).toEqual(['in-the-future']);
  });

  it('other than a follow-up is not after the closure; the day itself counts', () => {
    const closed = { closedOn: plainDate('2026-07-01') };
    expect(codes('discharge', '2026-07-01', closed)).toEqual([]);
    expect(codes('discharge', '2026-07-02', closed)).toEqual(['after-closure']);
    expect(codes('baseline', '2026-07-02', closed)).toEqual(['after-closure']);
    expect(codes('follow-up', '2026-07-02', closed)).toEqual([]);
  });
});

describe('the order of timepoints', () => {
  const baseline = { others: [other('baseline', '2026-04-20')] };

  it('is baseline, discharge, follow-up; one day may hold two', () => {
    expect(codes('discharge', '2026-04-20', baseline)).toEqual([]);
    expect(codes('discharge', '2026-04-19', baseline)).toEqual(['out-of-order']);
    expect(codes('follow-up', '2026-04-19', baseline)).toEqual(['out-of-order']);
  });

  it('holds from both sides', () => {
    const discharged = { others: [other('discharge', '2026-07-01')] };
    expect(codes('baseline', '2026-07-01', discharged)).toEqual([]);
    expect(codes('baseline', '2026-07-02', discharged)).toEqual(['out-of-order']);
    expect(codes('follow-up', '2026-06-30', discharged)).toEqual(['out-of-order']);
  });

  it('holds against every other assessment', () => {
    const both = { others: [other('baseline', '2026-04-20'), other('follow-up', '2026-09-01')] };
    expect(codes('discharge', '2026-07-01', both)).toEqual([]);
    expect(codes('discharge', '2026-09-02', both)).toEqual(['out-of-order']);
  });

  it('lets a discharge assessment stand alone, and a second baseline follow a first', () => {
    expect(codes('discharge', '2026-07-01')).toEqual([]);
    expect(codes('baseline', '2026-04-10', baseline)).toEqual([]);
  });
});

describe('the age on the day', () => {
  it('is 18 to 110 years', () => {
    expect(codes('baseline', '2026-04-20', { bornOn: plainDate('2008-04-21') })).toEqual(['out-of-range']);
    expect(codes('baseline', '2026-04-20', { bornOn: plainDate('1915-04-20') })).toEqual(['out-of-range']);
    expect(codes('baseline', '2026-04-20', { bornOn: plainDate('2008-04-20') })).toEqual(['please-check']);
  });

  it('is usual from 30 to 95 years', () => {
    expect(codes('baseline', '2026-04-20', { bornOn: plainDate('1996-04-20') })).toEqual([]);
    expect(codes('baseline', '2026-04-20', { bornOn: plainDate('1996-04-21') })).toEqual(['please-check']);
    expect(codes('baseline', '2026-04-20', { bornOn: plainDate('1930-04-21') })).toEqual([]);
    expect(codes('baseline', '2026-04-20', { bornOn: plainDate('1930-04-20') })).toEqual(['please-check']);
  });
});
