import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openRecord } from '../../src/app/open-record.js';
import { SYSTEM_CLOCK } from '../../src/app/system-clock.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { verifyAuditTrail } from '../../src/storage/audit/verify-trail.js';
import { closeReferral } from '../../src/usecases/referrals/change-referral.js';
import { compiledCommand } from '../support/compiled-command.js';
import { largeSheet } from '../support/large-sheet.js';
import { makeRecordFile } from '../support/record-file.js';
import { startService } from '../support/service-process.js';
import type { ServiceProcess } from '../support/service-process.js';

const REFERRALS = 400;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-kill-import-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const start = (file: string) => startService(compiledCommand('main'), { TIDEMARK_DB: file });

it('takes a sheet that was half in when it was killed out again, but for whom somebody has worked on', async () => {
  const { file, token, id } = await killedHalfIn();
  const ask = askerWith(token);
  const worked = await workOnOne(file);
  const again = await start(file);
  expect((await ask(again, '/referrals?limit=200')).items?.map((each) => each.id)).toEqual([worked]);
  // A report is open again, and the sheet can be brought in: whoever is in the record already is passed over.
  expect((await ask(again, '/reports/quarterly?period=2026-27-Q1')).id).toBeUndefined();
  const brought = await ask(again, `/imports/${id}/commit`, GOOD_ROWS);
  expect(brought.counts).toMatchObject({ new: REFERRALS - 1, already: 1 });
  expect(await again.end('SIGTERM')).toEqual({ code: 0, signal: null });
  const { connection } = await openRecord(file, SYSTEM_CLOCK);
  const { db } = connection;
  expect(await db.selectFrom('patient').select('id').execute()).toHaveLength(REFERRALS);
  expect(await db.selectFrom('referral').select('id').execute()).toHaveLength(REFERRALS);
  expect(await verifyAuditTrail(db)).toMatchObject({ kind: 'intact' });
  await connection.close();
}, 120_000);

const GOOD_ROWS = { rows: 'good-rows', confirmsUnusual: false };
const MOST_ATTEMPTS = 5;

/** A record that was killed while a sheet was being brought in; the whole may be in sooner than the kill comes. */
async function killedHalfIn(): Promise<{ file: string; token: string; id: string }> {
  for (let attempt = 0; attempt < MOST_ATTEMPTS; attempt += 1) {
    const file = join(folder, `record-${attempt}.sqlite`);
    const { token } = await makeRecordFile(file);
    const ask = askerWith(token);
    const service = await start(file);
    const contentBase64 = Buffer.from(largeSheet(REFERRALS)).toString('base64');
    const { id = '' } = await ask(service, '/imports', { fileName: 'large.csv', contentBase64 });
    const rows = { ...GOOD_ROWS, rows: 'all-or-none' };
    const committing = ask(service, `/imports/${id}/commit`, rows).catch(() => {});
    while ((await ask(service, '/patients?limit=1')).items?.length === 0);
    expect(await service.end('SIGKILL')).toEqual({ code: null, signal: 'SIGKILL' });
    await committing;
    if (await isHalfIn(file)) return { file, token, id };
  }
  throw new Error('The sheet was whole before each kill.');
}

async function isHalfIn(file: string): Promise<boolean> {
  const { connection } = await openRecord(file, SYSTEM_CLOCK);
  const [stored] = await connection.db.selectFrom('import').select('state').execute();
  await connection.close();
  return stored?.state === 'draft';
}

/** Finds the sheet half in, and closes one of its referrals. @returns the id of that referral */
async function workOnOne(file: string): Promise<string> {
  const { connection, context } = await openRecord(file, SYSTEM_CLOCK);
  const { db } = connection;
  const referrals = await db.selectFrom('referral').selectAll().execute();
  expect(referrals.length).toBeGreaterThan(1);
  expect(referrals.length).toBeLessThan(REFERRALS);
  expect(await verifyAuditTrail(db)).toMatchObject({ kind: 'intact' });
  const [first] = referrals;
  const [account] = await db.selectFrom('account').select('id').execute();
  if (first === undefined || account === undefined) throw new Error('There is nothing to work on.');
  const actor = { accountId: account.id, role: 'lead', teamId: first.team_id } as const;
  const closed = await closeReferral(context, actor, first.id, {
    ...{ closedOn: plainDate('2026-07-31'), reason: 'declined', note: null, exercisePlanGivenOn: null },
    basedOn: [first.version],
  });
  expect(closed).toMatchObject({ kind: 'done' });
  await connection.close();
  return first.id;
}

interface Answer {
  readonly id?: string;
  readonly counts?: object;
  readonly items?: readonly { readonly id: string }[];
}

function askerWith(token: string) {
  return async (service: ServiceProcess, path: string, body?: object): Promise<Answer> => {
    const headers = {
      authorization: `Bearer ${token}`,
      'content-type': 'application/json',
      'if-match': '"1"',
    };
    const post = { method: 'POST', body: JSON.stringify(body) };
    const response = await fetch(`${service.url}${path}`, { headers, ...(body === undefined ? {} : post) });
    const text = await response.text();
    if (!response.ok) throw new Error(`${path}: ${response.status} ${text}`);
    return JSON.parse(text) as Answer;
  };
}
