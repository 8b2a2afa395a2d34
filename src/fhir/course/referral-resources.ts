import type { ClosureReason } from '../../domain/referral/closed-sets.js';
import type { Referral } from '../../domain/referral/referral.js';
import { TRIAGE_WORDS } from '../../domain/referral/step-words.js';
import { CLOSURE_WORDS, DIAGNOSIS_WORDS, SOURCE_WORDS } from '../../domain/referral/words.js';
import type { Stage } from '../../domain/pathway/stage.js';
import { derivedId, extensionsOf, listed, referenceTo } from '../elements.js';
import type { Element, Resource } from '../elements.js';
import { REFERRAL_EXTENSIONS } from '../extensions.js';
import { codeSystem, extensionUrl, idSystem, SERVICE } from '../vocabulary.js';
import type { CourseToSend } from './course-to-send.js';

/** The referral. @source FHIR R4 (4.0.1), ServiceRequest. */
export function serviceRequest(course: CourseToSend): Resource {
  const { referral, patient } = course;
  return {
    resourceType: 'ServiceRequest',
    id: referral.id,
    extension: [
      ...extensionsOf(REFERRAL_EXTENSIONS, referral),
      ...commissionerOf(course),
      ...triageOf(referral),
    ],
    identifier: [{ system: idSystem('referral'), value: referral.id }],
    status: requestStatus(referral.closure?.reason ?? null),
    intent: 'order',
    code: { coding: [{ system: codeSystem('service'), code: SERVICE.code }], text: SERVICE.text },
    subject: referenceTo(patient.id),
    occurrenceDateTime: referral.plannedStartOn ?? undefined,
    requester: { display: SOURCE_WORDS[referral.source] },
    reasonCode: [
      {
        coding: [{ system: codeSystem('diagnosis'), code: referral.diagnosis }],
        text: DIAGNOSIS_WORDS[referral.diagnosis],
      },
    ],
    locationReference: [placeReference('site', referral.siteId, course.siteNames)],
    note: listed(referral.otherConditions === null ? [] : [{ text: referral.otherConditions }]),
  };
}

/** What the team did about the referral. @source FHIR R4 (4.0.1), EpisodeOfCare. */
export function episodeOfCare({ referral, patient, stage, teamName, attendance }: CourseToSend): Resource {
  const { closure } = referral;
  const closing = closure === null ? [] : [coded('closure-reason', closure.reason)];
  const note = closure?.note ?? null;
  return {
    resourceType: 'EpisodeOfCare',
    id: episodeId(referral),
    extension: listed([
      ...closing,
      ...(note === null ? [] : [{ url: extensionUrl('closure-note'), valueString: note }]),
    ]),
    status: episodeStatus(stage, closure?.reason ?? null, attendance.attended > 0),
    type: [{ text: SERVICE.text }],
    patient: referenceTo(patient.id),
    managingOrganization: { display: teamName },
    period: { start: referral.receivedOn, end: closure?.closedOn },
    referralRequest: [referenceTo(referral.id)],
  };
}

/**
 * The written exercise plan that was given; its text is on paper and not in the record.
 *
 * @source FHIR R4 (4.0.1), CarePlan
 */
export function carePlans({ referral, patient, teamName }: CourseToSend): readonly Resource[] {
  const { exercisePlanGivenOn } = referral;
  if (exercisePlanGivenOn === null) return [];
  return [
    {
      resourceType: 'CarePlan',
      id: derivedId(`exercise-plan:${referral.id}`),
      status: 'active',
      intent: 'plan',
      title: 'Written exercise plan',
      description: 'Given to the person in writing; the record holds the day, not the text.',
      subject: referenceTo(patient.id),
      created: exercisePlanGivenOn,
      author: { display: teamName },
      supportingInfo: [referenceTo(episodeId(referral))],
    },
  ];
}

/** The id of the episode of a referral. */
export function episodeId({ id }: Pick<Referral, 'id'>): string {
  return derivedId(`episode:${id}`);
}

/** A site or a commissioner by its id and name. */
export function placeReference(kind: string, id: string, names: ReadonlyMap<string, string>): Element {
  return { identifier: { system: idSystem(kind), value: id }, display: names.get(id) };
}

function commissionerOf({ referral, commissionerNames }: CourseToSend): readonly Element[] {
  const { commissionerId } = referral;
  if (commissionerId === null) return [];
  const valueReference = placeReference('commissioner', commissionerId, commissionerNames);
  return [{ url: extensionUrl('commissioner'), valueReference }];
}

function triageOf({ triage }: Referral): readonly Element[] {
  if (triage === null) return [];
  const { decision, decidedOn, reason } = triage;
  return [
    {
      url: extensionUrl('triage'),
      extension: [
        { url: 'decision', valueCode: decision },
        { url: 'words', valueString: TRIAGE_WORDS[decision] },
        { url: 'decided-on', valueDate: decidedOn },
        ...(reason === null ? [] : [{ url: 'reason', valueString: reason }]),
      ],
    },
  ];
}

function coded(name: 'closure-reason', code: ClosureReason): Element {
  const coding = [{ system: codeSystem(name), code }];
  return { url: extensionUrl(name), valueCodeableConcept: { coding, text: CLOSURE_WORDS[code] } };
}

function requestStatus(closedFor: ClosureReason | null): string {
  if (closedFor === null) return 'active';
  if (closedFor === 'registered-in-error') return 'entered-in-error';
  return closedFor === 'completed' ? 'completed' : 'revoked';
}

function episodeStatus(stage: Stage, closedFor: ClosureReason | null, hasStarted: boolean): string {
  switch (stage) {
    case 'awaiting-triage':
      return 'planned';
    case 'awaiting-assessment':
    case 'awaiting-start':
      return 'waitlist';
    case 'in-programme':
    case 'awaiting-discharge-assessment':
      return 'active';
    case 'awaiting-closure':
      return hasStarted ? 'active' : 'waitlist';
    case 'closed':
      if (closedFor === 'registered-in-error') return 'entered-in-error';
      return hasStarted ? 'finished' : 'cancelled';
  }
}
