import type { Executor } from '../../storage/connection.js';
import { forgetParts, importsHalfIn, ownedParts } from '../../storage/imports/half-in.js';
import type { OwnedPart } from '../../storage/imports/half-in.js';
import { takeOut } from '../../storage/imports/undo.js';
import { recordEventOf } from '../audit/record-event.js';
import type { ToldOf } from '../audit/record-event.js';
import type { Context } from '../context.js';
import { canBeTakenOut, importedIds } from './imported-ids.js';
import { roomForOthers } from './long-work.js';

const PEOPLE_AT_ONCE = 20;

/**
 * Takes out of the record what an import has brought in of which the rest did not follow, some people at a time. Those on
 * whose record somebody has worked meanwhile keep what was brought in for them: it is whole, and somebody relied on it.
 *
 * @param of in whose name; nobody's where a start of the service finds it so
 */
export async function takeBack(context: Context, importId: string, of: ToldOf): Promise<void> {
  const people = byPerson(await ownedParts(context.db, importId));
  let [taken, kept] = [0, 0];
  for (let start = 0; start < people.length; start += PEOPLE_AT_ONCE) {
    const some = people.slice(start, start + PEOPLE_AT_ONCE);
    await context.db.transaction().execute(async (trx) => {
      const keptOfSome = await takeOutUnlessBuiltOn(trx, some);
      await forgetParts(trx, importId, some.flat());
      [taken, kept] = [taken + some.length - keptOfSome, kept + keptOfSome];
    });
    await roomForOthers();
  }
  if (people.length === 0) return;
  await context.db.transaction().execute(async (trx) => {
    const details = { coursesTakenOut: taken, coursesKept: kept };
    await recordEventOf(context, trx, of, { action: 'import-taken-back', subjectId: importId, details });
  });
}

/** Takes back every import that the end of the program has left half in: before anybody reads or writes. */
export async function takeBackHalfIn(context: Context): Promise<number> {
  const imports = await importsHalfIn(context.db);
  for (const { id, teamId } of imports) await takeBack(context, id, { id: null, role: null, teamId });
  return imports.length;
}

/** Whether a sheet of any team is half in the record at this moment, as another process sees it. */
export async function isAnyHalfIn(context: Context): Promise<boolean> {
  return (await importsHalfIn(context.reader)).length > 0;
}

/** @returns how many are kept */
async function takeOutUnlessBuiltOn(
  trx: Executor,
  people: readonly (readonly OwnedPart[])[],
): Promise<number> {
  const all = people.flat();
  if (await canBeTakenOut(trx, all)) {
    await takeOut(trx, importedIds(all));
    return 0;
  }
  let kept = 0;
  for (const parts of people) {
    if (await canBeTakenOut(trx, parts)) await takeOut(trx, importedIds(parts));
    else kept += 1;
  }
  return kept;
}

/** The parts of each person; where the referral was in the record before, those of each course. */
function byPerson(parts: readonly OwnedPart[]): readonly (readonly OwnedPart[])[] {
  const people = new Map<string, OwnedPart[]>();
  for (const part of parts) {
    const key = part.patientId ?? `row ${part.rowNumber}`;
    const others = people.get(key);
    if (others === undefined) people.set(key, [part]);
    else others.push(part);
  }
  return [...people.values()];
}
