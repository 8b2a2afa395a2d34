import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { refusesAll, startWorld } from '../../support/bad-input.js';
import type { BadInput, World } from '../../support/bad-input.js';
import { sendChanged } from '../../support/bodies.js';
import type { Body } from '../../support/entries.js';

/*
 * The tests take place on 25 November 2026; the referral of the world was received on 2 April 2026 and the person was
 * born on 9 March 1954.
 */
const TOMORROW = '2026-11-26';
const LAST_DAY_OF_PLANS = '2028-11-25';

/** Every date field of every body, with what makes the rest of the body fit. */
const DATE_FIELDS: readonly (readonly [operationId: string, field: string, around?: Body])[] = [
  ['registerPatient', 'bornOn'],
  ['searchPatients', 'bornOn'],
  ['registerReferral', 'receivedOn'],
  ['registerReferral', 'hospitalDischargedOn', { pathway: 'after-exacerbation' }],
  ['registerReferral', 'plannedStartOn'],
  ['registerReferral', 'exercisePlanGivenOn'],
  ['triageReferral', 'decidedOn'],
  ['recordOffer', 'offeredOn'],
  ['recordOffer', 'appointmentOn'],
  ['recordOffer', 'respondedOn'],
  ['closeReferral', 'closedOn'],
  ['closeReferral', 'exercisePlanGivenOn'],
  ['recordAssessment', 'assessedOn'],
  ['correctAssessment', 'assessedOn'],
  ['holdSession', 'heldOn'],
];

/** Fields that speak of plans, and may lie in the future. */
const PLANS = ['plannedStartOn', 'appointmentOn', 'heldOn'];

/** Date fields that may be corrected. */
const CORRECTED: readonly (readonly [operationId: string, field: string, around?: Body])[] = [
  ['correctPatient', 'bornOn'],
  ['correctReferral', 'receivedOn'],
  ['correctReferral', 'hospitalDischargedOn', { pathway: 'after-exacerbation' }],
  ['correctReferral', 'plannedStartOn'],
  ['correctReferral', 'exercisePlanGivenOn'],
];

refusesAll([
  ...DATE_FIELDS.flatMap(([operationId, field, around]) => [
    ...notADate(operationId, field, (date) => ({ ...around, [field]: date }), `/${field}`),
    ...(operationId === 'searchPatients'
      ? []
      : [notYet(operationId, field, (date) => ({ ...around, [field]: date }), `/${field}`)]),
  ]),
  ...CORRECTED.flatMap(([operationId, field, around]) => {
    const changes = (date: unknown) => ({ changes: { ...around, [field]: date } });
    return [
      ...notADate(operationId, field, changes, `/changes/${field}`),
      notYet(operationId, field, changes, `/changes/${field}`),
    ];
  }),
  ...outOfOrder([
    ['registerReferral', { receivedOn: '1954-03-08' }, '/receivedOn', 'before-birth'],
    ['registerReferral', { plannedStartOn: '2026-04-01' }, '/plannedStartOn', 'before-receipt'],
    ['registerReferral', { exercisePlanGivenOn: '2026-04-01' }, '/exercisePlanGivenOn', 'before-receipt'],
    ['triageReferral', { decidedOn: '2026-04-01' }, '/decidedOn', 'before-receipt'],
    ['recordOffer', { offeredOn: '2026-04-01' }, '/offeredOn', 'before-receipt'],
    ['closeReferral', { closedOn: '2026-04-01' }, '/closedOn', 'before-receipt'],
    ['closeReferral', { exercisePlanGivenOn: '2026-04-01' }, '/exercisePlanGivenOn', 'before-receipt'],
    ['recordAssessment', { assessedOn: '2026-04-01' }, '/assessedOn', 'before-receipt'],
    ['correctAssessment', { assessedOn: '2026-04-01' }, '/assessedOn', 'before-receipt'],
    ['registerPatient', { bornOn: '1905-11-25', nhsNumber: '9990000042' }, '/bornOn', 'out-of-range'],
  ]),
]);

/** Texts and values that are no calendar date: 400 at the very field. */
function notADate(
  operationId: string,
  field: string,
  changes: (date: unknown) => Body,
  pointer: string,
): readonly BadInput[] {
  const values: readonly unknown[] = [
    '2026-02-30',
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-4-2',
    '02/04/2026',
    '2026-04-02T00:00:00Z',
    '1799-12-31',
    '',
    20_260_402,
  ];
  return values.map((value) => ({
    name: `${JSON.stringify(value)} as ${field} of ${operationId}`,
    status: 400,
    type: 'malformed-request',
    pointers: [pointer],
    send: (world: World) => sendChanged(world, operationId, changes(value)),
  }));
}

/** What has happened cannot be in the future; what is planned cannot be more than two years away. */
function notYet(
  operationId: string,
  field: string,
  changes: (date: unknown) => Body,
  pointer: string,
): BadInput {
  const isPlan = PLANS.includes(field);
  const date = isPlan ? '2028-11-26' : TOMORROW;
  return {
    name: `${date} as ${field} of ${operationId}`,
    status: 422,
    type: 'rules-broken',
    pointers: [pointer],
    codes: [isPlan ? 'too-far-ahead' : 'in-the-future'],
    send: (world) => sendChanged(world, operationId, changes(date)),
  };
}

function outOfOrder(
  cases: readonly (readonly [operationId: string, changes: Body, pointer: string, code: string])[],
): readonly BadInput[] {
  return cases.map(([operationId, changes, pointer, code]) => ({
    name: `${JSON.stringify(changes)} in ${operationId}: ${code}`,
    status: 422,
    type: 'rules-broken',
    pointers: [pointer],
    codes: [code],
    send: (world: World) => sendChanged(world, operationId, changes),
  }));
}

describe('a date that is just right', () => {
  let world: World;
  beforeAll(async () => {
    world = await startWorld();
  });
  afterAll(() => world.app.close());

  it.each([
    ['recordOffer', { appointmentOn: LAST_DAY_OF_PLANS }],
    ['holdSession', { heldOn: LAST_DAY_OF_PLANS }],
    ['correctReferral', { changes: { plannedStartOn: LAST_DAY_OF_PLANS } }],
    ['recordAssessment', { assessedOn: '2026-04-02' }],
    ['recordAssessment', { assessedOn: '2026-11-25' }],
    ['triageReferral', { decidedOn: '2026-11-25' }],
  ])('is taken by %s: %j', async (operationId, changes) => {
    const response = await sendChanged(world, operationId, changes);
    expect(response.status, response.text).toBeLessThan(300);
  });
});
