import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asRecord, asRecords, expectProblem, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

describe('the safety checklist', () => {
  let service: TestApp;
  let lists: readonly Readonly<Record<string, unknown>>[];
  beforeAll(async () => {
    service = await startApp();
    const response = await service.as('clinician').get('/api/v1/safety-checklist');
    expect(response.status, response.text).toBe(200);
    lists = asRecords(asRecord(response.body)['lists']);
  });
  afterAll(() => service.close());

  const items = () => lists.flatMap((list) => asRecords(list['items']));

  it('is read by everybody who is signed in, and by nobody else', async () => {
    for (const role of ['admin', 'clinician', 'lead', 'commissioner'] as const) {
      expect((await service.as(role).get('/api/v1/safety-checklist')).status, role).toBe(200);
    }
    expectProblem(await service.as(null).get('/api/v1/safety-checklist'), {
      status: 401,
      type: 'not-signed-in',
    });
  });

  it('says that it prescribes nothing', async () => {
    const response = await service.as('clinician').get('/api/v1/safety-checklist');
    expect(asRecord(response.body)['notice']).toMatch(/prescribes nothing.*registered clinicians/);
  });

  it('covers what comes before a test, during it, its conduct, and exercise at home', () => {
    expect(lists.map(({ id, stage }) => [id, stage])).toEqual([
      ['absolute-contraindications', 'before-a-test'],
      ['relative-contraindications', 'before-a-test'],
      ['stop-rules', 'during-a-test'],
      ['community-stop-rules', 'during-a-test'],
      ['conduct-of-tests', 'conduct-of-tests'],
      ['exercise-at-home', 'exercise-at-home'],
    ]);
  });

  it('names a source and its status with every item, and marks every source that was not read', () => {
    expect(items().length).toBeGreaterThan(50);
    for (const { id, source } of items()) {
      const { text, status, mark } = asRecord(source);
      expect(text, String(id)).not.toBe('');
      expect(mark === null, String(id)).toBe(status === 'retrieved');
    }
  });

  it('has no id twice', () => {
    const ids = items().map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('grades contraindications, and keeps a narrower local rule apart from a standard', () => {
    const strengths = (listId: string): ReadonlySet<unknown> => {
      const list = lists.find(({ id }) => id === listId);
      return new Set(asRecords(list?.['items']).map(({ strength }) => strength));
    };
    expect(strengths('absolute-contraindications')).toEqual(new Set(['absolute']));
    expect(strengths('relative-contraindications')).toEqual(new Set(['relative']));
    expect(strengths('community-stop-rules')).toEqual(new Set(['local']));
    expect(strengths('exercise-at-home')).toEqual(new Set(['local']));
  });

  it('lists each of its sources among the sources of the service', async () => {
    const response = await service.as('clinician').get('/api/v1/sources?limit=200');
    expect(asRecord(response.body)['nextCursor']).toBeNull();
    const sources = itemsOf(response).map(({ source }) => asRecord(source));
    const known = new Map(sources.map(({ id, status }) => [id, status]));
    for (const { id, source } of items()) {
      const { id: sourceId, status } = asRecord(source);
      expect(known.get(sourceId), `${String(id)}: ${String(sourceId)}`).toBe(status);
    }
  });
});
