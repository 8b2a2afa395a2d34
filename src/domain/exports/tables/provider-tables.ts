import { TEAM_ROLES } from '../../account/role.js';
import { column, ID, INSTANT, OBJECT, OF_TEAM, oneOf, optional, rowOf, TEXT, VERSION } from '../column.js';
import type { RecordTable } from '../record-table.js';

/** Who provides, where, who pays, who entered, and the settings. */
export const PROVIDER_TABLES: readonly RecordTable[] = [
  {
    name: 'team',
    holds: 'The team: one row',
    key: ['id'],
    owned: { by: 'team', column: 'id' },
    columns: [
      column('id', ID, 'Identifies the team'),
      column('name', TEXT, 'Name of the team'),
      column('kind', oneOf(['live', 'demo']), 'Whether it works with people, or with invented ones'),
      column('created_at', INSTANT, 'When it was set up'),
    ],
  },
  {
    name: 'site',
    holds: 'A place where the team works',
    key: ['id'],
    owned: OF_TEAM,
    columns: [
      column('id', ID, 'Identifies the site'),
      column('team_id', rowOf('team'), 'The team'),
      column('name', TEXT, 'Name of the site'),
    ],
  },
  {
    name: 'commissioner',
    holds: 'Somebody who pays, or paid, for people of the team',
    key: ['id'],
    owned: { by: 'named-commissioners' },
    columns: [column('id', ID, 'Identifies the commissioner'), column('name', TEXT, 'Name')],
  },
  {
    name: 'team_commissioner',
    holds: 'That a commissioner pays for the team now',
    key: ['team_id', 'commissioner_id'],
    owned: OF_TEAM,
    columns: [
      column('team_id', rowOf('team'), 'The team'),
      column('commissioner_id', rowOf('commissioner'), 'The commissioner'),
    ],
  },
  {
    name: 'account',
    holds: 'Somebody of the team who entered something or may; without anything by which they sign in',
    key: ['id'],
    owned: OF_TEAM,
    columns: [
      column('id', ID, 'Identifies the account'),
      column('team_id', rowOf('team'), 'The team'),
      column('role', oneOf(TEAM_ROLES), 'What the person may do'),
      column('display_name', TEXT, 'Name as it is shown beside entries', 'staff'),
      column('status', oneOf(['active', 'suspended']), 'Whether the account is in use'),
      column('created_at', INSTANT, 'When it was made'),
      column('version', VERSION, 'How often it was changed, from 1'),
    ],
  },
  {
    name: 'settings',
    holds:
      'A version of the choices of the team: rules, equations, thresholds, targets; the highest one holds',
    key: ['team_id', 'version'],
    owned: OF_TEAM,
    columns: [
      column('team_id', rowOf('team'), 'The team'),
      column('version', VERSION, 'Number of the version'),
      column('document', OBJECT, 'The choices, as JSON'),
      column('created_at', INSTANT, 'Since when it held'),
      optional('created_by', rowOf('account'), 'Who chose', 'staff'),
      optional('reason', TEXT, 'Why it was changed', 'free-text'),
    ],
  },
];
