import { expect, it } from 'vitest';
import { AssessmentShown } from '../../../src/http/assessments/assessment-schema.js';
import { aPatient, aReferralBody, anAssessment } from '../../support/entries.js';
import { startApp } from '../../support/start-app.js';

it('the answer to a recorded assessment is what its schema says', async () => {
  const service = await startApp();
  const patient = await service.as('admin').post('/api/v1/patients', aPatient());
  const body = aReferralBody((patient.body as { id: string }).id, service.siteId);
  const referral = await service.as('admin').post('/api/v1/referrals', body);
  const path = `/api/v1/referrals/${(referral.body as { id: string }).id}/assessments`;
  const answer = await service.as('clinician').post(path, anAssessment(service.siteId));
  expect(answer.status).toBe(201);
  expect(answer.headers['content-type']).toBe('application/json; charset=utf-8');
  expect(() => AssessmentShown.strict().parse(answer.body)).not.toThrow();
  await service.close();
});
