import { RELEASE_MODES } from '../../release/policy.js';
import {
  column,
  DIGEST,
  INSTANT,
  OBJECT,
  OF_TEAM,
  oneOf,
  optional,
  ownedThrough,
  rowOf,
  TEXT,
  whole,
} from '../column.js';
import type { ColumnKind, RecordTable } from '../record-table.js';

const NUMBER: ColumnKind = whole(1, 1_000_000_000);

/** Anonymised summaries as they were released. */
export const RELEASE_TABLES: readonly RecordTable[] = [
  {
    name: 'release',
    holds: 'An anonymised summary as it was released, with the counts behind it, which never leave the team',
    key: ['number'],
    owned: OF_TEAM,
    columns: [
      column('number', NUMBER, 'Number of the release'),
      column('team_id', rowOf('team'), 'The team'),
      column('commissioner_id', rowOf('commissioner'), 'For whom it was made'),
      column('financial_year', TEXT, 'The financial year'),
      column('period', TEXT, 'The period'),
      column('mode', oneOf(RELEASE_MODES), 'Whether counts are rounded'),
      optional('corrects', rowOf('release', 'number'), 'The release that it corrects'),
      column('document', OBJECT, 'What left the team, as JSON'),
      column('digest', DIGEST, 'Digest of the document'),
      column('counts', OBJECT, 'The counts behind it, as JSON: small ones are not hidden here'),
      column('counts_digest', DIGEST, 'Digest of the counts'),
      column('attack', OBJECT, 'What the attack found, as JSON'),
      column('attacked_at', INSTANT, 'When it was attacked'),
      column('released_at', INSTANT, 'When it was released'),
      column('released_by', rowOf('account'), 'By whom', 'staff'),
      optional('withdrawn_at', INSTANT, 'When it was withdrawn; empty while it stands'),
      optional('withdrawn_by', rowOf('account'), 'By whom', 'staff'),
      optional('withdrawal_reason', TEXT, 'Why', 'free-text'),
    ],
  },
  {
    name: 'release_file',
    holds: 'A release in one form, as it was written on the day',
    key: ['number', 'form'],
    owned: ownedThrough('number', 'release', 'number'),
    columns: [
      column('number', rowOf('release', 'number'), 'The release'),
      column('form', oneOf(['csv', 'xlsx', 'pdf', 'fhir']), 'The form'),
      column('content', { type: 'file' }, 'The file'),
      column('digest', DIGEST, 'Digest of the file'),
    ],
  },
];
