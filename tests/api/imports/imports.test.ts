import { zipSync } from 'fflate';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { handedIn, handIn, shown } from '../../support/import-sheets.js';
import { asRecord, expectProblem, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let service: TestApp;
beforeEach(async () => {
  service = await startApp();
});
afterEach(() => service.close());

const lead = () => service.as('lead');
const HEADINGS = 'NHS number,Surname,Forename,DOB,Site,Received,Diagnosis,Start date,Attended,End date';
const WHIMBREL = '9990001006,Whimbrel,Samphire,31/03/1950,Dune Hall,13/04/2026,COPD,18/05/2026,10,26/06/2026';
const PLOVER = '9990001022,Plover,Sandy,13/05/1955,Dune Hall,20/04/2026,COPD,,,';
const WRONG = '9990001030,Turnstone,Shingle,14/06/1951,Pier Pavilion,22/04/2026,COPD,,,';
const sheet = (...rows: readonly string[]): string => [HEADINGS, ...rows].join('\n');
const commit = (path: string, body: object = {}) =>
  lead().post(`${path}/commit`, { rows: 'good-rows', confirmsUnusual: false, ...body });
/** Counts without what an import writes of itself. */
const countRecord = async () => ({
  ...(await service.countRows()),
  import: 0,
  import_part: 0,
  import_choices: 0,
  request_key: 0,
});

describe('bringing a sheet in', () => {
  it('takes all rows or none where it is asked so', async () => {
    const before = await countRecord();
    const { path } = await handedIn(service, 'a.csv', sheet(WHIMBREL, WRONG));
    const response = await commit(path, { rows: 'all-or-none' });
    expectProblem(response, { status: 409, type: 'rows-refused' });
    expect(await countRecord()).toEqual(before);
    expect((await commit(path)).status).toBe(200);
    expect((await service.countRows())['referral']).toBe(1);
    expectProblem(await commit(path), { status: 409, type: 'import-over' });
  });

  it('gives the refused rows back as a file of the same shape, to be mended and sent again', async () => {
    const { path } = await handedIn(service, 'a.csv', sheet(WHIMBREL, WRONG));
    await commit(path);
    const given = await lead().get(`${path}/refused-rows.csv`);
    expect(given.status).toBe(200);
    const lines = given.text.replace('\uFEFF', '').trim().split('\r\n');
    expect(lines[0]).toBe(`${HEADINGS},Row in the file,What to mend`);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/^9990001030,Turnstone,.*,3,/);
    const mended = given.text.replace('Pier Pavilion', 'Saltmarsh Centre');
    const second = await handedIn(service, 'mended.csv', mended);
    expect(second.counts).toMatchObject({ new: 1, refused: 0 });
    expect((await commit(second.path)).status).toBe(200);
    expect((await service.countRows())['referral']).toBe(2);
  });

  it('shows in the report of the quarter, and is gone from it when it is undone', async () => {
    const report = async () => {
      const shownReport = asRecord((await lead().get('/api/v1/reports/quarterly?period=2026-27-Q1')).body);
      return JSON.stringify({ ...shownReport, generatedAt: null });
    };
    const before = await report();
    const counts = await countRecord();
    const { path } = await handedIn(service, 'a.csv', sheet(WHIMBREL, PLOVER));
    await commit(path);
    expect(await report()).not.toBe(before);
    const undone = await lead().post(`${path}/undo`, { reason: 'Wrong file' });
    expect(undone.status, undone.text).toBe(200);
    expect(await report()).toBe(before);
    expect(await countRecord()).toEqual(counts);
  });

  it('cannot be undone once something was built on it', async () => {
    const { path } = await handedIn(service, 'a.csv', sheet(PLOVER));
    await commit(path);
    const [referral] = itemsOf(await lead().get('/api/v1/referrals'));
    await lead().post(`/api/v1/referrals/${String(referral?.['id'])}/triage`, {
      decision: 'accepted',
      decidedOn: '2026-04-21',
    });
    const before = await countRecord();
    expectProblem(await lead().post(`${path}/undo`, { reason: 'Wrong file' }), {
      status: 409,
      type: 'import-built-on',
    });
    expect(await countRecord()).toEqual(before);
  });

  it('adds what a later sheet knows, and never overwrites', async () => {
    const first = await handedIn(service, 'a.csv', sheet(PLOVER));
    await commit(first.path);
    const closed = `${HEADINGS},Closed,Outcome\n${PLOVER},31/07/2026,declined`;
    const second = await handedIn(service, 'b.csv', closed);
    expect(second.counts).toMatchObject({ added: 1 });
    await commit(second.path);
    const third = await handedIn(service, 'c.csv', closed.replace('declined', 'died'));
    expect(third.counts).toMatchObject({ refused: 1 });
    expect(JSON.stringify(third.rows)).toContain('The record has another closure.');
  });

  it("is told to the trail, and is the lead's alone", async () => {
    const { path } = await handedIn(service, 'a.csv', sheet(WHIMBREL));
    await commit(path);
    const actions = itemsOf(await lead().get('/api/v1/audit-events?limit=50')).map(
      (event) => event['action'],
    );
    expect(actions).toEqual(
      expect.arrayContaining([
        ...['import-begun', 'import-done', 'patient-registered', 'referral-registered'],
        'sessions-counted',
      ]),
    );
    for (const who of ['admin', 'clinician', 'commissioner'] as const) {
      expect((await service.as(who).get(path)).status).toBe(403);
    }
    expect((await service.as('other-team').get(path)).status).toBe(404);
  });
});

