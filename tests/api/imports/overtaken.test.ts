import { afterEach, describe, expect, it } from 'vitest';
import { verifyAuditTrail } from '../../../src/storage/audit/verify-trail.js';
import { handedIn, shown } from '../../support/import-sheets.js';
import type { Shown } from '../../support/import-sheets.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { asRecord, itemsOf, textAt } from '../../support/response.js';
import { givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const HEADINGS =
  'NHS number,Surname,Forename,DOB,Site,Received,Diagnosis,Triage date,Baseline assessment,Baseline CAT,Baseline 6MWT';
const WHIMBREL =
  '9990001006,Whimbrel,Samphire,31/03/1950,Dune Hall,13/04/2026,COPD,20/04/2026,27/04/2026,22,280';
const PLOVER = '9990001022,Plover,Sandy,13/05/1955,Dune Hall,20/04/2026,COPD,,,,';
const sheet = (...rows: readonly string[]): string => [HEADINGS, ...rows].join('\n');

let service: TestApp;
let clock: MovingClock;
const start = async (): Promise<void> => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
};
afterEach(() => service.close());

const commit = async (path: string, body: object = {}): Promise<Shown> => {
  const response = await service
    .as('lead')
    .post(`${path}/commit`, { rows: 'good-rows', confirmsUnusual: false, ...body });
  expect(response.status, response.text).toBe(200);
  return shown(response);
};
const register = async (bornOn: string, nhsNumber: string | null): Promise<string> => {
  const response = await service.as('clinician').post('/api/v1/patients', {
    nhsNumber,
    ...(nhsNumber === null ? { nhsNumberMissingReason: 'not-yet-traced' } : {}),
    ...{ familyName: 'Plover', givenName: 'Sandy', bornOn, sexAtBirth: 'not-known' },
  });
  expect(response.status, response.text).toBe(201);
  return textAt(asRecord(response.body), 'id');
};
const expectSoundTrail = async (): Promise<void> => {
  expect(await verifyAuditTrail(service.record.context.reader)).toMatchObject({ kind: 'intact' });
};

