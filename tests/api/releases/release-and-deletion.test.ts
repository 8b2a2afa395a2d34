import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { verifyReleases } from '../../../src/usecases/releases/verify-releases.js';
import { movingClock } from '../../support/moving-clock.js';
import { aSmallQuarter, released } from '../../support/release-service.js';
import { itemsOf, textAt } from '../../support/response.js';
import { created } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** Those whose number the release hides. */
const FROM_A_WARD = 3;
const FORMS = ['json', 'csv', 'xlsx', 'pdf', 'fhir'] as const;

let service: TestApp;
const clock = movingClock('2026-06-30');
beforeAll(async () => {
  service = await startApp(clock);
  const referralIds = await aSmallQuarter(service);
  for (const id of referralIds.slice(-FROM_A_WARD)) {
    const closure = { closedOn: '2026-06-20', reason: 'declined' };
    await created(service, `/api/v1/referrals/${id}/closure`, closure, 'clinician');
  }
  clock.moveTo('2026-08-01');
  await released(service);
});
afterAll(() => service.close());

/** SHA-256 of what the commissioner is sent, by form. */
async function digests(): Promise<Readonly<Record<string, string>>> {
  const all: Record<string, string> = {};
  for (const form of FORMS) {
    const response = await service
      .as('commissioner')
      .get(`/api/v1/releases/1.${form}`)
      .buffer(true)
      .parse((incoming, callback) => {
        const chunks: Buffer[] = [];
        incoming.on('data', (chunk: Buffer) => chunks.push(chunk));
        incoming.on('end', () => callback(null, Buffer.concat(chunks)));
      });
    expect(response.status, form).toBe(200);
    all[form] = createHash('sha256')
      .update(response.body as Buffer)
      .digest('hex');
  }
  return all;
}

it('outlives those it counts: when their records are deleted its bytes stay, and it is verified as before', async () => {
  const before = await digests();
  clock.moveTo('2036-01-01');
  const due = itemsOf(await service.as('lead').get('/api/v1/retention/due?limit=100'));
  expect(due).toHaveLength(FROM_A_WARD);
  for (const person of due) {
    const path = `/api/v1/patients/${textAt(person, 'patientId')}/deletion`;
    const deletion = { reason: 'Past its date' };
    const response = await service.as('lead').put(path, deletion, `"${String(person['version'])}"`);
    expect(response.status).toBeLessThan(300);
  }
  expect(itemsOf(await service.as('lead').get('/api/v1/retention/due'))).toEqual([]);
  expect(await digests()).toEqual(before);
  expect(await verifyReleases(service.record.context)).toEqual([{ number: 1, faults: [] }]);
});
