import BetterSqlite from 'better-sqlite3';
import fastify from 'fastify';
import { v7 as newId } from 'uuid';
import { prepareBareInserts } from './bare-inserts.js';
import type { BareAssessment } from './bare-inserts.js';
import { listenForParent } from './listen.js';
import { BENCH_INSTANT } from './whole-assessment.js';

/** The least that could store an assessment: no check, no schema, no token, no log; the same rows, as safely written. */
const [, , file = '', teamId = '', accountId = ''] = process.argv;
const database = new BetterSqlite(file);
for (const pragma of [
  'journal_mode = WAL',
  'synchronous = FULL',
  'foreign_keys = ON',
  'busy_timeout = 5000',
  'trusted_schema = OFF',
]) {
  database.pragma(pragma);
}
const insertAssessment = prepareBareInserts(database);
const app = fastify();
app.post<{ Params: { patientId: string; referralId: string }; Body: BareAssessment }>(
  '/patients/:patientId/referrals/:referralId/assessments',
  async (request, reply) => {
    const [id, versionId] = [newId(), newId()];
    const { patientId, referralId } = request.params;
    const keys = { id, versionId, teamId, patientId, referralId, accountId, now: BENCH_INSTANT };
    insertAssessment(request.body, keys);
    return reply
      .code(201)
      .send({ id, version: 1, referralId, recordedAt: BENCH_INSTANT, entry: request.body });
  },
);
await listenForParent(app, () => {
  database.close();
});
