import { guarded } from '../../domain/history/withheld.js';
import type { CorrectionRefusal } from '../../domain/refusal/correction-refusal.js';
import type { ProblemBody } from './problem.js';
import { RECORD_NAMES } from './record-names.js';

/** What a client is told where a correction is refused. */
export function correctionProblem(refusal: CorrectionRefusal): ProblemBody {
  switch (refusal.code) {
    case 'precondition-required':
      return {
        type: '/problems/precondition-required',
        title: 'Say which version you have',
        status: 428,
        detail: 'Nothing was stored. Read the record and send its ETag as If-Match.',
      };
    case 'bad-precondition':
      return {
        type: '/problems/malformed-request',
        title: 'Malformed request',
        status: 400,
        detail: 'Nothing was stored. If-Match takes ETags as the service gave them out, such as "3".',
        errors: [
          { pointer: 'If-Match', code: 'not-an-etag', message: 'Send the ETag of the record you read.' },
        ],
      };
    case 'entered-in-error':
      return {
        type: '/problems/entered-in-error',
        title: 'Entered in error',
        status: 409,
        detail: `Nothing was stored. The ${RECORD_NAMES[refusal.what]} is marked as entered in error: restore it first, with the reason.`,
      };
    case 'not-entered-in-error':
      return {
        type: '/problems/not-entered-in-error',
        title: 'Not entered in error',
        status: 409,
        detail: `Nothing was stored. The ${RECORD_NAMES[refusal.what]} stands: there is nothing to restore.`,
      };
    case 'patient-merged':
      return {
        type: '/problems/patient-merged',
        title: 'The record was merged into another',
        status: 409,
        detail: 'Nothing was stored. The person is kept in the other record: go on there.',
        existingId: refusal.existingId,
      };
    case 'both-referrals-open':
      return {
        type: '/problems/both-referrals-open',
        title: 'Both records have an open referral',
        status: 409,
        detail:
          'Nothing was stored. One person has one open referral: close that of the duplicate, or mark it as entered in error, and merge then.',
        existingId: refusal.existingId,
      };
    case 'merge-undone':
      return {
        type: '/problems/merge-undone',
        title: 'The merge was undone before',
        status: 409,
        detail: 'Nothing was stored. The two records stand apart.',
      };
    case 'changed-meanwhile':
      return {
        type: '/problems/changed-meanwhile',
        title: 'The record has changed meanwhile',
        status: 412,
        detail: 'Nothing was stored. Look at what changed, read the record again and decide anew.',
        changedMeanwhile: {
          version: refusal.meanwhile.version,
          versions: [...refusal.meanwhile.versions],
          changes: [...guarded(refusal.meanwhile.changes)],
        },
      };
  }
}
