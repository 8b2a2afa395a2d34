import type { ImportState } from '../../domain/imports/import-record.js';
import type { RowVerdict } from '../../domain/imports/judgement.js';
import type { PassedOver } from '../../domain/imports/row-kind.js';

export const STATE_WORDS: Readonly<Record<ImportState, string>> = {
  draft: 'Not brought in yet',
  done: 'Brought in',
  discarded: 'Discarded',
  undone: 'Undone',
};

export const VERDICT_WORDS: Readonly<Record<RowVerdict, string>> = {
  new: 'New referrals',
  added: 'Add to referrals of the record',
  already: 'In the record already',
  unusual: 'Unusual: to be checked',
  refused: 'Cannot be taken',
  'passed-over': 'Passed over',
};

export const PASSED_OVER_WORDS: Readonly<Record<PassedOver, string>> = {
  blank: 'Nothing stands in the row.',
  headings: 'The headings stand here again.',
  total: 'A sum of other rows.',
};
