import { DELIVERY_MODES, DIAGNOSES, PATHWAYS, REFERRAL_SOURCES } from '../../domain/referral/closed-sets.js';
import type { Diagnosis } from '../../domain/referral/closed-sets.js';
import type { ReferralDetails } from '../../domain/referral/referral.js';
import { DIAGNOSIS_WORDS, SOURCE_WORDS } from '../../domain/referral/words.js';
import { REFERRAL_EXTENSIONS } from '../extensions.js';
import { codeSystem, extensionUrl, idSystem, SERVICE } from '../vocabulary.js';
import { acceptedText, memberAt, needed, notTaken } from './fields.js';
import type { Gathered } from './fields.js';
import { openExtensions } from './open-extensions.js';
import type { OpenElement } from './reading.js';

const LONGEST_NOTE = 2000;

/** Intents that are an order, by whomever. @source FHIR R4 (4.0.1), request-intent */
const ORDERS = ['order', 'original-order', 'reflex-order', 'filler-order', 'instance-order'] as const;

/**
 * The referral of a ServiceRequest. It asks for what registering a referral asks for, and guesses nothing: the day of
 * receipt is told and is not the day on which it was written or sent.
 *
 * @returns null, with faults, where something is missing or cannot be taken
 */
export function readRequest(request: OpenElement, gathered: Gathered): ReferralDetails | null {
  const { places } = gathered;
  const extensions = openExtensions(request, REFERRAL_EXTENSIONS, { part: '/referral', gathered });
  checkRequest(request, gathered);
  const receivedOn = extensions.neededDate('receivedOn');
  const source = extensions.neededCode('source', REFERRAL_SOURCES);
  const pathway = extensions.neededCode('pathway', PATHWAYS);
  const siteId = readSite(request, gathered);
  const diagnosis = readDiagnosis(request, gathered);
  const commissioner = extensions.other(extensionUrl('commissioner'));
  places.set('/referral/commissionerId', (commissioner ?? request).pointer);
  places.set('/referral/plannedStartOn', request.at('occurrenceDateTime'));
  const details = {
    commissionerId: commissioner === null ? null : readCommissioner(commissioner, gathered),
    otherConditions: readNotes(request, gathered),
    hospitalDischargedOn: extensions.date('hospitalDischargedOn'),
    mrcGrade: extensions.whole('mrcGrade', { min: 1, max: 5 }),
    deliveryMode: extensions.code('deliveryMode', DELIVERY_MODES),
    plannedStartOn: request.date('occurrenceDateTime'),
    plannedSessions: extensions.whole('plannedSessions', { min: 1, max: 60 }),
    plannedWeeks: extensions.whole('plannedWeeks', { min: 1, max: 52 }),
    exercisePlanGivenOn: extensions.date('exercisePlanGivenOn'),
  };
  extensions.leaveRest();
  const requester = request.part('requester');
  if (source !== null) requester?.sameAs('display', [SOURCE_WORDS[source]]);
  if (receivedOn === null || source === null || pathway === null || siteId === null || diagnosis === null) {
    return null;
  }
  return { ...details, receivedOn, source, pathway, siteId, diagnosis };
}

/** That it is an order that stands, of what the team does. */
function checkRequest(request: OpenElement, gathered: Gathered): void {
  const status = request.text('status');
  if (status !== 'active') {
    notTaken(gathered, request.at('status'), 'Only a request that is active is taken in.');
  }
  const value = request.text('intent') ?? '';
  memberAt(gathered, ORDERS, { value, pointer: request.at('intent') });
  if (request.flag('doNotPerform') === true) {
    notTaken(gathered, request.at('doNotPerform'), 'This asks that nothing be done.');
  }
  const code = request.part('code');
  const codings = code?.parts('coding') ?? [];
  const isCoded = codings.filter((coding) => isOurs(coding, 'service', SERVICE.code)).length > 0;
  const isNamed = code !== null && code.text('text')?.toLowerCase() === SERVICE.text.toLowerCase();
  if (!isCoded && !isNamed) {
    const message = `Only ${SERVICE.text.toLowerCase()} is taken in: give the code ${SERVICE.code} of ${codeSystem('service')}, or that text.`;
    notTaken(gathered, request.at('code'), message);
  }
}

