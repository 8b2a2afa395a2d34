import type { World } from './bad-input.js';
import { anAssessment, aPatient, aReferralBody, aSession } from './entries.js';
import type { Body } from './entries.js';
import { aSentReferral } from './fhir-referral.js';

const NHS = 'https://fhir.nhs.uk/Id/nhs-number';

/** An operation that takes a body, with one that it would accept. */
export interface BodyOperation {
  readonly operationId: string;
  readonly method: 'post' | 'put' | 'patch';
  readonly path: (world: World) => string;
  readonly body: (world: World) => Body;
}

/** Marking what there is as entered in error, and restoring it. */
const MARKS: readonly BodyOperation[] = [
  {
    operationId: 'markReferralInError',
    method: 'post',
    path: ({ closed }) => `/api/v1/referrals/${closed.referralId}/entered-in-error`,
    body: () => ({ reason: 'Another person' }),
  },
  {
    operationId: 'restoreReferral',
    method: 'post',
    path: ({ closed }) => `/api/v1/referrals/${closed.referralId}/restoration`,
    body: () => ({ reason: 'Right after all' }),
  },
  {
    operationId: 'markOfferInError',
    method: 'post',
    path: ({ closed }) => `/api/v1/referrals/${closed.referralId}/offers/${closed.offerId}/entered-in-error`,
    body: () => ({ reason: 'Another person' }),
  },
  {
    operationId: 'restoreOffer',
    method: 'post',
    path: ({ closed }) => `/api/v1/referrals/${closed.referralId}/offers/${closed.offerId}/restoration`,
    body: () => ({ reason: 'Right after all' }),
  },
  {
    operationId: 'markSessionInError',
    method: 'post',
    path: ({ sessionId }) => `/api/v1/sessions/${sessionId}/entered-in-error`,
    body: () => ({ reason: 'Did not take place' }),
  },
  {
    operationId: 'restoreSession',
    method: 'post',
    path: ({ sessionId }) => `/api/v1/sessions/${sessionId}/restoration`,
    body: () => ({ reason: 'Did take place' }),
  },
  {
    operationId: 'markAssessmentInError',
    method: 'post',
    path: ({ assessmentId }) => `/api/v1/assessments/${assessmentId}/entered-in-error`,
    body: () => ({ reason: 'Another person' }),
  },
  {
    operationId: 'restoreAssessment',
    method: 'post',
    path: ({ assessmentId }) => `/api/v1/assessments/${assessmentId}/restoration`,
    body: () => ({ reason: 'Right after all' }),
  },
];

/** Merging a record without referrals into that of the open one, and undoing a merge once more. */
const MERGES: readonly BodyOperation[] = [
  {
    operationId: 'mergePatients',
    method: 'post',
    path: ({ patientId }) => `/api/v1/patients/${patientId}/merge`,
    body: ({ spareId }) => ({ duplicateId: spareId, duplicateVersion: 1, reason: 'One person' }),
  },
  {
    operationId: 'undoMerge',
    method: 'post',
    path: ({ twice }) => `/api/v1/patients/${twice.survivorId}/merges/${twice.mergeId}/undo`,
    body: () => ({ duplicateVersion: 3, reason: 'Two people' }),
  },
];

