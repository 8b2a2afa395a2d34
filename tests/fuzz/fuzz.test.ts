import type { LightMyRequestResponse } from 'fastify';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createAccount } from '../../src/usecases/accounts/provision.js';
import { verifyAuditTrail } from '../../src/storage/audit/verify-trail.js';
import { startWorld } from '../support/bad-input.js';
import type { World } from '../support/bad-input.js';
import { anAssessment, aPatient, aReferralBody } from '../support/entries.js';
import { faultsOf } from '../support/fuzz/judge.js';
import type { Foreign } from '../support/fuzz/judge.js';
import { readDocument } from '../support/fuzz/operations-of-document.js';
import type { ApiDocument } from '../support/fuzz/operations-of-document.js';
import { requestMaker } from '../support/fuzz/request-maker.js';
import type { MadeRequest } from '../support/fuzz/request-maker.js';
import { created } from '../support/scenario.js';

/** `FUZZ_SEED=... FUZZ_REQUESTS=... npm test -- tests/fuzz` repeats a run, or makes a longer one. */
const SEED = Number(process.env['FUZZ_SEED'] ?? Date.now() % 1_000_000);
const REQUESTS = Number(process.env['FUZZ_REQUESTS'] ?? 20_000);
/** Sent together, so that they meet each other too. */
const AT_ONCE = 20;
const LONGEST_ANSWER_MS = 20_000;

const FOREIGN_TEXTS = ['Xanthorrhoea', 'Quillfeather', '9990009996', 'only-theirs-4711'];

let world: World;
let document: ApiDocument;
let foreign: Foreign;
beforeAll(async () => {
  world = await startWorld();
  foreign = await givenForeignRecord(world);
  // No power is cut here: the disk is not waited for.
  await sql`pragma synchronous = off`.execute(world.app.record.connection.db);
  document = readDocument((await world.app.as(null).get('/api/v1/openapi.json')).body);
});
afterAll(() => world.app.close());

describe('any request that is made from the document', () => {
  it(`is answered, and by nothing that it should not show (${REQUESTS} requests)`, async () => {
    console.info(`Made-up requests: FUZZ_SEED=${SEED}`);
    const theirsBefore = await rowsOfOtherTeam(world);
    const maker = requestMaker(SEED, document, world);
    // An account that may be suspended without those who ask being shut out.
    maker.learn('accounts', await spareAccount(world));
    const counts = new Map<string, number>();
    for (let first = 0; first < REQUESTS; first += AT_ONCE) {
      const requests = Array.from({ length: AT_ONCE }, (_, index) => maker.next(first + index));
      const answers = await Promise.all(requests.map((request, index) => answerTo(request, first + index)));
      requests.forEach((request, index) => {
        const response = answers[index];
        if (response === undefined) throw new Error('A request without its answer.');
        const faults = faultsOf(request, response, foreign);
        if (faults.length > 0)
          expect.fail(`${faults.join(' ')} ${told(request, first + index, response.body)}`);
        learnFrom(maker.learn, response);
        const outcome = `${request.kind} ${Math.floor(response.statusCode / 100)}xx`;
        counts.set(outcome, (counts.get(outcome) ?? 0) + 1);
      });
    }
    console.info(
      [...counts]
        .sort()
        .map(([outcome, count]) => `${outcome}: ${count}`)
        .join(', '),
    );
    // Enough of what a client would send must reach the record, or nothing was tried.
    expect(counts.get('valid 2xx')).toBeGreaterThan(REQUESTS / 40);
    expect(await rowsOfOtherTeam(world)).toEqual(theirsBefore);
    const { db } = world.app.record.connection;
    expect(await verifyAuditTrail(db)).toMatchObject({ kind: 'intact' });
    expect((await sql`pragma foreign_key_check`.execute(db)).rows).toEqual([]);
    expect((await sql`pragma integrity_check`.execute(db)).rows).toEqual([{ integrity_check: 'ok' }]);
  }, 180_000);
});

async function answerTo(request: MadeRequest, index: number): Promise<LightMyRequestResponse> {
  const { operation, who, url, headers, body } = request;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(`No answer: ${told(request, index, '')}`)), LONGEST_ANSWER_MS);
  });
  try {
    return await Promise.race([
      late,
      world.app.app.inject({
        method: operation.method,
        url,
        headers: {
          ...(who === null ? {} : { authorization: `Bearer ${world.app.tokens[who]}` }),
          ...(body === null ? {} : { 'content-type': 'application/json' }),
          ...headers,
        },
        ...(body === null ? {} : { payload: body }),
      }),
    ]);
  } finally {
    clearTimeout(timer);
  }
}

/** The request as it can be sent again. */
function told(
  { kind, operation, who, url, headers, body }: MadeRequest,
  index: number,
  answer: string,
): string {
  const text = body === null ? '' : body.toString().slice(0, 2000);
  const request = `${kind} request ${index} of FUZZ_SEED=${SEED}: ${operation.method} ${url.slice(0, 500)}`;
  return `${request} as ${String(who)} ${JSON.stringify(headers).slice(0, 300)} ${text} -> ${answer.slice(0, 500)}`;
}

/** What was made is named by later requests. */
function learnFrom(learn: (resource: string, id: string) => void, { headers }: LightMyRequestResponse): void {
  const made = /^\/api\/v1\/([a-z-]+)\/([0-9a-f-]{36})$/.exec(String(headers['location'] ?? ''));
  if (made?.[1] !== undefined && made[2] !== undefined) learn(made[1], made[2]);
}

async function spareAccount({ app }: World): Promise<string> {
  const { accountId } = await createAccount(app.record.context, {
    displayName: 'Spare clinician',
    belonging: { role: 'clinician', teamId: app.teamId },
    tokenName: 'tests',
    expiresAt: '2100-01-01T00:00:00.000Z',
  });
  return accountId;
}

/** People of another team with marks that occur nowhere else. */
async function givenForeignRecord({ app, theirs }: World): Promise<Foreign> {
  const [familyName, givenName, nhsNumber, note] = FOREIGN_TEXTS;
  const patient = aPatient({ familyName, givenName, nhsNumber });
  const patientId = await created(app, '/api/v1/patients', patient, 'other-team');
  const { siteId } = app.otherTeam;
  const referral = aReferralBody(patientId, siteId, { otherConditions: note });
  const referralId = await created(app, '/api/v1/referrals', referral, 'other-team');
  const assessment = anAssessment(siteId, { notes: note });
  const path = `/api/v1/referrals/${referralId}/assessments`;
  const assessmentId = await created(app, path, assessment, 'other-team');
  const { teamId } = app.otherTeam;
  const ids = [...Object.values({ ...theirs }), patientId, referralId, assessmentId, teamId, siteId];
  return { texts: FOREIGN_TEXTS, ids };
}

/** Every row that belongs to the other team. */
async function rowsOfOtherTeam({ app }: World): Promise<unknown> {
  const { db } = app.record.connection;
  const tables = (await db.introspection.getTables()).filter(({ columns }) =>
    columns.some(({ name }) => name === 'team_id'),
  );
  const { teamId } = app.otherTeam;
  return Promise.all(
    tables.map(async ({ name }) => [
      name,
      (await sql`select * from ${sql.table(name)} where team_id = ${teamId}`.execute(db)).rows,
    ]),
  );
}
