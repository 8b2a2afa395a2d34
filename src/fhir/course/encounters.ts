import type { AssessmentEntry } from '../../domain/assessment/assessment.js';
import type { SessionMode, Timepoint } from '../../domain/referral/closed-sets.js';
import { derivedId, referenceTo } from '../elements.js';
import type { Element, Resource } from '../elements.js';
import { ACT_CODE_SYSTEM } from '../vocabulary.js';
import type { CourseToSend } from './course-to-send.js';
import { episodeId, placeReference } from './referral-resources.js';

/** Where a contact was. @source HL7 v3 ActCode: AMB ambulatory, HH home health, VR virtual */
const CLASSES: Readonly<Record<SessionMode, string>> = { centre: 'AMB', home: 'HH', remote: 'VR' };

const TIMEPOINT_TEXTS: Readonly<Record<Timepoint, string>> = {
  baseline: 'Baseline assessment',
  discharge: 'Discharge assessment',
  'follow-up': 'Follow-up assessment',
};

/** Assessments, and the sessions that the person attended. @source FHIR R4 (4.0.1), Encounter. */
export function encounters(course: CourseToSend): readonly Resource[] {
  const { assessments, sessions, referral } = course;
  return [
    ...assessments.map(({ id, entry }) =>
      encounter(course, {
        id,
        kind: TIMEPOINT_TEXTS[entry.timepoint],
        mode: modeOf(entry),
        on: entry.assessedOn,
        siteId: entry.siteId,
      }),
    ),
    ...sessions.map((session) =>
      encounter(course, {
        // A class is of many people: the contact of this one has an id of its own.
        id: derivedId(`contact:${referral.id}:${session.id}`),
        kind: session.isSupervised ? 'Supervised session' : 'Unsupervised session',
        mode: session.mode,
        on: session.heldOn,
        siteId: session.siteId,
      }),
    ),
  ];
}

/** At home where every test of the visit was. */
function modeOf({ walkTests, sitToStands, physicalTests }: AssessmentEntry): SessionMode {
  const places = [...walkTests, ...sitToStands, ...physicalTests].map(({ place }) => place);
  return places.length > 0 && places.every((place) => place === 'home') ? 'home' : 'centre';
}

function encounter(
  { patient, referral, siteNames }: CourseToSend,
  contact: { id: string; kind: string; mode: SessionMode; on: string; siteId: string },
): Resource {
  const site: Element = placeReference('site', contact.siteId, siteNames);
  return {
    resourceType: 'Encounter',
    id: contact.id,
    status: 'finished',
    class: { system: ACT_CODE_SYSTEM, code: CLASSES[contact.mode] },
    type: [{ text: contact.kind }],
    subject: referenceTo(patient.id),
    episodeOfCare: [referenceTo(episodeId(referral))],
    basedOn: [referenceTo(referral.id)],
    period: { start: contact.on, end: contact.on },
    location: [{ location: site }],
  };
}
