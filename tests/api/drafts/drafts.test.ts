import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { recordAssessment } from '../../../src/usecases/assessments/record-assessment.js';
import { NewAssessment } from '../../../src/http/assessments/assessment-schema.js';
import { anAssessment } from '../../support/entries.js';
import { asRecord, expectProblem, itemsOf } from '../../support/response.js';
import { givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

let app: TestApp;
let referralId: string;
beforeAll(async () => {
  app = await startApp();
});
beforeEach(async () => {
  referralId = await givenReferral(app);
});
afterAll(() => app.close());

const pathOf = (timepoint: string) => `/api/v1/referrals/${referralId}/drafts/${timepoint}`;
const read = (who: TestRole = 'clinician', timepoint = 'baseline') => app.as(who).get(pathOf(timepoint));
const save = (fields: object, version: number, who: TestRole = 'clinician') =>
  app.as(who).put(pathOf('baseline'), { fields }, `"${version}"`);

describe('the draft of an assessment', () => {
  it('is empty and of version 0 before anything was saved', async () => {
    const response = await read();
    expect(response.headers['etag']).toBe('"0"');
    expect(response.body).toEqual({
      referralId,
      timepoint: 'baseline',
      version: 0,
      state: 'none',
      savedAt: null,
      savedBy: null,
      fields: {},
    });
  });

  it('is kept as it was typed, half typed and blank fields too, and found by a colleague on another device', async () => {
    const fields = {
      heightCm: ['16'],
      notes: ['  walks slowly,\n'],
      reasons: ['cold', 'tired'],
      weightKg: [''],
    };
    expect((await save(fields, 0)).status).toBe(200);
    const found = await read('lead');
    expect(found.headers['etag']).toBe('"1"');
    expect(found.body).toMatchObject({
      version: 1,
      state: 'open',
      fields,
      savedBy: { name: 'Test clinician' },
    });
    expect((await read('lead', 'discharge')).body).toMatchObject({ version: 0, fields: {} });
  });

  it('replaces what was saved before', async () => {
    await save({ heightCm: ['16'], weightKg: ['70'] }, 0);
    await save({ heightCm: ['168'] }, 1);
    expect((await read()).body).toMatchObject({ version: 2, fields: { heightCm: ['168'] } });
  });

  it('is not overwritten by the second of two people, who is told whose it is now', async () => {
    await save({ heightCm: ['168'] }, 0);
    const refused = await save({ heightCm: ['186'] }, 0, 'lead');
    expectProblem(refused, { status: 412, type: 'changed-meanwhile' });
    expect(asRecord(refused.body)['detail']).toBe(
      'Nothing was stored. Test clinician saved this draft on another page or device: read it again.',
    );
    expect((await read()).body).toMatchObject({ version: 1, fields: { heightCm: ['168'] } });
  });

  it('is thrown away for good, and its number goes on so that an old page is found out', async () => {
    await save({ heightCm: ['168'] }, 0);
    const discard = (version: number) => app.as('lead').post(`${pathOf('baseline')}/discard`, { version });
    expectProblem(await discard(0), { status: 412, type: 'changed-meanwhile' });
    expect((await discard(1)).body).toMatchObject({ version: 2, state: 'discarded', fields: {} });
    const late = await save({ heightCm: ['168'] }, 1);
    expect(asRecord(late.body)['detail']).toMatch(/Test lead has discarded the draft/);
    expect((await save({ heightCm: ['170'] }, 2)).body).toMatchObject({ version: 3, state: 'open' });
  });

  it('ends when the assessment is recorded from it', async () => {
    await save({ heightCm: ['168'] }, 0);
    const outcome = await record(1);
    expect(outcome.kind).toBe('done');
    expect((await read()).body).toMatchObject({ version: 2, state: 'recorded', fields: {} });
  });

  it('keeps an assessment from being recorded while a colleague has gone on with it', async () => {
    await save({ heightCm: ['168'] }, 0);
    await save({ heightCm: ['169'] }, 1, 'lead');
    const before = await app.countRows();
    expect(await record(1)).toMatchObject({ kind: 'refused', refusal: { code: 'stale-draft', version: 2 } });
    expect(await app.countRows()).toEqual(before);
    expect((await read()).body).toMatchObject({ version: 2, fields: { heightCm: ['169'] } });
  });

  it('is listed with its referral while it is open', async () => {
    const list = async () => itemsOf(await app.as('lead').get(`/api/v1/referrals/${referralId}/drafts`));
    expect(await list()).toEqual([]);
    await save({ heightCm: ['168'] }, 0);
    expect(await list()).toMatchObject([{ timepoint: 'baseline', version: 1 }]);
    await app.as('lead').post(`${pathOf('baseline')}/discard`, { version: 1 });
    expect(await list()).toEqual([]);
  });

  it('is told to the trail without anything that was typed', async () => {
    await save({ notes: ['rather breathless'] }, 0);
    const { rows } = await eventsOf();
    expect(rows.map(({ action, details }) => [action, details])).toEqual([
      ['referral-registered', expect.any(String)],
      ['draft-saved', '{"timepoint":"baseline","version":1}'],
    ]);
  });

  it.each([
    ['a field with a name that is none', { fields: { 'a b': ['1'] } }, 400],
    ['a value that is no list', { fields: { heightCm: '168' } }, 400],
    ['a control character', { fields: { notes: ['a\u0000b'] } }, 400],
    [
      'more than it can hold',
      { fields: Object.fromEntries(Array.from({ length: 20 }, (_, i) => [`n${i}`, ['x'.repeat(4000)]])) },
      422,
    ],
  ])('refuses %s, and keeps nothing', async (_name, body, status) => {
    const response = await app.as('clinician').put(pathOf('baseline'), body, '"0"');
    expect(response.status).toBe(status);
    expect((await read()).body).toMatchObject({ version: 0 });
  });

  it('is nobody’s of another team, and of no other timepoint', async () => {
    await save({ heightCm: ['168'] }, 0);
    expectProblem(await app.as('other-team').get(pathOf('baseline')), { status: 404, type: 'not-found' });
    expectProblem(await read('lead', 'midway'), { status: 400, type: 'malformed-request' });
  });
});

async function record(draftVersion: number) {
  const { context, connection } = app.record;
  const account = await connection.db
    .selectFrom('account')
    .select('id')
    .where('display_name', '=', 'Test clinician')
    .executeTakeFirstOrThrow();
  const actor = { accountId: account.id, role: 'clinician', teamId: app.teamId } as const;
  return recordAssessment(
    context,
    actor,
    referralId,
    NewAssessment.parse(anAssessment(app.siteId)),
    draftVersion,
  );
}

async function eventsOf() {
  const rows = await app.record.connection.db
    .selectFrom('audit_event')
    .select(['action', 'details'])
    .where('referral_id', '=', referralId)
    .orderBy('sequence')
    .execute();
  return { rows };
}
