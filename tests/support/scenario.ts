import { aPatient, aReferralBody, anAssessment, aSession } from './entries.js';
import type { Body } from './entries.js';
import type { TestApp, TestRole } from './start-app.js';
import { asRecord, asRecords, textAt } from './response.js';

/** Steps that a test starts from; each goes through the door that clients use, and gives the id. */

/** A registered person without an NHS number, so that any number of them can be made. */
export async function givenPatient(app: TestApp, changes: Body = {}): Promise<string> {
  const withoutNumber = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' };
  return created(app, '/api/v1/patients', aPatient({ ...withoutNumber, ...changes }));
}

/** Two records that were merged into one. */
export async function givenMergedRecords(
  app: TestApp,
): Promise<{ readonly survivorId: string; readonly duplicateId: string; readonly mergeId: string }> {
  const [survivorId, duplicateId] = [await givenPatient(app), await givenPatient(app)];
  const merge = { duplicateId, duplicateVersion: 1, reason: 'One person' };
  const answer = await app.as('lead').post(`/api/v1/patients/${survivorId}/merge`, merge);
  return { survivorId, duplicateId, mergeId: textAt(asRecord(asRecord(answer.body)['merge']), 'id') };
}

/** Two records that were merged into one, and parted again. */
export async function givenPartedRecords(
  app: TestApp,
): Promise<{ readonly survivorId: string; readonly duplicateId: string; readonly mergeId: string }> {
  const merged = await givenMergedRecords(app);
  const at = `/api/v1/patients/${merged.survivorId}/merges/${merged.mergeId}`;
  await app.as('lead').post(`${at}/undo`, { duplicateVersion: 2, reason: 'Two people' });
  return merged;
}

/** An open referral of a new person, received on 2 April 2026 unless changed. */
export async function givenReferral(app: TestApp, changes: Body = {}): Promise<string> {
  const patientId = await givenPatient(app);
  return created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId, changes));
}

/** A triaged referral of a new person. */
export async function givenTriagedReferral(app: TestApp): Promise<string> {
  const referralId = await givenReferral(app);
  await created(app, `/api/v1/referrals/${referralId}/triage`, {
    decision: 'accepted',
    decidedOn: '2026-04-03',
  });
  return referralId;
}

/** A referral that was closed on 1 July 2026. */
export async function givenClosedReferral(app: TestApp): Promise<string> {
  const referralId = await givenReferral(app);
  await created(app, `/api/v1/referrals/${referralId}/closure`, {
    closedOn: '2026-07-01',
    reason: 'completed',
  });
  return referralId;
}

/** A referral that was accepted, was offered an assessment, and was closed on 1 July 2026. */
export async function givenClosedWithOffer(
  app: TestApp,
): Promise<{ readonly referralId: string; readonly offerId: string }> {
  const referralId = await givenTriagedReferral(app);
  const at = `/api/v1/referrals/${referralId}`;
  const offer = { kind: 'assessment', offeredOn: '2026-04-07', response: 'accepted' };
  const answer = await app.as('lead').post(`${at}/offers`, offer);
  const [made] = asRecords(asRecord(answer.body)['offers']);
  await created(app, `${at}/closure`, { closedOn: '2026-07-01', reason: 'completed' });
  return { referralId, offerId: textAt(asRecord(made), 'id') };
}

/** A stored assessment of a referral; a baseline of 20 April 2026 unless changed. */
export async function givenAssessment(app: TestApp, referralId: string, changes: Body = {}): Promise<string> {
  const body = anAssessment(app.siteId, changes);
  return created(app, `/api/v1/referrals/${referralId}/assessments`, body);
}

/** A class of 5 May 2026 unless changed. */
export async function givenSession(app: TestApp, changes: Body = {}): Promise<string> {
  return created(app, '/api/v1/sessions', aSession(app.siteId, changes));
}

/** Posts a body that must be accepted, as somebody; gives the id of what it made. */
export async function created(
  app: TestApp,
  path: string,
  body: Body,
  who: TestRole | 'other-team' = 'lead',
): Promise<string> {
  const response = await app.as(who).post(path, body);
  if (response.status !== 201) throw new Error(`POST ${path}: ${response.status} ${response.text}`);
  return textAt(asRecord(response.body), 'id');
}