/** Every operation that takes a body. */
export const BODY_OPERATIONS: readonly BodyOperation[] = [
  {
    operationId: 'registerPatient',
    method: 'post',
    path: () => '/api/v1/patients',
    body: () => aPatient(),
  },
  {
    operationId: 'searchPatients',
    method: 'post',
    path: () => '/api/v1/patients/search',
    body: () => ({ familyName: 'Sandwort' }),
  },
  {
    operationId: 'correctPatient',
    method: 'patch',
    path: ({ patientId }) => `/api/v1/patients/${patientId}`,
    body: () => ({ reason: 'Misheard', changes: { givenName: 'Maeve' } }),
  },
  {
    operationId: 'deletePatientRecord',
    method: 'put',
    path: ({ patientId }) => `/api/v1/patients/${patientId}/deletion`,
    // The record is not past its retention date: the body is well formed, and the answer is 409.
    body: () => ({ reason: 'Past its retention date' }),
  },
  {
    operationId: 'registerReferral',
    method: 'post',
    path: () => '/api/v1/referrals',
    body: ({ app, patientId }) => aReferralBody(patientId, app.siteId),
  },
  {
    operationId: 'takeInReferralFhir',
    method: 'post',
    path: () => '/api/v1/referrals/fhir',
    body: ({ app }) =>
      aSentReferral(app.siteId, { patient: { identifier: [{ system: NHS, value: '9990000026' }] } }),
  },
  {
    operationId: 'correctReferral',
    method: 'patch',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}`,
    body: () => ({ reason: 'Misread', changes: { diagnosis: 'asthma' } }),
  },
  {
    operationId: 'triageReferral',
    method: 'post',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}/triage`,
    body: () => ({ decision: 'accepted', decidedOn: '2026-04-03' }),
  },
  {
    operationId: 'recordOffer',
    method: 'post',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}/offers`,
    body: () => ({ kind: 'assessment', offeredOn: '2026-04-03', response: 'accepted' }),
  },
  {
    operationId: 'closeReferral',
    method: 'post',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}/closure`,
    body: () => ({ closedOn: '2026-07-01', reason: 'completed' }),
  },
  {
    operationId: 'correctTriage',
    method: 'put',
    path: ({ closed }) => `/api/v1/referrals/${closed.referralId}/triage`,
    body: () => ({ reason: 'Wrong day', triage: { decision: 'accepted', decidedOn: '2026-04-04' } }),
  },
  {
    operationId: 'correctOffer',
    method: 'put',
    path: ({ closed }) => `/api/v1/referrals/${closed.referralId}/offers/${closed.offerId}`,
    body: () => ({
      reason: 'Heard later',
      offer: { kind: 'assessment', offeredOn: '2026-04-07', response: 'declined' },
    }),
  },
  {
    operationId: 'correctClosure',
    method: 'put',
    path: ({ closed }) => `/api/v1/referrals/${closed.referralId}/closure`,
    body: () => ({ reason: 'Wrong reason', closure: { closedOn: '2026-07-01', reason: 'transport' } }),
  },
  ...MARKS,
  ...MERGES,
  {
    operationId: 'recordAssessment',
    method: 'post',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}/assessments`,
    body: ({ app }) => anAssessment(app.siteId),
  },
  {
    operationId: 'correctAssessment',
    method: 'put',
    path: ({ assessmentId }) => `/api/v1/assessments/${assessmentId}`,
    body: ({ app }) => ({ reason: 'Misread', ...anAssessment(app.siteId) }),
  },
  {
    operationId: 'saveDraft',
    method: 'put',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}/drafts/baseline`,
    body: () => ({ fields: { heightCm: ['168'] } }),
  },
  {
    operationId: 'discardDraft',
    method: 'post',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}/drafts/follow-up/discard`,
    // Nothing was saved of it: there is nothing to throw away, and that is done.
    body: () => ({ version: 0 }),
  },
  {
    operationId: 'holdSession',
    method: 'post',
    path: () => '/api/v1/sessions',
    body: ({ app }) => aSession(app.siteId),
  },
  {
    operationId: 'correctSession',
    method: 'patch',
    path: ({ sessionId }) => `/api/v1/sessions/${sessionId}`,
    body: () => ({ reason: 'Was at home', changes: { mode: 'home' } }),
  },
  {
    operationId: 'recordAttendances',
    method: 'put',
    path: ({ sessionId }) => `/api/v1/sessions/${sessionId}/attendances`,
    body: ({ referralId }) => ({ attendances: [{ referralId, outcome: 'attended' }] }),
  },
  {
    operationId: 'acknowledgeCaution',
    method: 'post',
    path: ({ assessmentId }) => `/api/v1/assessments/${assessmentId}/acknowledgements`,
    // There is no such caution: the body is well formed, and the answer is 422.
    body: () => ({ cautionId: 'none-of-them', actionTaken: 'Rang the practice.' }),
  },
  {
    operationId: 'recordDiaryWeek',
    method: 'post',
    path: ({ referralId }) => `/api/v1/referrals/${referralId}/diary-weeks`,
    body: () => ({ weekStartingOn: '2026-05-04', sessionsReported: 3 }),
  },
  {
    operationId: 'changeSettings',
    method: 'put',
    path: () => '/api/v1/settings',
    body: () => ({
      reason: 'Agreed by the team',
      completionReading: 'assessment',
      plannedSessions: 12,
      plannedWeeks: 6,
      equations: {},
      thresholds: {},
      thresholdsByDiagnosis: {},
      targets: {},
      restingLimits: 'ats-2002',
      desaturationDefinition: 'nadir-below-90',
      leadSecondFactor: 'optional',
      retentionYears: 8,
    }),
  },
  {
    operationId: 'inviteAccount',
    method: 'post',
    path: () => '/api/v1/accounts',
    body: () => ({ displayName: 'Campion Avocet', signInName: 'c.avocet', role: 'admin' }),
  },
  {
    operationId: 'changeAccount',
    method: 'patch',
    path: ({ accountId }) => `/api/v1/accounts/${accountId}`,
    body: () => ({ reason: 'Married', changes: { displayName: 'Samphire Godwit' } }),
  },
  {
    operationId: 'renewInvitation',
    method: 'post',
    path: ({ accountId }) => `/api/v1/accounts/${accountId}/invitations`,
    body: () => ({ signInName: null }),
  },
  {
    operationId: 'resetSecondFactor',
    method: 'post',
    path: ({ accountId }) => `/api/v1/accounts/${accountId}/second-factor-reset`,
    body: () => ({ reason: 'The telephone was lost' }),
  },
  {
    operationId: 'signOutAccount',
    method: 'post',
    path: ({ accountId }) => `/api/v1/accounts/${accountId}/sign-out`,
    body: () => ({ reason: 'A computer was stolen' }),
  },
  {
    operationId: 'createToken',
    method: 'post',
    path: () => '/api/v1/tokens',
    body: () => ({ name: 'spreadsheet', role: 'clinician', days: 30 }),
  },
  {
    operationId: 'revokeToken',
    method: 'post',
    path: ({ tokenId }) => `/api/v1/tokens/${tokenId}/revoke`,
    body: () => ({ reason: 'No longer used' }),
  },
  {
    operationId: 'takeImportFile',
    method: 'post',
    path: () => '/api/v1/imports',
    body: () => ({
      fileName: 'dunes.csv',
      contentBase64: 'U3VybmFtZSxET0IsUmVjZWl2ZWQKUGxvdmVyLDAxLzAyLzE5NTAsMTQvMDQvMjAyNgo=',
    }),
  },
  {
    operationId: 'chooseImportColumns',
    method: 'put',
    path: ({ importId }) => `/api/v1/imports/${importId}/columns`,
    body: () => ({ columns: { DOB: null }, inFeet: [], dateOrder: 'day-first', siteId: null }),
  },
  {
    operationId: 'commitImport',
    method: 'post',
    path: ({ importId }) => `/api/v1/imports/${importId}/commit`,
    // Columns are missing: the body is well formed, and the answer is 409.
    body: () => ({ rows: 'good-rows', confirmsUnusual: false }),
  },
  {
    operationId: 'undoImport',
    method: 'post',
    path: ({ importId }) => `/api/v1/imports/${importId}/undo`,
    // It was not brought in: the answer is 409.
    body: () => ({ reason: 'The wrong file' }),
  },
  {
    operationId: 'discardImport',
    method: 'post',
    path: ({ importId }) => `/api/v1/imports/${importId}/discard`,
    body: () => ({ reason: 'The wrong file' }),
  },
  {
    operationId: 'previewRelease',
    method: 'post',
    path: () => '/api/v1/releases/preview',
    body: ({ app }) => ({ commissionerId: app.commissionerId, period: '2026-27-Q2' }),
  },
  {
    operationId: 'makeRelease',
    method: 'post',
    path: () => '/api/v1/releases',
    body: ({ app }) => ({ commissionerId: app.commissionerId, period: '2026-27-Q2' }),
  },
  {
    operationId: 'withdrawRelease',
    method: 'post',
    path: ({ releaseNumber }) => `/api/v1/releases/${releaseNumber}/withdrawal`,
    body: () => ({ reason: 'Sent to the wrong recipient' }),
  },
  {
    operationId: 'calculatePrediction',
    method: 'post',
    path: () => '/api/v1/calculations/prediction',
    body: () => ({
      equationId: 'troosters-1999',
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 170,
      weightKg: 70,
    }),
  },
  {
    operationId: 'calculateScore',
    method: 'post',
    path: () => '/api/v1/calculations/score',
    body: () => ({ questionnaire: 'copd-assessment-test', items: [3, 3, 2, 4, 3, 2, 3, 2] }),
  },
  {
    operationId: 'calculateChange',
    method: 'post',
    path: () => '/api/v1/calculations/change',
    body: () => ({ measureId: 'cat-total', baseline: 22, discharge: 19 }),
  },
];

/** Those whose answer holds a secret: it is given once, and not again to whoever repeats the key. */
export const SECRET_ANSWERS: readonly string[] = ['inviteAccount', 'renewInvitation', 'createToken'];

/** Sends an operation with its body changed. */
export function sendChanged(world: World, operationId: string, changes: Body) {
  const operation = BODY_OPERATIONS.find((candidate) => candidate.operationId === operationId);
  if (operation === undefined)
    throw new Error(`There is no ${operationId} among the operations with a body.`);
  const body = { ...operation.body(world), ...changes };
  return world.app.as('lead')[operation.method](operation.path(world), body);
}
