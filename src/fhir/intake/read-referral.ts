import type { PatientDetails } from '../../domain/patient/patient.js';
import type { ReferralDetails } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { needed, notTaken } from './fields.js';
import type { Gathered, Places } from './fields.js';
import { readPerson } from './read-person.js';
import { readRequest } from './read-request.js';
import { openElement } from './reading.js';
import type { NotKept, OpenElement } from './reading.js';

/** A referral with its person, as they are registered. */
export interface ReferralSent {
  readonly patient: PatientDetails;
  readonly referral: ReferralDetails;
  /** Where each field stood, for what a rule of the record finds. */
  readonly places: Places;
  readonly notKept: readonly NotKept[];
}

/** Somebody who sends this much that is not kept has sent something else. */
const MOST_NOT_KEPT = 1000;

/**
 * Reads a referral: a bundle of type collection with one ServiceRequest and its Patient, or a ServiceRequest that contains
 * the Patient. Nothing is passed over in silence: an element is read, or refused, or told as not kept.
 *
 * @param body JSON that was sent
 * @returns refused with every fault found, each with the pointer to its element
 * @source FHIR R4 (4.0.1): Bundle, ServiceRequest, Patient
 */
export function readReferral(body: unknown): Outcome<ReferralSent> {
  const gathered: Gathered = { faults: [], notKept: [], places: new Map() };
  const outermost = openElement(body, '', gathered);
  const parts = outermost === null ? null : partsOf(outermost, gathered);
  const patient = parts === null ? null : readPerson(parts.patient, gathered);
  const referral = parts === null ? null : readRequest(parts.request, gathered);
  if (parts !== null) checkSubject(parts, gathered);
  outermost?.close();
  const { faults, notKept, places } = gathered;
  if (notKept.length > MOST_NOT_KEPT) {
    const message = `More than ${MOST_NOT_KEPT} elements have no place in the record. Send the referral and its person.`;
    faults.push({ pointer: '', code: 'too-much-not-kept', message });
  }
  if (faults.length > 0 || patient === null || referral === null) {
    return refused({ code: 'rules-broken', faults });
  }
  return done({ patient, referral, places, notKept });
}

interface Parts {
  readonly request: OpenElement;
  readonly patient: OpenElement;
  /** References that lead to the patient. */
  readonly addresses: readonly string[];
}

function partsOf(outermost: OpenElement, gathered: Gathered): Parts | null {
  const type = outermost.text('resourceType');
  if (type === 'Bundle') return partsOfBundle(outermost, gathered);
  if (type === 'ServiceRequest') return partsOfRequest(outermost, gathered);
  return notTaken(gathered, '/resourceType', 'Send a Bundle or a ServiceRequest.');
}

/** A resource with its type and the references that lead to it. */
interface Found {
  readonly resource: OpenElement;
  readonly type: string;
  readonly addresses: readonly string[];
}

function partsOfBundle(bundle: OpenElement, gathered: Gathered): Parts | null {
  bundle.label('id');
  if (bundle.text('type') !== 'collection') {
    notTaken(gathered, bundle.at('type'), 'Send the bundle as a collection.');
  }
  const found = bundle.parts('entry').flatMap((entry): readonly Found[] => {
    const fullUrl = entry.text('fullUrl');
    const resource = entry.part('resource');
    if (resource === null) return [];
    const type = resource.text('resourceType') ?? '';
    const id = resource.text('id');
    const addresses = [...(fullUrl === null ? [] : [fullUrl]), ...(id === null ? [] : [`${type}/${id}`])];
    return [{ resource, type, addresses }];
  });
  const where = bundle.at('entry');
  const request = onlyOne(found, 'ServiceRequest', where, gathered);
  const patient = onlyOne(found, 'Patient', where, gathered);
  leaveOthers(found);
  if (request === null || patient === null) return null;
  return { request: request.resource, patient: patient.resource, addresses: patient.addresses };
}

function partsOfRequest(request: OpenElement, gathered: Gathered): Parts | null {
  request.label('id');
  const found = request.parts('contained').map((resource): Found => {
    const type = resource.text('resourceType') ?? '';
    const id = resource.text('id');
    return { resource, type, addresses: id === null ? [] : [`#${id}`] };
  });
  const patient = onlyOne(found, 'Patient', request.at('contained'), gathered);
  leaveOthers(found);
  return patient === null ? null : { request, patient: patient.resource, addresses: patient.addresses };
}

function onlyOne(found: readonly Found[], type: string, where: string, gathered: Gathered): Found | null {
  const [first, second] = found.filter((each) => each.type === type);
  if (second !== undefined) notTaken(gathered, second.resource.pointer, `Send one ${type}.`);
  return first ?? needed(gathered, where, `Send the ${type}.`);
}

function leaveOthers(found: readonly Found[]): void {
  for (const { resource, type } of found) {
    if (type !== 'ServiceRequest' && type !== 'Patient') {
      resource.leave('Only the referral and its person are taken in.');
    }
  }
}

/** The request must be about the person who came with it. */
function checkSubject({ request, addresses }: Parts, gathered: Gathered): void {
  const subject = request.part('subject');
  const reference = subject?.text('reference') ?? null;
  subject?.label('display');
  subject?.sameAs('type', ['Patient']);
  if (reference === null) {
    needed(gathered, `${request.at('subject')}/reference`, 'Say that the request is about the patient.');
  } else if (!addresses.includes(reference)) {
    const message = 'This does not lead to the patient that came with the request.';
    notTaken(gathered, `${request.at('subject')}/reference`, message);
  }
}
