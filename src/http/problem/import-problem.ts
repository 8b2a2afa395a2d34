import type { ImportRefusal } from '../../domain/refusal/import-refusal.js';
import type { ProblemBody } from './problem.js';

/** The part of the mapping that is about imports. */
export function importProblem(refusal: ImportRefusal): ProblemBody {
  switch (refusal.code) {
    case 'file-refused':
      return {
        type: '/problems/file-refused',
        title: 'The file cannot be read',
        status: 422,
        detail: `Nothing was kept. ${refusal.message}`,
      };
    case 'questions-open':
      return {
        type: '/problems/questions-open',
        title: 'Something must be said of the columns first',
        status: 409,
        detail: `Nothing was brought in. ${refusal.questions.slice(0, 5).join(' ')}`,
      };
    case 'import-over':
      return {
        type: '/problems/import-over',
        title: 'The import is over',
        status: 409,
        detail:
          'It was brought in, discarded or undone, or its file is not kept any more. Nothing was changed.',
      };
    case 'rows-refused':
      return {
        type: '/problems/rows-refused',
        title: 'Some rows cannot be taken',
        status: 409,
        detail: `Nothing was brought in: ${refusal.refusedRows} rows cannot be taken, and all or none were asked for.`,
      };
    case 'import-built-on':
      return {
        type: '/problems/import-built-on',
        title: 'The import cannot be undone any more',
        status: 409,
        detail:
          'Nothing was changed. Something was recorded since on what it brought in, or it decided or closed referrals that were there before. Correct those one by one.',
      };
    case 'import-underway':
      return {
        type: '/problems/import-underway',
        title: 'A sheet is being brought in',
        status: 503,
        detail:
          'Nothing was changed. Until the sheet is whole in the record, figures of the team are neither counted nor exported. Try again in a minute.',
      };
  }
}