describe('the columns of a sheet', () => {
  const choices = (changes: object) => ({
    columns: {},
    inFeet: [],
    dateOrder: null,
    siteId: null,
    ...changes,
  });

  it('are asked about where they can mean two things, and remembered for the next file', async () => {
    const headings =
      'NHS number,Surname,Forename,DOB,Received,Diagnosis,Baseline assessment,Baseline MRC,Baseline 6MWT';
    const row = '9990001006,Whimbrel,Samphire,01/03/1950,03/04/2026,COPD,04/05/2026,3,850';
    const asked = await handedIn(service, 'a.csv', `${headings}\n${row}`);
    expect(asked.counts).toBeNull();
    expect(asked.questions.map(({ kind }) => kind)).toEqual([
      'dyspnoea-scale',
      'site',
      'date-order',
      'date-order',
      'date-order',
    ]);
    expectProblem(await commit(asked.path), { status: 409, type: 'questions-open' });
    const said = choices({
      columns: { 'Baseline MRC': 'baseline.score.mrc-dyspnoea' },
      inFeet: ['Baseline 6MWT'],
      dateOrder: 'day-first',
      siteId: service.siteId,
    });
    const mapped = shown(await lead().put(`${asked.path}/columns`, said));
    expect(mapped.questions).toEqual([]);
    expect(mapped.counts).toMatchObject({ new: 1 });
    await commit(asked.path);
    const [referral] = itemsOf(await lead().get('/api/v1/referrals'));
    expect(referral).toMatchObject({ receivedOn: '2026-04-03' });
    const [assessment] = itemsOf(
      await lead().get(`/api/v1/referrals/${String(referral?.['id'])}/assessments`),
    );
    // 850 ft x 0.3048 m/ft = 259.08 m
    expect(JSON.stringify(assessment)).toContain('"distanceM":259');
    const next = await handedIn(
      service,
      'b.csv',
      `${headings}\n${row.replace('9990001006,Whimbrel', '9990001022,Plover')}`,
    );
    expect(next.questions).toEqual([]);
    expect(next.counts).toMatchObject({ new: 1 });
  });

  it('with the day first in some dates and the month first in others are refused', async () => {
    const rows = sheet(WHIMBREL, PLOVER.replace('20/04/2026', '04/20/2026'));
    const asked = await handedIn(service, 'a.csv', rows);
    expect(asked.questions).toMatchObject([{ kind: 'mixed-dates', heading: 'Received' }]);
  });
});

describe('a file that is no sheet of a team', () => {
  const png = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]);
  const locked = Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  const bomb = zipSync({ 'xl/workbook.xml': new Uint8Array(140 * 1024 * 1024) });
  const wide = Array.from({ length: 500 }, (_, index) => `c${index}`).join(',');
  const cases: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ['a renamed picture', png, /a picture, not a table/],
    ['a locked workbook', locked, /locked by a password/],
    ['a zip bomb', bomb, /unpacks to more/],
    ['another zip', zipSync({ 'readme.txt': Buffer.from('dunes') }), /no workbook/],
    ['500 columns', `${wide}\n${wide}`, /more than 300 columns/],
    [
      'a million blank rows',
      `${HEADINGS.replaceAll(/[A-Za-z ]/g, '')}\n`.repeat(1_000_000),
      /nothing in the table/,
    ],
    ['nothing', '', /empty/],
    ['another alphabet', 'Имя,Фамилия,Диагноз\nПесок,Дюна,1', /No column is taken for/],
    ['two headings of one name', 'Surname,Surname,DOB\na,b,01/02/1950', /more than one column: Surname/],
    ['bytes', Buffer.from([0, 1, 2, 3, 0]), /neither text nor a workbook/],
    [
      'an open quotation mark',
      `NHS number,Surname\n"999${'x'.repeat(40)}`,
      /quotation mark|No column is taken for/,
    ],
  ];
  it.each(cases)('%s is refused in words, and nothing is written', async (_name, content, message) => {
    const before = await countRecord();
    const response = await handIn(service, 'file.csv', content);
    expect([201, 422], response.text).toContain(response.status);
    expect(response.text).toMatch(message);
    expect(await countRecord()).toEqual(before);
  });

  it('never breaks the service, whatever is in it', async () => {
    const before = await countRecord();
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.uint8Array({ maxLength: 400 }), fc.string({ maxLength: 400 })),
        async (content) => {
          const response = await handIn(service, 'noise', content);
          expect([201, 400, 422]).toContain(response.status);
          expect(response.text).not.toMatch(/at .*\.ts|SqliteError/);
        },
      ),
      { numRuns: 60 },
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.string({ maxLength: 20 }), { minLength: 10, maxLength: 10 }),
        async (cells) => {
          const row = cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',');
          const response = await handIn(service, 'noise.csv', sheet(row));
          expect([201, 422]).toContain(response.status);
        },
      ),
      { numRuns: 60 },
    );
    expect(await countRecord()).toEqual(before);
  });
});
