import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectProblem } from '../support/response.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
beforeAll(async () => {
  service = await startApp();
});
afterAll(() => service.close());

const browser = (method: 'get' | 'post', path: string) =>
  supertest(service.app.server)[method](path).set('accept', 'text/html,application/xhtml+xml');

describe('an address that is not there', () => {
  it('answers a person by a page in the frame', async () => {
    const response = await browser('get', '/no-such-page');
    expect(response.status).toBe(404);
    expect(response.headers['content-type']).toMatch(/^text\/html/);
    expect(response.text).toContain('There is no such page');
    expect(response.text).toContain('href="#content"');
  });

  it('answers a program, and everybody who asks the API, by a problem document', async () => {
    expectProblem(await service.as(null).get('/no-such-page'), { status: 404, type: 'not-found' });
    expectProblem(await browser('get', '/api/v1/no-such-thing'), { status: 404, type: 'not-found' });
  });

  it('repeats nothing of the address', async () => {
    const { text } = await browser('get', '/no-such-page/%3Cb%3E999-000-0018?name=Sandwort');
    expect(text).not.toMatch(/999-000|Sandwort|<b>/);
  });
});

describe('a form', () => {
  it('that another page sends is refused', async () => {
    const response = await browser('post', '/sign-out').type('form').send({});
    expect(response.status).toBe(403);
    expect(response.headers['content-type']).toMatch(/^text\/html/);
    expect(response.text).toContain('This form can no longer be used');
  });

  it('that is no form is not read', async () => {
    const response = await browser('post', '/sign-out').type('json').send('{"a":1}');
    expect(response.status).toBe(415);
    expect(response.headers['content-type']).toMatch(/^text\/html/);
  });

  it('that is too large is not read', async () => {
    const response = await browser('post', '/sign-out')
      .type('form')
      .send(`a=${'x'.repeat(300_000)}`);
    expect(response.status).toBe(413);
  });
});

it('leads somebody who is not signed in to the sign-in page, and from there back', async () => {
  const home = await browser('get', '/');
  expect([home.status, home.headers['location']]).toEqual([303, '/sign-in']);
  const start = await browser('get', '/account?a=b&c=d');
  expect([start.status, start.headers['location']]).toEqual([
    303,
    '/sign-in?next=%2Faccount%3Fa%3Db%26c%3Dd',
  ]);
});

describe('a service whose record cannot be read', () => {
  it('says so by a page that tells nothing of its inside', async () => {
    const broken = await startApp();
    await broken.record.connection.close();
    const response = await supertest(broken.app.server)
      .get('/account')
      .set('accept', 'text/html')
      .set('cookie', '__Host-tidemark=tds_aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa');
    await broken.app.close();
    expect([303, 500]).toContain(response.status);
    expect(response.text).not.toMatch(/\bat .*\.[jt]s|node_modules|sqlite|database|kysely|driver|\/src\//i);
  });
});
