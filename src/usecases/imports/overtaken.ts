import type { CourseKey } from '../../domain/imports/course-draft.js';
import { nameKey } from '../../domain/patient/name-key.js';
import { changesSince } from '../../storage/audit/changes-since.js';
import type { Executor } from '../../storage/connection.js';
import { peopleKnownBy } from '../../storage/imports/courses.js';
import type { Context } from '../context.js';
import type { Trial, Whose } from './trial.js';

/** Whether the record has changed for somebody since a trial. */
export type IsOvertaken = (whose: Whose) => boolean;

/**
 * What of a trial others have overtaken meanwhile: the courses of people whom they have changed.
 *
 * @returns null where nothing of the trial holds any more: another day, or changes that are not those of single people
 */
export async function overtaken(
  context: Context,
  db: Executor,
  teamId: string,
  trial: Pick<Trial, 'since' | 'triedOn'>,
): Promise<IsOvertaken | null> {
  if (context.clock.today() !== trial.triedOn) return null;
  const changes = await changesSince(db, teamId, trial.since);
  if (changes.kind === 'more') return null;
  const known = await peopleKnownBy(db, [...changes.ids]);
  const numbers = new Set(known.map(({ nhsNumber }) => nhsNumber));
  const names = new Set(known.map(nameAndBirth));
  return ({ key, patientId }) =>
    (patientId !== null && changes.ids.has(patientId)) ||
    (key.nhsNumber !== null && numbers.has(key.nhsNumber)) ||
    names.has(nameAndBirth(key));
}

type Named = Pick<CourseKey, 'familyName' | 'givenName' | 'bornOn'>;

function nameAndBirth({ familyName, givenName, bornOn }: Named): string {
  return [nameKey(familyName), nameKey(givenName), bornOn].join('|');
}
