import type { ReleaseRefusal } from '../../domain/refusal/release-refusal.js';
import type { ProblemBody } from './problem.js';

/** What a client is told where a release is refused. */
export function releaseProblem(refusal: ReleaseRefusal): ProblemBody {
  switch (refusal.code) {
    case 'release-refused': {
      const { exposures, trouble } = refusal.attack;
      return {
        type: '/problems/release-refused',
        title: 'The summary would give people away',
        status: 422,
        detail:
          trouble ?? 'Nothing was released. Each table is named with what would keep its counts hidden.',
        errors: exposures.map(({ tableId, tableTitle, figures, low, high, remedy }) => ({
          pointer: tableId === null ? '/period' : `/tables/${tableId}`,
          code: remedy.kind,
          message: `${tableTitle}: ${figures}, could be worked out to lie from ${low} to ${high ?? 'any number'}. ${remedy.words}`,
        })),
      };
    }
    case 'release-exists':
      return {
        type: '/problems/release-exists',
        title: 'The period has been released',
        status: 409,
        detail: `Release ${refusal.existingNumber} is of the same period for the same commissioner. A correction names it and says why.`,
        existingId: String(refusal.existingNumber),
      };
    case 'release-closed':
      return {
        type: '/problems/release-closed',
        title: 'The release no longer stands',
        status: 409,
        detail:
          refusal.why === 'withdrawn'
            ? 'It was withdrawn.'
            : 'It was corrected by another release: name that one.',
      };
  }
}