describe('what was judged and is brought in later', () => {
  it('has the time at which it was brought in, in the record as in the trail', async () => {
    await start();
    const { path } = await handedIn(service, 'a.csv', sheet(WHIMBREL));
    clock.moveBy(600);
    await commit(path);
    const [referral] = itemsOf(await service.as('lead').get('/api/v1/referrals'));
    const id = String(referral?.['id']);
    const [assessment] = itemsOf(await service.as('lead').get(`/api/v1/referrals/${id}/assessments`));
    expect(assessment).toMatchObject({ recordedAt: '2026-11-25T10:10:00.000Z' });
    const events = itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=50'));
    const written = events.filter(({ action }) =>
      ['patient-registered', 'referral-registered', 'referral-triaged', 'assessment-recorded'].includes(
        String(action),
      ),
    );
    expect(written).toHaveLength(4);
    for (const event of written) expect(event).toMatchObject({ occurredAt: '2026-11-25T10:10:00.000Z' });
    const versions = await service.record.context.reader
      .selectFrom('referral_version')
      .select('superseded_at')
      .execute();
    expect(versions).toEqual([{ superseded_at: '2026-11-25T10:10:00.000Z' }]);
    await expectSoundTrail();
  });

  it('is judged anew for whom somebody has registered meanwhile, and for nobody else', async () => {
    await start();
    const { path, counts } = await handedIn(service, 'a.csv', sheet(WHIMBREL, PLOVER));
    expect(counts).toMatchObject({ new: 2, refused: 0 });
    await register('1956-06-14', '9990001022');
    const brought = await commit(path);
    expect(brought.counts).toMatchObject({ new: 1, refused: 1 });
    expect(brought.rows).toMatchObject([{ number: 3, faults: [{ heading: 'DOB' }] }]);
    expect(itemsOf(await service.as('lead').get('/api/v1/patients'))).toHaveLength(2);
    await expectSoundTrail();
  });

  it('is known by name and date of birth where there is no NHS number', async () => {
    await start();
    const unnumbered = PLOVER.replace('9990001022', '');
    const { path } = await handedIn(service, 'a.csv', sheet(unnumbered));
    const id = await register('1955-05-13', null);
    expect((await commit(path)).counts).toMatchObject({ new: 1 });
    expect(itemsOf(await service.as('lead').get('/api/v1/patients'))).toHaveLength(1);
    expect(itemsOf(await service.as('lead').get('/api/v1/referrals'))).toMatchObject([{ patientId: id }]);
  });

  it('takes nothing twice where the same sheet was handed in twice before', async () => {
    await start();
    const first = await handedIn(service, 'a.csv', sheet(WHIMBREL, PLOVER));
    const second = await handedIn(service, 'b.csv', sheet(WHIMBREL, PLOVER));
    expect(second.counts).toMatchObject({ new: 2 });
    await commit(first.path);
    const before = await service.countRows();
    expect((await commit(second.path)).counts).toMatchObject({ new: 0, already: 2 });
    const after = await service.countRows();
    expect({ ...after, audit_event: 0 }).toEqual({ ...before, audit_event: 0 });
  });

  it('takes no counts of sessions beside a register that was written meanwhile, of those who stand on it', async () => {
    await start();
    const first = await handedIn(service, 'a.csv', sheet(WHIMBREL, PLOVER));
    await commit(first.path);
    const referrals = itemsOf(await service.as('lead').get('/api/v1/referrals'));
    const onRegister = referrals.find(({ receivedOn }) => receivedOn === '2026-04-20');
    const held = await givenSession(service, { heldOn: '2026-05-19' });
    const counted = [WHIMBREL, PLOVER].map((row) => `${row},19/05/2026,9,30/06/2026`);
    const content = [`${HEADINGS},Date started,Sessions attended,Last session`, ...counted].join('\n');
    const { path, counts } = await handedIn(service, 'b.csv', content);
    expect(counts).toMatchObject({ added: 2, refused: 0 });
    const attendances = [{ referralId: String(onRegister?.['id']), outcome: 'attended' }];
    const register = `/api/v1/sessions/${held}/attendances`;
    const marked = await service.as('admin').put(register, { attendances });
    expect(marked.status, marked.text).toBe(200);
    const brought = await commit(path);
    expect(brought.counts).toMatchObject({ added: 1, refused: 1 });
    expect(brought.rows).toMatchObject([
      { number: 3, faults: [{ message: expect.stringContaining('registers of sessions') as string }] },
    ]);
    await expectSoundTrail();
  });

  it('is judged by the day on which it is brought in', async () => {
    await start();
    // Nobody is assessed after today, and the next day it is not after today any more.
    const tomorrow = WHIMBREL.replace('27/04/2026', '26/11/2026');
    const { path, counts } = await handedIn(service, 'a.csv', sheet(tomorrow));
    expect(counts).toMatchObject({ refused: 1 });
    clock.moveTo('2026-11-26');
    expect((await commit(path)).counts).toMatchObject({ new: 1, refused: 0 });
  });

  it('takes unusual values that were confirmed, and what the same person has besides', async () => {
    await start();
    // 5 m in six minutes is asked about; the second referral of the person was tried without the first.
    const rows = sheet(
      WHIMBREL.replace(',280', ',5').concat(',30/06/2026,completed'),
      WHIMBREL.replace('13/04/2026,COPD,20/04/2026,27/04/2026,22,280', '13/07/2026,COPD,,,,').concat(',,'),
    ).replace(HEADINGS, `${HEADINGS},Closed,Outcome`);
    const { path, counts } = await handedIn(service, 'a.csv', rows);
    expect(counts).toMatchObject({ new: 1, unusual: 1 });
    expect((await commit(path, { confirmsUnusual: true })).counts).toMatchObject({ new: 2, unusual: 0 });
    expect(itemsOf(await service.as('lead').get('/api/v1/patients'))).toHaveLength(1);
    await expectSoundTrail();
  });
});
