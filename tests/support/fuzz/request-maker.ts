import { randomUUID } from 'node:crypto';
import { nhsNumbersOfTestRange } from '../../../seeds/nhs-numbers.js';
import { chance, pick, pickWeighted, randomFor, wholeBetween } from '../../../seeds/random.js';
import type { Random } from '../../../seeds/random.js';
import type { World } from '../bad-input.js';
import { BODY_OPERATIONS } from '../bodies.js';
import type { TestRole } from '../start-app.js';
import { encoded, hostileBody, hostileHeader, hostilePart } from './hostile.js';
import { mutate } from './mutate.js';
import type { ApiDocument, DescribedOperation } from './operations-of-document.js';
import { valueFor } from './schema-values.js';
import type { ValueSource } from './schema-values.js';

/** A request that was made up; `kind` says how far from what a client would send. */
export interface MadeRequest {
  readonly kind: 'valid' | 'mutated' | 'hostile';
  readonly operation: DescribedOperation;
  readonly who: TestRole | null;
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Buffer | null;
}

/** Makes requests; the same seed makes the same ones, as long as the service answers as it did. */
export interface RequestMaker {
  readonly next: (index: number) => MadeRequest;
  /** Tells it of a record that was made, so that later requests name it. */
  readonly learn: (resource: string, id: string) => void;
}

/** Reports read the whole record: they are asked for less often. */
const DEAR = /^(?:getQuarterlyReport|getOpenApi)/;

/** A maker of requests for every operation of a document. */
export function requestMaker(seed: number, document: ApiDocument, world: World): RequestMaker {
  const pools = poolsOf(world);
  const numbers = Array.from({ length: 60 }, nhsNumbersOfTestRange(seed));
  const weighted = document.operations.map(
    (operation) =>
      [operation, DEAR.test(operation.operationId) ? 0.05 : operation.body === null ? 1 : 3] as const,
  );
  const sourceOf = (random: Random): ValueSource => ({
    random,
    schemaAt: document.schemaAt,
    idFor: (field, generator) => idFrom(pools, field, generator),
    nhsNumber: (generator) => pick(generator, numbers),
  });
  return {
    next: (index) => {
      const random = randomFor(seed, `request/${index}`);
      const operation = pickWeighted(random, weighted);
      const kind = pickWeighted(random, [
        ['valid', 3],
        ['mutated', 4],
        ['hostile', 2],
      ] as const);
      const source = sourceOf(random);
      const isOdd = (share: number): boolean => kind === 'hostile' && chance(random, share);
      const url = isOdd(0.3) ? hostileUrl(source, operation) : urlFor(source, operation, kind);
      const headers = { ...headersFor(source, operation), ...(isOdd(0.3) ? hostileHeader(random) : {}) };
      const body = operation.body === null && !isOdd(0.1) ? null : bodyFor(source, operation, kind, world);
      return { kind, operation, who: whoAsks(random), url, headers, body };
    },
    learn: (resource, id) => {
      const pool = pools.get(resource) ?? [];
      pools.set(resource, pool);
      // The newest take the place of the oldest, so that not all have been closed or corrected long ago.
      if (pool.push(id) > 40) pool.shift();
    },
  };
}

function whoAsks(random: Random): TestRole | null {
  return pickWeighted(random, [
    ['lead', 60],
    ['clinician', 20],
    ['admin', 12],
    ['commissioner', 5],
    [null, 3],
  ] as const);
}

/** Ids by the resource that they are of. */
function poolsOf({ app, theirs, ...ours }: World): Map<string, string[]> {
  return new Map([
    ['patients', [ours.patientId]],
    ['referrals', [ours.referralId]],
    ['assessments', [ours.assessmentId]],
    ['sessions', [ours.sessionId]],
    ['sites', [app.siteId, app.secondSiteId]],
    ['commissioners', [app.commissionerId]],
    [
      'theirs',
      [theirs.patientId, theirs.referralId, theirs.assessmentId, theirs.sessionId, app.otherTeam.siteId],
    ],
  ]);
}

/** Mostly an id of the kind that the field names; now and then another team's, or one that nothing has. */
function idFrom(pools: ReadonlyMap<string, string[]>, field: string, random: Random): string {
  const named = [...pools.keys()].find((resource) => `${resource.slice(0, -1)}Id` === field);
  const ours = pools.get(named ?? 'referrals') ?? [];
  const pool = chance(random, 0.85) ? ours : (pools.get('theirs') ?? []);
  return chance(random, 0.03) ? randomUUID() : pick(random, pool);
}

function bodyFor(
  source: ValueSource,
  operation: DescribedOperation,
  kind: MadeRequest['kind'],
  world: World,
): string | Buffer {
  const { random } = source;
  let value: unknown = valueFor(source, operation.body ?? {});
  const accepted = BODY_OPERATIONS.find(({ operationId }) => operationId === operation.operationId);
  if (accepted !== undefined && chance(random, 0.5)) {
    // One that would be accepted, with some of its fields made anew.
    const made = value as Readonly<Record<string, unknown>>;
    const entries = Object.entries(accepted.body(world));
    value = Object.fromEntries(
      entries.map(([name, given]) => [name, chance(random, 0.25) && name in made ? made[name] : given]),
    );
  }
  if (kind === 'valid') return JSON.stringify(value);
  let wrong = value;
  for (let count = wholeBetween(random, 1, 3); count > 0; count -= 1) wrong = mutate(random, wrong);
  const text = JSON.stringify(wrong) ?? '';
  return kind === 'hostile' && chance(random, 0.6) ? hostileBody(random, JSON.stringify(value)) : text;
}

function urlFor(source: ValueSource, operation: DescribedOperation, kind: MadeRequest['kind']): string {
  const { random } = source;
  const path = operation.path.replace(/\{(\w+)\}/g, (_match, name: string) => {
    const parameter = operation.parameters.find((each) => each.in === 'path' && each.name === name);
    return encodeURIComponent(String(valueFor(source, parameter?.schema ?? {}, name)));
  });
  const query = operation.parameters
    .filter((parameter) => parameter.in === 'query' && (parameter.isRequired || chance(random, 0.4)))
    .map(({ name, schema }) => {
      const value = String(valueFor(source, schema, name));
      const isWrong = kind !== 'valid' && chance(random, 0.3);
      return `${name}=${isWrong ? hostilePart(random) : encoded(value)}`;
    });
  if (kind !== 'valid' && chance(random, 0.05)) query.push(`${hostilePart(random)}=${hostilePart(random)}`);
  return query.length === 0 ? path : `${path}?${query.join('&')}`;
}

function hostileUrl({ random }: ValueSource, { path }: DescribedOperation): string {
  const parts = path.split('/');
  const place = wholeBetween(random, 1, parts.length - 1);
  return parts
    .map((part, index) => (index === place || part.startsWith('{') ? hostilePart(random) : part))
    .join('/');
}

/** A key for every second POST, of few, so that some come twice; and a version that may be the right one. */
function headersFor(
  { random }: ValueSource,
  { method, parameters }: DescribedOperation,
): Record<string, string> {
  const takesVersion = parameters.some(({ name }) => name === 'if-match');
  return {
    ...(takesVersion && chance(random, 0.9) ? { 'if-match': `"${wholeBetween(random, 0, 6)}"` } : {}),
    ...(method === 'POST' && chance(random, 0.3)
      ? { 'idempotency-key': `key-${wholeBetween(random, 1, 2000)}` }
      : {}),
  };
}
