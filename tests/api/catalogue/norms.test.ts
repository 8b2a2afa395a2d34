import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NORMS } from '../../../src/domain/prediction/registered.js';
import { asRecords, expectProblem, itemsOf, walkPages } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const get = (query = '') => app.as('commissioner').get(`/api/v1/norms${query}`);

async function normOf(id: string) {
  const norm = itemsOf(await get('?limit=200')).find((each) => each['id'] === id);
  if (norm === undefined) throw new Error(`There is no norm ${id}.`);
  return norm;
}

describe('norms', () => {
  it('are listed page by page without gaps or repeats', async () => {
    const { rows, pages } = await walkPages((cursor) =>
      get(`?limit=2${cursor === null ? '' : `&cursor=${cursor}`}`),
    );
    expect(rows.map((norm) => norm['id'])).toEqual(NORMS.map((norm) => norm.id));
    expect(pages).toBe(Math.ceil(NORMS.length / 2));
  });

  it('name the source of every figure, with a mark where it was not read', async () => {
    for (const norm of itemsOf(await get('?limit=200'))) {
      const cells = asRecords(norm['bands']).flatMap((band) => asRecords(band['cells']));
      expect(cells.length, String(norm['id'])).toBeGreaterThan(0);
      for (const { source } of cells) {
        const { text, status, mark } = asRecords([source])[0] ?? {};
        expect(text, String(norm['id'])).not.toBe('');
        expect(mark === null, `${String(norm['id'])}: ${String(status)}`).toBe(status === 'retrieved');
      }
    }
  });

  it('tell figures that were read from remembered ones of the same band', async () => {
    const norm = await normOf('strassmann-2013');
    const band = asRecords(norm['bands']).find(
      ({ sexAtBirth, fromYears }) => sexAtBirth === 'male' && fromYears === 75,
    );
    // The abstract of Strassmann 2013 prints the quartiles of men of 75 to 79: 25, 30 and 37; the centiles are remembered.
    expect(asRecords(band?.['cells'])).toMatchObject([
      { statistic: 'centile-2.5', value: 16, source: { mark: 'from memory, check before use' } },
      { statistic: 'centile-25', value: 25, source: { mark: null } },
      { statistic: 'centile-50', value: 30, source: { mark: null } },
      { statistic: 'centile-75', value: 37, source: { mark: null } },
      { statistic: 'centile-97.5', value: 56, source: { mark: 'from memory, check before use' } },
    ]);
  });

  it('say of whom they are and what to beware of', async () => {
    const norm = await normOf('strassmann-2013');
    expect(norm).toMatchObject({ measureId: 'one-minute-sit-to-stand', n: '6926 of 7753 who tried' });
    expect(norm['cautions']).toContain('No figures from 80 years.');
  });

  it('are shown to nobody without a token', async () => {
    expectProblem(await app.as(null).get('/api/v1/norms'), { status: 401, type: 'not-signed-in' });
  });

  it('refuse a cursor of another list', async () => {
    const page = await app.as('lead').get('/api/v1/measures?limit=1');
    const { nextCursor } = page.body as { nextCursor: string };
    expectProblem(await get(`?cursor=${nextCursor}`), { status: 400, type: 'malformed-request' });
  });
});
