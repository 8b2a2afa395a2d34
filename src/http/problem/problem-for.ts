import type { Refusal } from '../../domain/refusal/refusal.js';
import { accountProblem } from './account-problem.js';
import { importProblem } from './import-problem.js';
import { correctionProblem } from './correction-problem.js';
import { releaseProblem } from './release-problem.js';
import type { ProblemBody } from './problem.js';
import { RECORD_NAMES } from './record-names.js';

/** The one mapping from what a use case refuses to what a client is told. */
export function problemFor(refusal: Refusal): ProblemBody {
  switch (refusal.code) {
    case 'not-found':
      return {
        type: '/problems/not-found',
        title: 'Not found',
        status: 404,
        detail: `There is no such ${RECORD_NAMES[refusal.what]}.`,
      };
    case 'rules-broken':
      return {
        type: '/problems/rules-broken',
        title: 'The entry breaks a rule',
        status: 422,
        detail: 'Nothing was stored. Each field that is wrong is named.',
        errors: [...refusal.faults],
      };
    case 'please-check':
      return {
        type: '/problems/please-check',
        title: 'Please check unusual values',
        status: 422,
        detail:
          'Nothing was stored. Correct each value named, or send the entry again with its pointer listed in "confirmed".',
        errors: [...refusal.faults],
      };
    case 'patient-already-registered':
      return {
        type: '/problems/patient-already-registered',
        title: 'The person is already registered',
        status: 409,
        detail:
          'The team has a record with this NHS number, and nothing was stored. Compare the two; if it is the same person, register the referral for the record that there is.',
        existingId: refusal.existingId,
      };
    case 'referral-already-open':
      return {
        type: '/problems/referral-already-open',
        title: 'A referral is already open',
        status: 409,
        detail: 'The person has an open referral. Close it before you register another.',
        existingId: refusal.existingId,
      };
    case 'assessment-already-recorded':
      return {
        type: '/problems/assessment-already-recorded',
        title: 'The assessment is recorded already',
        status: 409,
        detail:
          'The referral has an assessment of this timepoint and day with the same content, and nothing was stored. A second visit differs in its day or in what was measured; a mistake is corrected in the assessment that there is.',
        existingId: refusal.existingId,
      };
    case 'already-triaged':
      return {
        type: '/problems/already-triaged',
        title: 'Already decided',
        status: 409,
        detail: 'The referral has a triage decision.',
      };
    case 'not-triaged':
      return {
        type: '/problems/not-triaged',
        title: 'Not decided yet',
        status: 409,
        detail: 'The referral has no triage decision that could be corrected.',
      };
    case 'already-closed':
      return {
        type: '/problems/already-closed',
        title: 'Already closed',
        status: 409,
        detail: 'The referral is closed.',
      };
    case 'not-closed':
      return {
        type: '/problems/not-closed',
        title: 'Not closed',
        status: 409,
        detail: 'The referral is open: it has no closure that could be corrected.',
      };
    case 'already-acknowledged':
      return {
        type: '/problems/already-acknowledged',
        title: 'Already acknowledged',
        status: 409,
        detail: 'Somebody has put a name to this caution.',
      };
    case 'sign-in-refused':
    case 'no-role-here':
    case 'sign-in-delayed':
    case 'session-over':
    case 'invitation-not-valid':
    case 'sign-in-name-taken':
    case 'second-factor-present':
    case 'last-lead':
    case 'own-account':
      return accountProblem(refusal);
    case 'precondition-required':
    case 'bad-precondition':
    case 'changed-meanwhile':
    case 'entered-in-error':
    case 'not-entered-in-error':
    case 'patient-merged':
    case 'both-referrals-open':
    case 'merge-undone':
      return correctionProblem(refusal);
    case 'stale-draft':
      return {
        type: '/problems/changed-meanwhile',
        title: 'The draft has changed meanwhile',
        status: 412,
        detail: `Nothing was stored. ${refusal.saved?.byName ?? 'Nobody'} ${DRAFT_ENDS[refusal.state]}: read it again.`,
      };
    case 'release-refused':
    case 'release-exists':
    case 'release-closed':
      return releaseProblem(refusal);
    case 'no-letter':
      return {
        type: '/problems/no-letter',
        title: 'There is no such letter',
        status: 409,
        detail:
          refusal.why === 'died'
            ? 'The person has died: there is no letter to them.'
            : 'The referral was registered in error: there are no letters about it.',
      };
    case 'bad-cursor':
      return {
        type: '/problems/malformed-request',
        title: 'Malformed request',
        status: 400,
        detail: 'The cursor is not one that this list gave out.',
        errors: [
          { pointer: 'cursor', code: 'bad-cursor', message: 'Use the nextCursor of the page before.' },
        ],
      };
    case 'key-used-otherwise':
      return {
        type: '/problems/idempotency-key-used-otherwise',
        title: 'The key was used for another request',
        status: 409,
        detail: 'Nothing was stored. A new request needs an Idempotency-Key of its own.',
      };
    case 'still-kept':
      return {
        type: '/problems/still-kept',
        title: 'The record is still to be kept',
        status: 409,
        detail:
          refusal.keptUntil === null
            ? 'Nothing was deleted: a referral is open.'
            : `Nothing was deleted: by the retention setting of the team the record is kept until ${refusal.keptUntil}.`,
      };
    case 'answer-not-kept':
      return {
        type: '/problems/answer-not-kept',
        title: 'The request was carried out before',
        status: 409,
        detail:
          'A request with this Idempotency-Key was carried out once and is not carried out again; its answer was not kept. Look at what it made.',
        ...(refusal.existingId === null ? {} : { existingId: refusal.existingId }),
      };
    case 'file-refused':
    case 'questions-open':
    case 'import-over':
    case 'rows-refused':
    case 'import-built-on':
    case 'import-underway':
      return importProblem(refusal);
    default:
      return refusal satisfies never;
  }
}

const DRAFT_ENDS = {
  none: 'has saved a draft yet',
  open: 'saved this draft on another page or device',
  recorded: 'has recorded the assessment',
  discarded: 'has discarded the draft',
} as const;

/** The same refusal, its pointers leading into a part of the body, such as `/changes`. */
export function within(part: string, refusal: Refusal): Refusal {
  if (refusal.code !== 'rules-broken' && refusal.code !== 'please-check') return refusal;
  return {
    code: refusal.code,
    faults: refusal.faults.map((fault) => ({ ...fault, pointer: part + fault.pointer })),
  };
}
