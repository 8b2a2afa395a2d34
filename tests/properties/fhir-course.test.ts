import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { QUESTIONNAIRES } from '../../src/domain/measures/registered.js';
import { courseBundle } from '../../src/fhir/course/course-bundle.js';
import { anyCourse } from '../support/arbitrary-course.js';
import { danglingIn, faultsOfFhir } from '../support/fhir-validators.js';
import { asRecord, asRecords } from '../support/response.js';

describe('a bundle of any course', () => {
  it('is valid by the R4 definitions, and every reference leads to its resource', () => {
    fc.assert(
      fc.property(anyCourse, (course) => {
        const text = courseBundle(course);
        expect(faultsOfFhir(text)).toEqual([]);
        expect(danglingIn(JSON.parse(text))).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it('holds each answer that was given under the number of its item', () => {
    fc.assert(
      fc.property(anyCourse, (course) => {
        const answers = course.assessments.flatMap(({ entry }) =>
          entry.questionnaires
            .filter(({ notDoneReason }) => notDoneReason === null)
            .flatMap(({ items }) => (items ?? []).filter((item) => item !== null)),
        );
        const sent = responsesIn(courseBundle(course)).flatMap(({ item }) =>
          asRecords(item ?? []).flatMap(({ answer }) => (Array.isArray(answer) ? asRecords(answer) : [])),
        );
        const whole = sent.map(({ valueInteger }) => valueInteger).filter((value) => value !== undefined);
        expect(whole).toEqual(answers);
      }),
    );
  });

  it('has no more items than the questionnaire', () => {
    fc.assert(
      fc.property(anyCourse, (course) => {
        for (const { questionnaire: name, item } of responsesIn(courseBundle(course))) {
          const known = QUESTIONNAIRES.find(({ id }) => String(name).endsWith(`:${id}`));
          const most = (known?.items.length ?? 0) + (known?.measures.length ?? 0);
          expect(asRecords(item ?? []).length).toBeLessThanOrEqual(most);
        }
      }),
    );
  });
});

function responsesIn(text: string) {
  return asRecords(asRecord(JSON.parse(text))['entry'])
    .map(({ resource }) => asRecord(resource))
    .filter(({ resourceType }) => resourceType === 'QuestionnaireResponse');
}
