import type { Assessment, AssessmentEntry } from '../assessment/assessment.js';
import { toNumber } from '../exact/fraction.js';
import type { Patient } from '../patient/patient.js';
import type { Referral } from '../referral/referral.js';
import type { Attendance, Session } from '../session/session.js';

/** Records as their history tells them: parts of a list by what names them, and not by their place in it. */

/** A patient without its keys. */
export function stateOfPatient({ id: _id, version: _version, ...state }: Patient): object {
  return state;
}

/** A referral, each offer by its id. */
export function stateOfReferral({ id: _id, version: _version, offers, ...state }: Referral): object {
  return { ...state, offers: byKey(offers, (offer) => offer.id) };
}

/** A session, each entry of its register by the id of the referral. */
export function stateOfSession({
  id: _id,
  version: _version,
  attendances,
  ...state
}: Session & { readonly attendances: readonly Attendance[] }): object {
  return {
    ...state,
    attendances: Object.fromEntries(attendances.map(({ referralId, outcome }) => [referralId, outcome])),
  };
}

/** An assessment, each test by its id and attempt, and the exact scores as the nearest decimal number. */
export function stateOfAssessment(assessment: Assessment): object {
  const { entry, scores, enteredInError } = assessment;
  return {
    ...entry,
    enteredInError,
    ...stateOfTests(entry),
    scores: Object.fromEntries(scores.map(({ measure, value }) => [measure, toNumber(value)])),
  };
}

/** The tests and questionnaires of an assessment, each by its id and attempt. */
export function stateOfTests(entry: AssessmentEntry): object {
  return {
    walkTests: byKey(entry.walkTests, (walk) => `${walk.test}.${walk.attempt}`),
    sitToStands: byKey(entry.sitToStands, (stand) => stand.test),
    questionnaires: byKey(
      entry.questionnaires.map((each) => ({
        ...each,
        typedScores: Object.fromEntries(each.typedScores.map(({ measure, value }) => [measure, value])),
      })),
      (each) => each.questionnaire,
    ),
    physicalTests: byKey(entry.physicalTests, (test) => test.test),
  };
}

function byKey<Part extends object>(parts: readonly Part[], keyOf: (part: Part) => string): object {
  return Object.fromEntries(parts.map((part) => [keyOf(part), part]));
}
