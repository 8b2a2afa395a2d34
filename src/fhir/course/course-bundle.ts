import { derivedId, named, referenceTo } from '../elements.js';
import type { Element, Resource } from '../elements.js';
import { idSystem } from '../vocabulary.js';
import type { CourseToSend } from './course-to-send.js';
import { encounters } from './encounters.js';
import { component, observation } from './observation.js';
import { physicalFindings, sitToStandFindings } from './other-test-findings.js';
import { patientResource } from './patient-resource.js';
import { questionnaireResponses, scoreFindings } from './questionnaire-resources.js';
import { carePlans, episodeOfCare, serviceRequest } from './referral-resources.js';
import { visitFindings } from './visit-findings.js';
import { walkFindings } from './walk-findings.js';

/**
 * One person's course as a bundle of FHIR R4 resources, as JSON text. Offers, entries in error, superseded versions, the
 * diary and cautions are not in it.
 *
 * @source FHIR R4 (4.0.1), Bundle of type collection
 */
export function courseBundle(course: CourseToSend): string {
  const bundle = {
    resourceType: 'Bundle',
    identifier: { system: idSystem('course'), value: course.referral.id },
    type: 'collection',
    timestamp: course.writtenAt,
    entry: resourcesOf(course).map((resource) => ({ fullUrl: `urn:uuid:${resource.id}`, resource })),
  } satisfies Element;
  return JSON.stringify(bundle);
}

function resourcesOf(course: CourseToSend): readonly Resource[] {
  const patientId = course.patient.id;
  const visits = course.assessments.map((assessment) => ({ patientId, assessment }));
  return [
    patientResource(course),
    serviceRequest(course),
    episodeOfCare(course),
    ...carePlans(course),
    ...encounters(course),
    sessionsObservation(course),
    ...visits.flatMap((visit) => [
      ...questionnaireResponses(visit),
      ...[
        ...visitFindings(visit.assessment.entry),
        ...walkFindings(visit.assessment.entry),
        ...sitToStandFindings(visit.assessment.entry),
        ...scoreFindings(visit.assessment),
        ...physicalFindings(visit.assessment),
      ].map((finding) => observation(visit, finding)),
    ]),
  ];
}

/** Supervised sessions as numbers, those included that are known by their counts only. */
function sessionsObservation({ patient, referral, attendance, asAt }: CourseToSend): Resource {
  const parts: readonly (readonly [string, number])[] = [
    ['Supervised sessions planned', attendance.planned],
    ['Cancelled by the service', attendance.cancelledByService],
    ['Cancelled by the patient', attendance.cancelledByPatient],
    ['Did not attend', attendance.didNotAttend],
  ];
  return {
    resourceType: 'Observation',
    id: derivedId(`sessions:${referral.id}`),
    status: 'final',
    code: named('Supervised sessions attended'),
    subject: referenceTo(patient.id),
    effectiveDateTime: asAt,
    valueInteger: attendance.attended,
    component: parts.flatMap(([text, number]) => component(named(text), { valueInteger: number })),
  };
}
