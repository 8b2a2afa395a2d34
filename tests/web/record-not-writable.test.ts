import { sql } from 'kysely';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { movingClock } from '../support/moving-clock.js';
import type { MovingClock } from '../support/moving-clock.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let clock: MovingClock;
let pages: PageClient;
beforeAll(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  pages = await pagesAs(service, 'lead');
  await sql`pragma query_only = on`.execute(service.record.connection.db);
});
afterAll(() => service.close());

it('a record that takes no writes is still read by those who are signed in', async () => {
  // Late enough for the use of the session to be noted.
  clock.moveBy(5 * 60);
  expect((await pages.get('/account')).status).toBe(200);
});

it('and says of a form that nothing was stored', async () => {
  const response = await pages.submit('/account', {}, '/sign-out');
  expect(response.status).toBe(503);
  expect(response.text).toContain('Nothing was stored');
  expect(response.text).not.toMatch(/sqlite|query_only|\.ts/i);
});
