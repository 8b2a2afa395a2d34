import type { Response } from 'supertest';
import type { Body } from './entries.js';
import { itemsOf } from './response.js';
import type { TestApp, TestRole } from './start-app.js';

/** A caution as the service shows it. */
export type Caution = Readonly<Record<string, unknown>>;

/** The cautions of an assessment, as a clinician reads them. */
export async function cautionsAt(service: TestApp, assessmentId: string): Promise<readonly Caution[]> {
  const path = `/api/v1/assessments/${assessmentId}/cautions?limit=200`;
  return itemsOf(await service.as('clinician').get(path));
}

/** Each caution in one line: its id, its measure where it has one, and `!` where it must be acknowledged. */
export function inShort(cautions: readonly Caution[]): readonly string[] {
  return cautions.map(({ id, measureId, mustBeAcknowledged }) =>
    [id, ...(measureId === null ? [] : [measureId]), ...(mustBeAcknowledged === true ? ['!'] : [])].join(' '),
  );
}

/** The one caution with an id. */
export function cautionNamed(cautions: readonly Caution[], id: string): Caution {
  const [found, ...others] = cautions.filter((caution) => caution['id'] === id);
  if (found === undefined || others.length > 0) throw new Error(`Not exactly one caution ${id}.`);
  return found;
}

/** Puts somebody's name to a caution. */
export async function acknowledge(
  service: TestApp,
  assessmentId: string,
  request: Body,
  who: TestRole | 'other-team' = 'clinician',
): Promise<Response> {
  const body = { actionTaken: 'Spoke with the person and rang the practice.', ...request };
  return service.as(who).post(`/api/v1/assessments/${assessmentId}/acknowledgements`, body);
}
