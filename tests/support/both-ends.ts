import { aReferralBody } from './entries.js';
import type { Body } from './entries.js';
import { asRecord, asRecords } from './response.js';
import { created, givenPatient } from './scenario.js';
import type { TestApp } from './start-app.js';

type Json = Readonly<Record<string, unknown>>;

/** What is entered of one person; what a test does not name is left out, so that nothing else can explain a result. */
export interface TwoEnds {
  readonly patient?: Body;
  readonly referral?: Body;
  /** Null where there is no assessment at this end. */
  readonly baseline: Body | null;
  readonly discharge: Body | null;
}

/** Enters a baseline of 20 April and a discharge of 22 June 2026 of a new person; gives the id of the referral. */
export async function givenBothEnds(service: TestApp, ends: TwoEnds): Promise<string> {
  const patientId = await givenPatient(service, ends.patient);
  const body = aReferralBody(patientId, service.siteId, ends.referral);
  const referralId = await created(service, '/api/v1/referrals', body);
  const days = { baseline: '2026-04-20', discharge: '2026-06-22' } as const;
  for (const timepoint of ['baseline', 'discharge'] as const) {
    const entered = ends[timepoint];
    if (entered === null) continue;
    const assessment = { timepoint, assessedOn: days[timepoint], siteId: service.siteId };
    const person = { heightCm: 160, weightKg: 68.5, safetyScreen: 'no-concern' };
    const path = `/api/v1/referrals/${referralId}/assessments`;
    await created(service, path, { ...assessment, ...person, ...entered }, 'clinician');
  }
  return referralId;
}

/** The outcomes of a referral, as a clinician reads them. */
export async function outcomesOfReferral(service: TestApp, referralId: string): Promise<Json> {
  const response = await service.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`);
  if (response.status !== 200) throw new Error(response.text);
  return asRecord(response.body);
}

/** The one measure with an id. */
export function measureIn(outcomes: Json, measureId: string): Json {
  const found = asRecords(outcomes['measures']).filter((measure) => measure['measureId'] === measureId);
  if (found.length !== 1) throw new Error(`${found.length} times ${measureId}`);
  return asRecord(found[0]);
}

/** Ids of the cautions that the comparison itself raises about a measure; those of an assessment are left out. */
export function comparisonCautions(outcomes: Json, measureId: string): readonly unknown[] {
  return asRecords(outcomes['cautions'])
    .filter((caution) => caution['measureId'] === measureId && caution['assessmentId'] === null)
    .map((caution) => caution['id']);
}
