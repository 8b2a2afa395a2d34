import { describe } from 'vitest';
import { refusesAll, sendRaw, worldOfAll } from '../../support/bad-input.js';
import type { BadInput, World } from '../../support/bad-input.js';
import { BODY_OPERATIONS } from '../../support/bodies.js';
import type { BodyOperation } from '../../support/bodies.js';

/** The most that is read of a body; a filler of so much text makes it larger than that. */
const mostKibibytes = ({ operationId }: BodyOperation): number =>
  // A file of 16 MiB, in base64 and with its name.
  operationId === 'takeImportFile' ? 22 * 1024 : 256;
const DEEP = 60_000;

const malformed = { status: 400, type: 'malformed-request' } as const;

// Nothing that is sent here writes anything, so that all of it can be sent to one.
const worldOf = worldOfAll();

describe.each(BODY_OPERATIONS.map((operation) => [operation.operationId, operation] as const))(
  '%s',
  (_id, operation) => refusesAll(casesOf(operation), worldOf),
);

/** What no operation may take, whatever its body means. */
function casesOf(operation: BodyOperation): readonly BadInput[] {
  const raw = (type: string | null, text: (world: World) => string) => (world: World) =>
    sendRaw(world, { method: operation.method, path: operation.path(world), type, text: text(world) });
  const json = (text: (world: World) => string) => raw('application/json', text);
  const valid = (world: World): string => JSON.stringify(operation.body(world));
  return [
    { name: 'a body that is no JSON', ...malformed, send: json((world) => valid(world).slice(0, -1)) },
    { name: 'JSON with something behind it', ...malformed, send: json((world) => `${valid(world)} {}`) },
    { name: 'an empty body', ...malformed, send: json(() => '') },
    { name: 'a list', ...malformed, pointers: [''], send: json((world) => `[${valid(world)}]`) },
    { name: 'null', ...malformed, pointers: [''], send: json(() => 'null') },
    { name: 'a text', ...malformed, pointers: [''], send: json((world) => JSON.stringify(valid(world))) },
    {
      name: 'a number that is none',
      ...malformed,
      send: json((world) => valid(world).replace('}', ',"n":NaN}')),
    },
    ...unknownFields(operation),
    {
      name: 'a field __proto__',
      ...malformed,
      send: json((world) => valid(world).replace('{', '{"__proto__":{"isAdmin":true},')),
    },
    {
      name: 'a field constructor with a prototype',
      ...malformed,
      send: json((world) => valid(world).replace('{', '{"constructor":{"prototype":{"isAdmin":true}},')),
    },
    {
      name: 'deeply nested lists',
      ...malformed,
      pointers: [''],
      send: json(() => '['.repeat(DEEP) + ']'.repeat(DEEP)),
    },
    {
      name: `a body of more than ${mostKibibytes(operation)} KiB`,
      status: 413,
      type: 'too-large',
      send: json((world) =>
        JSON.stringify({ ...operation.body(world), filler: 'x'.repeat(mostKibibytes(operation) * 1024) }),
      ),
    },
    {
      name: 'a form',
      status: 415,
      type: 'unsupported-media-type',
      send: raw('application/x-www-form-urlencoded', () => 'familyName=Sandwort'),
    },
    {
      name: 'XML',
      status: 415,
      type: 'unsupported-media-type',
      send: raw('application/xml', () => '<patient/>'),
    },
    {
      name: 'JSON that names no content type',
      status: 415,
      type: 'unsupported-media-type',
      send: raw(null, valid),
    },
    {
      name: 'JSON under another name',
      status: 415,
      type: 'unsupported-media-type',
      send: raw('application/merge-patch+json', valid),
    },
  ];
}

/** Fields that there are not. A resource of another service may have them: what of it is not kept is told (tests/api/fhir). */
function unknownFields(operation: BodyOperation): readonly BadInput[] {
  if (operation.operationId === 'takeInReferralFhir') return [];
  const json = (text: (world: World) => string) => (world: World) =>
    sendRaw(world, {
      method: operation.method,
      path: operation.path(world),
      type: 'application/json',
      text: text(world),
    });
  return [
    {
      name: 'an unknown field',
      ...malformed,
      pointers: ['/sides~1and~0tildes'],
      codes: ['unrecognized-keys'],
      send: json((world) => JSON.stringify({ ...operation.body(world), 'sides/and~tildes': 1 })),
    },
    {
      name: 'deeply nested objects',
      ...malformed,
      pointers: ['/deep'],
      codes: ['unrecognized-keys'],
      send: json((world) =>
        JSON.stringify(operation.body(world)).replace(
          '{',
          `{"deep":${'{"a":'.repeat(20_000)}1${'}'.repeat(20_000)},`,
        ),
      ),
    },
  ];
}
