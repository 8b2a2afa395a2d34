import type { Response } from 'supertest';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { PatientDetails } from '../../../src/domain/patient/patient.js';
import { verifyAuditTrail } from '../../../src/storage/audit/verify-trail.js';
import { commitImport } from '../../../src/usecases/imports/commit-import.js';
import { registerPatient } from '../../../src/usecases/patients/register-patient.js';
import { handedIn } from '../../support/import-sheets.js';
import { largeSheet, lastNhsNumber } from '../../support/large-sheet.js';
import { aPatient } from '../../support/entries.js';
import { asRecord, expectProblem, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const REFERRALS = 200;
const PERSON: Omit<PatientDetails, 'nhsNumber'> = {
  nhsNumberMissingReason: null,
  familyName: 'Sandwort',
  givenName: 'Mavis',
  bornOn: plainDate('1954-03-09'),
  sexAtBirth: 'not-known',
  gender: 'not-known',
  ethnicCategory: 'Z',
  deprivationQuintile: null,
  deprivationIndexYear: null,
  smokingStatus: 'not-known',
  interpreterNeed: 'not-known',
  livesAlone: 'not-known',
  homeOxygen: 'not-known',
  gpPracticeCode: null,
};
const REPORT = '/api/v1/reports/quarterly?period=2026-27-Q1';

let service: TestApp;
beforeEach(async () => {
  service = await startApp();
});
afterEach(() => service.close());

const commit = async (path: string, rows: 'good-rows' | 'all-or-none'): Promise<Response> =>
  service.as('lead').post(`${path}/commit`, { rows, confirmsUnusual: false });
/** What an import writes of itself, and what is read, is left out. */
const countRecord = async () => ({
  ...(await service.countRows()),
  ...{ import: 0, import_part: 0, audit_event: 0, request_key: 0 },
});
const partCount = async () => (await service.countRows())['import_part'];
const unnumbered = () => aPatient({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' });

describe('a large sheet on its way into the record', () => {
  it('lets others write before it is whole, and shows nobody a figure of half of it', async () => {
    const { path } = await handedIn(service, 'large.csv', largeSheet(REFERRALS));
    let isIn = false;
    const committed = commit(path, 'all-or-none').then((response) => {
      isIn = true;
      return response;
    });
    while ((await partCount()) === 0) await new Promise((resolve) => setImmediate(resolve));
    const [written, counted, page] = await Promise.all([
      service.as('clinician').post('/api/v1/patients', unnumbered()),
      service.as('lead').get(REPORT),
      service.as('lead').post(`${path}/discard`, { reason: 'Wrong file' }),
    ]);
    expect(isIn).toBe(false);
    expect(written.status, written.text).toBe(201);
    expectProblem(counted, { status: 503, type: 'import-underway' });
    expect(counted.headers['retry-after']).toBe('10');
    expectProblem(page, { status: 503, type: 'import-underway' });
    // Another team counts meanwhile.
    expect((await service.as('other-team').get(REPORT)).status).toBe(200);
    const response = await committed;
    expect(response.status, response.text).toBe(200);
    expect(asRecord(response.body)['counts']).toMatchObject({ new: REFERRALS, refused: 0 });
    expect((await service.as('lead').get(REPORT)).status).toBe(200);
    expect((await service.countRows())['referral']).toBe(REFERRALS);
    expect(await verifyAuditTrail(service.record.context.reader)).toMatchObject({ kind: 'intact' });
    const undone = await service.as('lead').post(`${path}/undo`, { reason: 'Wrong file' });
    expect(undone.status, undone.text).toBe(200);
    expect(await service.countRows()).toMatchObject({ referral: 0, patient: 1 });
  });

  it('is taken out again as a whole where all rows or none were asked for and one is refused at last', async () => {
    const { id, path, counts } = await handedIn(service, 'large.csv', largeSheet(REFERRALS));
    expect(counts).toMatchObject({ new: REFERRALS, refused: 0 });
    const before = await countRecord();
    // Once a part is in, somebody registers the person of the last row with another date of birth.
    const registering: Promise<unknown>[] = [];
    const { context } = service.record;
    const [account] = await context.db
      .selectFrom('account')
      .select('id')
      .where('role', '=', 'lead')
      .execute();
    const lead = { accountId: account?.id ?? '', role: 'lead', teamId: service.teamId } as const;
    const refusal = await commitImport(context, lead, id, {
      ...{ rows: 'all-or-none', confirmsUnusual: false, basedOn: [1] },
      progress: () => {
        if (registering.length > 0) return;
        const nhsNumber = lastNhsNumber(REFERRALS);
        registering.push(registerPatient(context, lead, { ...PERSON, nhsNumber }));
      },
    });
    expect(await Promise.all(registering)).toMatchObject([{ kind: 'done' }]);
    expect(refusal).toEqual({ kind: 'refused', refusal: { code: 'rows-refused', refusedRows: 1 } });
    expect(await countRecord()).toEqual({ ...before, patient: 1 });
    expect(await partCount()).toBe(0);
    const events = itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=5'));
    expect(events).toContainEqual(
      expect.objectContaining({
        action: 'import-taken-back',
        details: { coursesTakenOut: REFERRALS - 1, coursesKept: 0 },
      }),
    );
    // The good rows come in as before, and the report is open.
    expect(asRecord((await commit(path, 'good-rows')).body)['counts']).toMatchObject({
      ...{ new: REFERRALS - 1, refused: 1 },
    });
    expect((await service.as('lead').get(REPORT)).status).toBe(200);
    expect(await verifyAuditTrail(service.record.context.reader)).toMatchObject({ kind: 'intact' });
  });

  it('leaves what closes a referral that was there before to its last transaction', async () => {
    const sheet = largeSheet(REFERRALS);
    const first = await handedIn(service, 'large.csv', sheet);
    await commit(first.path, 'all-or-none');
    const [headings = '', ...rows] = sheet.split('\n');
    const closing = [`${headings},Closed,Outcome`, ...rows.map((row) => `${row},31/07/2026,declined`)];
    const second = await handedIn(service, 'closing.csv', closing.join('\n'));
    expect(second.counts).toMatchObject({ added: REFERRALS });
    const response = await commit(second.path, 'all-or-none');
    expect(asRecord(response.body)['counts']).toMatchObject({ added: REFERRALS });
    const { db } = service.record.context;
    const closed = await db.selectFrom('referral').select('id').where('closed_on', 'is not', null).execute();
    expect(closed).toHaveLength(REFERRALS);
  });
});
