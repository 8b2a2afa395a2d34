import { britishDate } from '../../domain/calendar/british-date.js';
import { DIAGNOSES } from '../../domain/referral/closed-sets.js';
import { DIAGNOSIS_WORDS } from '../../domain/referral/words.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import type { Place } from '../../usecases/providers.js';
import { exportWorkList } from '../../usecases/exports/export-lists.js';
import { readWorkList } from '../../usecases/work-list/read-work-list.js';
import type { WorkList } from '../../usecases/work-list/work-list-model.js';
import { Select } from '../components/choices.js';
import { attributeText } from '../components/field.js';
import { Button } from '../components/form.js';
import { ButtonLink } from '../components/parts.js';
import { choicesOf, counted } from '../components/words.js';
import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { sendFile } from '../send-file.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { addressOf, fileAddressOf, isNarrowed, readFilter } from './work-list-filter.js';
import type { WorkListFilter } from './work-list-filter.js';
import { WorkListTable } from './work-list-table.js';

/** Entries shown of each group, and of one group alone. */
const SHOWN = 10;
const SHOWN_OF_ONE = 200;

/** The work list: the start page of everybody who works with people. */
export function workListPage(app: WebApp, { context }: Web): void {
  app.get('/work-list', pageOf('page:work-list'), async (request, reply) => {
    const actor = memberOf(request);
    const filter = readFilter(request.query);
    const limit = filter.group === null ? SHOWN : SHOWN_OF_ONE;
    const workList = await readWorkList(context, actor, { ...filter, limit });
    const sites = await sitesOfTeam(context, actor);
    return sendPage(
      reply,
      <Page frame={frameOf(request, reply)} title="Work list">
        <div class="head">
          <h1>Work list</h1>
          <p class="muted" safe>
            {openWords(workList)}
          </p>
          <ButtonLink href="/referrals/new" kind="primary">
            Register a referral
          </ButtonLink>
        </div>
        <Filters filter={filter} sites={sites} workList={workList} />
        <Counts workList={workList} filter={filter} />
        <WorkListTable
          workList={workList}
          filter={filter}
          role={actor.role}
          siteNames={new Map(sites.map(({ id, name }) => [id, name]))}
        />
        <p class="downloads not-printed">
          <a href={attributeText(fileAddressOf(filter))}>Take this list with you (CSV): it names people</a>
        </p>
      </Page>,
    );
  });

  app.get('/work-list.csv', pageOf('page:work-list'), async (request, reply) =>
    sendFile(reply, await exportWorkList(context, memberOf(request), readFilter(request.query))),
  );
}

function openWords({ asAt, openReferrals, quietReferrals }: WorkList): string {
  const open = counted(openReferrals, 'open referral', 'open referrals');
  return `${britishDate(asAt)}: ${open}; nothing is due for ${quietReferrals}.`;
}

interface FiltersProps {
  readonly filter: WorkListFilter;
  readonly sites: readonly Place[];
  readonly workList: WorkList;
}

/** What narrows the list stands in the address: a narrowed list can be kept as a bookmark. */
function Filters({ filter, sites, workList }: FiltersProps): JSX.Element {
  return (
    <form
      method="get"
      action="/work-list"
      class={isNarrowed(filter) ? 'filters row' : 'filters row not-printed'}
      aria-label="Narrow the list"
    >
      <Select
        name="site"
        label="Site"
        none="Every site"
        value={filter.siteId}
        choices={sites.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <Select
        name="clinician"
        label="Clinician"
        none="Everybody"
        value={filter.clinicianId}
        choices={workList.clinicians.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <Select
        name="diagnosis"
        label="Diagnosis"
        none="Every diagnosis"
        value={filter.diagnosis}
        choices={choicesOf(DIAGNOSES, DIAGNOSIS_WORDS)}
      />
      {filter.group === null ? '' : <input type="hidden" name="group" value={filter.group} />}
      <div class="actions">
        <Button>Show</Button>
        {isNarrowed(filter) || filter.group !== null ? <a href="/work-list">Show everything</a> : ''}
      </div>
    </form>
  );
}

/** How much is due in each group, with a way to it. */
function Counts({
  workList,
  filter,
}: {
  readonly workList: WorkList;
  readonly filter: WorkListFilter;
}): JSX.Element {
  if (filter.group !== null) {
    return (
      <p>
        <a href={attributeText(addressOf({ ...filter, group: null }))}>Back to every group</a>
      </p>
    );
  }
  return (
    <nav aria-label="Groups of the work list">
      <ul class="counts">
        {workList.groups.map(({ group, title, count, late }) => (
          <li>
            <a href={`#${group}`} safe>
              {title}
            </a>{' '}
            <strong safe>{String(count)}</strong>
            {late === 0 ? '' : <span class="muted" safe>{` (${late} late)`}</span>}
          </li>
        ))}
      </ul>
    </nav>
  );
}
