import { britishDate } from '../../domain/calendar/british-date.js';
import { DIAGNOSIS_WORDS, MODE_WORDS } from '../../domain/referral/words.js';
import type { TeamMember } from '../../usecases/context.js';
import type { WorkList, WorkListEntry, WorkListGroup } from '../../usecases/work-list/work-list-model.js';
import { attributeText } from '../components/field.js';
import { capital } from '../components/words.js';
import { PersonName, spokenName } from '../people/names.js';
import { lateWords } from './late-words.js';
import { whereDone } from './where-done.js';
import { addressOf } from './work-list-filter.js';
import type { WorkListFilter } from './work-list-filter.js';

interface WorkListTableProps {
  readonly workList: WorkList;
  readonly filter: WorkListFilter;
  readonly role: TeamMember['role'];
  readonly siteNames: ReadonlyMap<string, string>;
}

const COLUMNS: readonly string[] = ['Who', 'What is due', 'How late', 'Site', 'Clinician', 'Next'];

/** What is due in one table, a part of it for each group, the oldest first. */
export function WorkListTable({ workList, ...props }: WorkListTableProps): JSX.Element {
  return (
    <div class="table" role="region" aria-label="What is due" tabindex="0">
      <table class="work">
        <caption class="visually-hidden" safe>{`What is due on ${britishDate(workList.asAt)}`}</caption>
        <thead>
          <tr>
            {COLUMNS.map((head) => (
              <th scope="col" safe>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        {workList.groups.map((group) => (
          <Group group={group} {...props} />
        ))}
      </table>
    </div>
  );
}

type GroupProps = Omit<WorkListTableProps, 'workList'> & { readonly group: WorkListGroup };

function Group({ group, filter, role, siteNames }: GroupProps): JSX.Element {
  const span = String(COLUMNS.length);
  return (
    <tbody id={group.group}>
      <tr class="group">
        <th colspan={span} scope="rowgroup">
          <span safe>{group.title}</span>{' '}
          <span class="count" safe>
            {String(group.count)}
          </span>{' '}
          <span class="muted" safe>
            {group.count === 0 ? group.whenEmpty : group.explanation}
          </span>
        </th>
      </tr>
      {group.entries.map((entry) => (
        <Row entry={entry} role={role} siteNames={siteNames} />
      ))}
      {group.more === 0 ? (
        ''
      ) : (
        <tr class="more">
          <td colspan={span}>
            <a href={attributeText(addressOf({ ...filter, group: group.group }))} safe>
              {filter.group === null
                ? `${group.more} more: show all of ${group.title.toLowerCase()}`
                : `${group.more} more are not shown: narrow the list`}
            </a>
          </td>
        </tr>
      )}
    </tbody>
  );
}

interface RowProps {
  readonly entry: WorkListEntry;
  readonly role: TeamMember['role'];
  readonly siteNames: ReadonlyMap<string, string>;
}

function Row({ entry, role, siteNames }: RowProps): JSX.Element {
  const { verb, address } = whereDone(entry, role);
  const isLate = entry.daysLate > 0;
  return (
    <tr>
      <th scope="row">
        {entry.kind === 'class' ? (
          <a href={attributeText(address)}>Class</a>
        ) : (
          <>
            <a href={`/referrals/${entry.id}`}>
              <PersonName person={entry} />
            </a>{' '}
            <span class="muted detail" safe>
              {DIAGNOSIS_WORDS[entry.diagnosis]}
            </span>
          </>
        )}
      </th>
      <td class="reason" safe>
        {entry.kind === 'class' ? classReason(entry) : entry.reason}
      </td>
      <td class="late">
        <span class={isLate ? 'overdue' : ''} safe>
          {lateWords(entry.daysLate)}
        </span>
      </td>
      <td class="site" safe>
        {siteNames.get(entry.siteId) ?? ''}
      </td>
      <td class="clinician" safe>
        {entry.kind === 'class' ? '' : (entry.clinician?.name ?? 'nobody yet')}
      </td>
      <td class="step">
        <a
          href={attributeText(address)}
          aria-label={attributeText(`${verb}: ${whoOf(entry, siteNames)}`)}
          safe
        >
          {verb}
        </a>
      </td>
    </tr>
  );
}

function whoOf(entry: WorkListEntry, siteNames: ReadonlyMap<string, string>): string {
  if (entry.kind === 'referral') return spokenName(entry);
  return `class of ${britishDate(entry.dueOn)}, ${siteNames.get(entry.siteId) ?? ''}`;
}

function classReason(entry: Extract<WorkListEntry, { kind: 'class' }>): string {
  const kind = entry.isSupervised ? '' : ', unsupervised';
  return `${entry.reason}. ${capital(MODE_WORDS[entry.mode])}${kind}`;
}
