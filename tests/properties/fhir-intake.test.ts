import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { courseBundle } from '../../src/fhir/course/course-bundle.js';
import { readReferral } from '../../src/fhir/intake/read-referral.js';
import { anyCourse } from '../support/arbitrary-course.js';
import { aSentReferral } from '../support/fhir-referral.js';
import { asRecord } from '../support/response.js';

/** A course of somebody who is still referred, with a name of one line. */
const anyOpenCourse = anyCourse
  .filter(({ patient }) => ![patient.familyName, patient.givenName].some((name) => name.includes('\n')))
  .map((course) => ({ ...course, referral: { ...course.referral, closure: null } }));

describe('reading what was sent', () => {
  it('gives the person and the referral of any course back as they were', () => {
    fc.assert(
      fc.property(anyOpenCourse, (course) => {
        const read = readReferral(JSON.parse(courseBundle(course)));
        if (read.kind === 'refused') throw new Error(JSON.stringify(read.refusal));
        const { patient, referral } = read.value;
        expect(asRecord(course.patient)).toMatchObject(patient);
        expect(asRecord(course.referral)).toMatchObject(referral);
        expect(Object.keys(patient)).toHaveLength(15);
        expect(Object.keys(referral)).toHaveLength(14);
      }),
    );
  });

  it('never fails, whatever comes', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (body) => {
        const { kind } = readReferral(body);
        expect(kind).toBe('refused');
      }),
    );
  });

  it('reads, refuses or tells every element: a strange one anywhere is never passed over', () => {
    const sent = JSON.stringify(aSentReferral('00000000-0000-4000-8000-000000000001'));
    const holes = [...sent.matchAll(/\{/g)].map(({ index }) => index + 1);
    fc.assert(
      fc.property(fc.constantFrom(...holes), fc.jsonValue(), (hole, value) => {
        const strange = `"strange":${JSON.stringify(value)},`;
        const read = readReferral(JSON.parse(sent.slice(0, hole) + strange + sent.slice(hole)));
        if (read.kind === 'refused') throw new Error(JSON.stringify(read.refusal));
        expect(read.value.notKept.map(({ pointer }) => pointer)).toEqual([
          expect.stringMatching(/\/strange$/),
        ]);
      }),
    );
  });
});
