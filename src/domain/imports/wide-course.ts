import type { PlainDate } from '../calendar/plain-date.js';
import { TIMEPOINTS } from '../referral/closed-sets.js';
import { assessmentOf } from './assessment-of-row.js';
import type { CourseDraft, Sourced } from './course-draft.js';
import { closureOf, personOf, referralOf, sessionsOf, triageOf } from './course-of-row.js';
import type { Built, MissingValue } from './course-of-row.js';
import { rowValues } from './row-values.js';
import type { ReadRow } from './read-row.js';

/**
 * The course of a referral that stands in one wide row.
 *
 * @returns the course, or everything that is missing in the row
 */
export function wideCourse(
  read: ReadRow,
  { siteId, today }: { readonly siteId: string | null; readonly today: PlainDate },
): { readonly course: CourseDraft | null; readonly missing: readonly MissingValue[] } {
  const row = rowValues(read.values);
  const [person, referral, triage, closure] = [
    personOf(row),
    referralOf(row, siteId),
    triageOf(row),
    closureOf(row),
  ];
  const site = row.text('referral.site') ?? siteId ?? '';
  const assessments = TIMEPOINTS.map((timepoint) => assessmentOf(row, timepoint, site)).filter(
    (each) => each !== null,
  );
  const assessed = assessments.flatMap((each) =>
    each.kind === 'built' && each.built.part.timepoint !== 'follow-up' ? [each.built.part.assessedOn] : [],
  );
  const latest = row.date('closure.closedOn') ?? assessed.at(-1) ?? today;
  const sessions = sessionsOf(row, latest);
  const missing = [person, referral, triage, closure, sessions, ...assessments].flatMap((each) =>
    each?.kind === 'missing' ? each.faults : [],
  );
  if (person.kind === 'missing' || referral.kind === 'missing' || missing.length > 0)
    return { course: null, missing };
  const { nhsNumber, familyName, givenName, bornOn } = person.built.part;
  const course: CourseDraft = {
    rowNumbers: [read.number],
    person: person.built,
    referral: referral.built,
    triage: builtOrNull(triage),
    sessions: builtOrNull(sessions),
    closure: builtOrNull(closure),
    assessments: assessments.flatMap((each) => (each.kind === 'built' ? [each.built] : [])),
    key: { nhsNumber, familyName, givenName, bornOn, receivedOn: referral.built.part.receivedOn },
  };
  return { course, missing };
}

function builtOrNull<Part>(each: Built<Part> | null): Sourced<Part> | null {
  return each?.kind === 'built' ? each.built : null;
}
