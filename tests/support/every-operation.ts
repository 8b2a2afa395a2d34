import supertest from 'supertest';
import type { World } from './bad-input.js';
import { BODY_OPERATIONS } from './bodies.js';
import type { Operation } from './operations.js';

/**
 * Sends an operation as it would be accepted of somebody who may send it.
 *
 * @param token null for a request without one
 * @throws Error for an operation that the tests have no parameter or no body for
 */
export async function callOperation(
  world: World,
  { operationId, method, path }: Operation,
  token: string | null,
): Promise<supertest.Response> {
  const agent = supertest(world.app.app.server);
  const signed = (test: supertest.Test): supertest.Test =>
    token === null ? test : test.set('authorization', `Bearer ${token}`);
  const withBody = BODY_OPERATIONS.find((candidate) => candidate.operationId === operationId);
  if (withBody === undefined) {
    if (method !== 'get') throw new Error(`${operationId} needs a body in the tests.`);
    const query = /\/reports\/|\/figures$/.test(path) ? '?period=2026-27-Q2' : '';
    return signed(agent.get(filledPath(world, path) + query));
  }
  const address = withBody.path(world);
  const test = signed(agent[withBody.method](address)).set('if-match', world.app.etagOf(address));
  return test.send(withBody.body(world));
}

/** The path of an operation with the ids of our records in it. */
export function filledPath(world: World, path: string): string {
  const { patientId, referralId, assessmentId, sessionId, accountId, tokenId, importId } = world;
  const ids: Readonly<Record<string, string>> = {
    number: world.releaseNumber,
    patientId,
    referralId,
    assessmentId,
    sessionId,
    accountId,
    tokenId,
    importId,
    measureId: 'cat-total',
    figureId: 'uptake',
    letter: 'gp',
    timepoint: 'baseline',
    offerId: world.closed.offerId,
    mergeId: world.twice.mergeId,
  };
  return path.replace(/\{(\w+)\}/g, (_match, name: string) => {
    const id = ids[name];
    if (id === undefined) throw new Error(`The tests have no ${name} for ${path}.`);
    return id;
  });
}
