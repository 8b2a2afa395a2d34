import type { Body } from './entries.js';

/** What a test changes of a referral that is sent: elements of each resource; undefined leaves one out. */
export interface SentChanges {
  readonly patient?: Body;
  readonly request?: Body;
}

export const extensionUrl = (name: string): string => `urn:tidemark:extension:${name}`;

/** Extensions of ours by their name, each with its value. */
export function extensions(values: Readonly<Record<string, Body>>): readonly Body[] {
  return Object.entries(values).map(([name, value]) => ({ url: extensionUrl(name), ...value }));
}

/** The person of a referral as a resource that names only what is needed. */
export function aPatientResource(changes: Body = {}): Body {
  return {
    resourceType: 'Patient',
    id: 'p1',
    extension: extensions({ 'sex-at-birth': { valueCode: 'female' } }),
    identifier: [{ system: 'https://fhir.nhs.uk/Id/nhs-number', value: '9990000018' }],
    name: [{ family: 'Sandwort', given: ['Mavis'] }],
    birthDate: '1954-03-09',
    ...changes,
  };
}

/** A request that names only what is needed. */
export function aServiceRequest(siteId: string, changes: Body = {}): Body {
  return {
    resourceType: 'ServiceRequest',
    extension: extensions({
      'received-on': { valueDate: '2026-04-02' },
      source: { valueCode: 'general-practice' },
      pathway: { valueCode: 'stable' },
    }),
    status: 'active',
    intent: 'order',
    code: { text: 'Pulmonary rehabilitation' },
    subject: { reference: 'Patient/p1' },
    reasonCode: [{ coding: [{ system: 'urn:tidemark:code:diagnosis', code: 'copd' }] }],
    locationReference: [{ identifier: { system: 'urn:tidemark:site', value: siteId } }],
    ...changes,
  };
}

/** A bundle with a person and a request. */
export function aSentReferral(siteId: string, { patient, request }: SentChanges = {}): Body {
  return {
    resourceType: 'Bundle',
    type: 'collection',
    entry: [{ resource: aPatientResource(patient) }, { resource: aServiceRequest(siteId, request) }],
  };
}
