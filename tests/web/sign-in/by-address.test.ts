import supertest from 'supertest';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FREE_FAILURES } from '../../../src/domain/account/sign-in-delay.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { pagesAs } from '../../support/page-client.js';
import { givenPerson, PASSPHRASE } from '../../support/people.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const NAME = 'h.turnstone';
const WRONG = 'sandpiper below the mudflat';

let clock: MovingClock;
let service: TestApp;

async function start(trustedProxies: readonly string[]): Promise<void> {
  clock = movingClock('2026-11-25');
  service = await startApp(clock, { trustedProxies });
  await givenPerson(service.record.context, { role: 'lead', teamId: service.teamId }, NAME);
}
afterEach(() => service.close());

/** Sends the sign-in form, with the addresses that it is said to have come by. */
async function attempt(signInName: string, passphrase: string, from: string | null) {
  const pages = await pagesAs(service, null);
  const form = await pages.get('/sign-in');
  const fields = [...form.text.matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)"/g)];
  const hidden = Object.fromEntries(fields.map(([, name = '', value = '']) => [name, value]));
  const cookie = [...pages.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
  const test = supertest(service.app.server).post('/sign-in').type('form').set('cookie', cookie);
  if (from !== null) void test.set('x-forwarded-for', from);
  return test.send({ ...hidden, signInName, passphrase });
}

/** As many wrong attempts as cost no waiting, and one more; each by another name, which nobody has. */
async function useUp(from: (attempt: number) => string | null): Promise<void> {
  for (let count = 0; count <= FREE_FAILURES.address; count += 1) {
    expect((await attempt(`nobody.${count}`, WRONG, from(count))).status).toBe(422);
  }
}

describe('wrong attempts from one address', () => {
  beforeEach(() => start([]));

  it('delay the next, by whatever name: alike for one that is there and one that is not', async () => {
    await useUp(() => null);
    const known = await attempt(NAME, PASSPHRASE, null);
    const unknown = await attempt('nobody.at.all', PASSPHRASE, null);
    expect([known.status, known.headers['retry-after']]).toEqual([429, '5']);
    expect([unknown.status, unknown.headers['retry-after']]).toEqual([429, '5']);
    clock.moveBy(5);
    expect((await attempt(NAME, PASSPHRASE, null)).status).toBe(303);
  });

  it('are counted by the connection, whatever addresses are written into the request', async () => {
    await useUp((count) => `198.51.100.${count}`);
    expect((await attempt(NAME, PASSPHRASE, '198.51.100.200')).status).toBe(429);
  });
});

describe('behind a proxy that the operator has named', () => {
  beforeEach(() => start(['127.0.0.1', '::1']));

  it('each address has its own delay, and a far one does not make up others', async () => {
    // What stands before the last address was written by whoever sent it.
    await useUp((count) => `203.0.113.${count}, 198.51.100.7`);
    expect((await attempt(NAME, PASSPHRASE, '198.51.100.7')).status).toBe(429);
    expect((await attempt(NAME, PASSPHRASE, '198.51.100.8')).status).toBe(303);
  });
});
