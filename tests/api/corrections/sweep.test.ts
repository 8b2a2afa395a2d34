import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isPublic } from '../../../src/auth/access.js';
import { startWorld } from '../../support/bad-input.js';
import type { World } from '../../support/bad-input.js';
import { BODY_OPERATIONS } from '../../support/bodies.js';
import { anAssessment } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem, textAt } from '../../support/response.js';

/*
 * Every operation of the document that could write. What changes a record that exists says which version it is based
 * on; what only adds something beside it does not, and stands here with the reason.
 */

const ADDS: Readonly<Record<string, string>> = {
  recordAssessment: 'a new record under its referral; with a draft it is based on the version of the draft',
  recordDiaryWeek: 'one week is superseded as a whole, and the former stays',
  acknowledgeCaution: 'done once, and never undone',
  discardDraft: 'the version of the draft stands in its body',
  renewInvitation: 'the former invitation ends, whatever it was',
  resetSecondFactor: 'ends what there is, whatever it was',
  signOutAccount: 'ends every session there is',
  withdrawRelease: 'says of what is frozen that it is withdrawn, and cannot be undone',
  revokeToken: 'ends what there is, and cannot be undone',
};

interface Described {
  readonly operationId: string;
  readonly method: string;
  readonly path: string;
  readonly headers: readonly string[];
  readonly statuses: readonly string[];
}

let world: World;
let writing: readonly Described[];
beforeAll(async () => {
  world = await startWorld();
  const document = await world.app.as(null).get('/api/v1/openapi.json');
  writing = Object.entries(asRecord(asRecord(document.body)['paths'])).flatMap(([path, methods]) =>
    Object.entries(asRecord(methods)).flatMap(([method, described]) => {
      const operation = asRecord(described);
      if (method === 'get') return [];
      const parameters = asRecords(operation['parameters'] ?? []);
      return [
        {
          operationId: textAt(operation, 'operationId'),
          method,
          path,
          headers: parameters
            .filter((each) => each['in'] === 'header')
            .map((each) => textAt(each, 'name').toLowerCase()),
          statuses: Object.keys(asRecord(operation['responses'])),
        },
      ];
    }),
  );
});
afterAll(() => world.app.close());

describe('by the document', () => {
  it('every change of a record that exists asks for its version, or says why not', () => {
    const ofOneThing = writing.filter(({ method, path }) => method !== 'post' || path.includes('{'));
    const asks = ({ headers, statuses }: Described): boolean =>
      headers.includes('if-match') && statuses.includes('428') && statuses.includes('412');
    const silent = ofOneThing.filter((operation) => !asks(operation)).map(({ operationId }) => operationId);
    expect([...silent].sort()).toEqual(Object.keys(ADDS).sort());
  });

  it('every POST of somebody who is signed in takes an Idempotency-Key', () => {
    const without = writing.filter(
      ({ method, headers, operationId }) =>
        method === 'post' && !isPublic(operationId) && !headers.includes('idempotency-key'),
    );
    expect(without).toEqual([]);
  });

  it('every operation that asks for a version has a body here, so that it is held to it', () => {
    const asking = writing.filter(({ headers }) => headers.includes('if-match'));
    const known = new Set(BODY_OPERATIONS.map(({ operationId }) => operationId));
    expect(asking.filter(({ operationId }) => !known.has(operationId))).toEqual([]);
  });
});

describe('by its answers', () => {
  const send = (operationId: string, ifMatch: string | null) => {
    const operation = BODY_OPERATIONS.find((each) => each.operationId === operationId);
    if (operation === undefined) throw new Error(`No body for ${operationId}.`);
    return world.app.as('lead')[operation.method](operation.path(world), operation.body(world), ifMatch);
  };

  it('every one of them answers 428 without If-Match and 412 with a version that never was, and writes nothing', async () => {
    const before = await world.app.countRows();
    for (const { operationId, headers } of writing) {
      if (!headers.includes('if-match')) continue;
      expect((await send(operationId, null)).status, operationId).toBe(428);
      expect((await send(operationId, '"998"')).status, operationId).toBe(412);
    }
    expect(await world.app.countRows()).toEqual(before);
  });

  it('tells what changed meanwhile, whatever the change of a person, a referral, a session or an assessment is', async () => {
    const lead = world.app.as('lead');
    /** Moves a record on by one version, and gives what is told of that. */
    const moves: readonly (readonly [resource: string, move: (path: string) => Promise<string>])[] = [
      ['patients', (path) => moved(path, 'patch', { changes: { smokingStatus: 'never' } }, 'smokingStatus')],
      ['referrals', (path) => moved(path, 'patch', { changes: { plannedWeeks: 7 } }, 'plannedWeeks')],
      ['sessions', (path) => moved(path, 'patch', { changes: { isSupervised: false } }, 'isSupervised')],
      [
        'assessments',
        (path) => moved(path, 'put', anAssessment(world.app.siteId, { weightKg: 70 }), 'weightKg'),
      ],
    ];
    const moved = async (path: string, method: 'put' | 'patch', body: object, field: string) => {
      const response = await lead[method](path, { reason: 'Told by telephone', ...body });
      expect(response.status, response.text).toBe(200);
      return field;
    };
    for (const [resource, move] of moves) {
      const operations = BODY_OPERATIONS.filter(
        ({ operationId, path }) =>
          path(world).startsWith(`/api/v1/${resource}/`) &&
          !path(world).includes('/drafts/') &&
          writing.some((each) => each.operationId === operationId && each.headers.includes('if-match')),
      );
      expect(operations.length).toBeGreaterThan(1);
      const roots = new Set(operations.map(({ path }) => rootOf(path(world))));
      for (const root of roots) {
        const base = world.app.etagOf(root);
        const field = await move(root);
        for (const { operationId } of operations.filter(({ path }) => rootOf(path(world)) === root)) {
          const response = await send(operationId, base);
          expectProblem(response, { status: 412, type: 'changed-meanwhile' });
          expect(response.body, operationId).toMatchObject({
            changedMeanwhile: {
              versions: [{ reason: 'Told by telephone', changedBy: { name: 'Test lead' } }],
              changes: [{ field }],
            },
          });
        }
      }
    }
  });
});

/** The address of the record itself. @example rootOf('/api/v1/referrals/1/closure') -> '/api/v1/referrals/1' */
function rootOf(path: string): string {
  return path.split('/').slice(0, 5).join('/');
}
