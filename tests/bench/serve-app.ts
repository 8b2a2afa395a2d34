import { buildApp } from '../../src/app/build-app.js';
import { openRecord } from '../../src/app/open-record.js';
import { startMakerThreads } from '../../src/app/maker-threads.js';
import { clockAt } from '../../src/app/system-clock.js';
import { listenForParent } from './listen.js';
import { BENCH_INSTANT } from './whole-assessment.js';

/** The service itself on the record named on the command line, with its log as in production. */
const [, , file = ''] = process.argv;
const { connection, context } = await openRecord(file, clockAt(BENCH_INSTANT));
const threads = startMakerThreads(file);
const app = await buildApp({ ...context, reports: threads, releases: threads }, 'info');
// Time inside the server, from the head of the request to the finished text of the answer.
app.addHook('onSend', async (request, reply) => {
  if (request.method === 'GET') reply.header('server-timing', `total;dur=${reply.elapsedTime}`);
});
await listenForParent(app, async () => {
  await threads.close();
  await connection.close();
});
