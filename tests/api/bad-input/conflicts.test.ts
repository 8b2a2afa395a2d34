import { expect, it } from 'vitest';
import { startWorld } from '../../support/bad-input.js';
import { sendChanged } from '../../support/bodies.js';
import { expectProblem } from '../../support/response.js';

/* What was right once and is not right twice. Each case brings the record there, then sends the same again. */

const twice: readonly (readonly [operationId: string, changes: object, type: string, existing: boolean])[] = [
  ['registerPatient', { nhsNumber: '9990000026' }, 'patient-already-registered', true],
  ['triageReferral', {}, 'already-triaged', false],
  ['closeReferral', {}, 'already-closed', false],
];

it.each(twice)(
  '%s twice: the second is refused with 409 and writes nothing',
  async (operationId, changes, type, names) => {
    const world = await startWorld();
    const first = await sendChanged(world, operationId, { ...changes });
    expect(first.status, first.text).toBe(201);
    const before = await world.app.countRows();
    const second = await sendChanged(world, operationId, { ...changes });
    expectProblem(second, { status: 409, type });
    const { id } = first.body as { id: string };
    expect(second.body).toEqual(
      names ? expect.objectContaining({ existingId: id }) : expect.not.objectContaining({ existingId: id }),
    );
    expect(await world.app.countRows()).toEqual(before);
    await world.app.close();
  },
);

it('a second open referral of a person is refused with 409, names the open one and writes nothing', async () => {
  const world = await startWorld();
  const before = await world.app.countRows();
  const response = await sendChanged(world, 'registerReferral', {});
  expectProblem(response, { status: 409, type: 'referral-already-open' });
  expect(response.body).toMatchObject({ existingId: world.referralId });
  expect(await world.app.countRows()).toEqual(before);
  await world.app.close();
});

it.each(['triageReferral', 'recordOffer'])(
  '%s is refused with 409 once the referral is closed',
  async (operationId) => {
    const world = await startWorld();
    await sendChanged(world, 'closeReferral', {});
    const before = await world.app.countRows();
    expectProblem(await sendChanged(world, operationId, {}), { status: 409, type: 'already-closed' });
    expect(await world.app.countRows()).toEqual(before);
    await world.app.close();
  },
);