function isOurs(coding: OpenElement, set: string, code: string): boolean {
  const isIt = coding.text('system') === codeSystem(set) && coding.text('code') === code;
  if (isIt) coding.label('display');
  else coding.leave();
  return isIt;
}

/** The diagnosis by a code of ours; codes of others are not kept. */
function readDiagnosis(request: OpenElement, gathered: Gathered): Diagnosis | null {
  gathered.places.set('/referral/diagnosis', request.at('reasonCode'));
  const system = codeSystem('diagnosis');
  let diagnosis: Diagnosis | null = null;
  let isFound = false;
  for (const reason of request.parts('reasonCode')) {
    const codings = reason.parts('coding').map((coding) => ({ coding, system: coding.text('system') }));
    const [ours] = codings.filter((each) => each.system === system);
    if (ours === undefined) {
      reason.leave();
      continue;
    }
    for (const { coding } of codings) if (coding !== ours.coding) coding.leave();
    ours.coding.label('display');
    const value = ours.coding.text('code') ?? '';
    if (isFound) {
      notTaken(gathered, reason.pointer, 'A referral has one diagnosis; give others as a note.');
    } else {
      isFound = true;
      diagnosis = memberAt(gathered, DIAGNOSES, { value, pointer: ours.coding.at('code') });
      if (diagnosis !== null) reason.sameAs('text', [DIAGNOSIS_WORDS[diagnosis]]);
    }
  }
  if (isFound) return diagnosis;
  return needed(gathered, request.at('reasonCode'), `Give the diagnosis by a code of ${system}.`);
}

/** The site that the person is referred to, by the id that the service gave it. */
function readSite(request: OpenElement, gathered: Gathered): string | null {
  const places = request.parts('locationReference');
  gathered.places.set('/referral/siteId', request.at('locationReference'));
  const [place, ...others] = places;
  if (place === undefined) {
    const message = `Give one of the sites of the team by an identifier of ${idSystem('site')}.`;
    return needed(gathered, request.at('locationReference'), message);
  }
  for (const other of others) notTaken(gathered, other.pointer, 'A referral is to one site.');
  return readId(place, { kind: 'site', field: '/referral/siteId' }, gathered);
}

function readCommissioner(extension: OpenElement, gathered: Gathered): string | null {
  const reference = extension.part('valueReference');
  if (reference === null) return needed(gathered, extension.at('valueReference'), 'Give the commissioner.');
  return readId(reference, { kind: 'commissioner', field: '/referral/commissionerId' }, gathered);
}

function readId(
  reference: OpenElement,
  { kind, field }: { readonly kind: string; readonly field: string },
  gathered: Gathered,
): string | null {
  reference.label('display');
  const identifier = reference.part('identifier');
  const value = identifier?.text('value') ?? null;
  if (identifier === null || identifier.text('system') !== idSystem(kind) || value === null) {
    return needed(gathered, reference.at('identifier'), `Give the id by an identifier of ${idSystem(kind)}.`);
  }
  gathered.places.set(field, identifier.at('value'));
  return value.toLowerCase();
}

/** Notes are the other conditions, one after the other. */
function readNotes(request: OpenElement, gathered: Gathered): string | null {
  const pointer = request.at('note');
  gathered.places.set('/referral/otherConditions', pointer);
  const notes = request.parts('note').flatMap((note) => {
    const text = note.text('text');
    return text === null ? [] : [text];
  });
  if (notes.length === 0) return null;
  return acceptedText(gathered, { value: notes.join('\n'), pointer, maxLength: LONGEST_NOTE });
}
