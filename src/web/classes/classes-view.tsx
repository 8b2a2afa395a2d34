import { addDays } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Place } from '../../usecases/providers.js';
import type { SessionRegister } from '../../usecases/sessions/keep-register.js';
import { Select } from '../components/choices.js';
import { attributeText } from '../components/field.js';
import { Button } from '../components/form.js';
import { ButtonLink, EmptyState } from '../components/parts.js';
import { Table } from '../components/table.js';
import { capital } from '../components/words.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { dayWords, kindWords, registerWords } from './class-words.js';

interface ClassesViewProps {
  readonly frame: Frame;
  readonly today: PlainDate;
  /** The Monday of the week shown. */
  readonly monday: PlainDate;
  readonly siteId: string | null;
  readonly sites: readonly Place[];
  readonly sessions: readonly SessionRegister[];
}

/** The classes of a week, today's first, by day and site. */
export function ClassesView(props: ClassesViewProps): JSX.Element {
  const { frame, today, monday, siteId, sites, sessions } = props;
  const siteNames = new Map(sites.map(({ id, name }) => [id, name]));
  const days = [...new Set(sessions.map(({ heldOn }) => heldOn))].sort();
  const ordered = days.includes(today) ? [today, ...days.filter((day) => day !== today)] : days;
  const weekOf = (days7: number): string => addressOf(addDays(monday, days7), siteId);
  return (
    <Page frame={frame} title="Classes">
      <div class="head">
        <h1>Classes</h1>
        <p class="muted" safe>
          {`Week of ${dayWords(monday)}`}
        </p>
        <ButtonLink href="/classes/new" kind="primary">
          New class
        </ButtonLink>
      </div>
      <form method="get" action="/classes" class="filters row" aria-label="Narrow the list">
        <input type="hidden" name="week" value={monday} />
        <Select
          name="site"
          label="Site"
          none="Every site"
          value={siteId}
          choices={sites.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <div class="actions">
          <Button>Show</Button>
        </div>
      </form>
      <nav class="pager" aria-label="Weeks">
        <a href={attributeText(weekOf(-7))}>Week before</a>
        <a href={attributeText(addressOf(today, siteId))}>This week</a>
        <a href={attributeText(weekOf(7))}>Week after</a>
      </nav>
      {ordered.length === 0 ? (
        <EmptyState>No class of this week is in the record yet.</EmptyState>
      ) : (
        <div class="aligned">
          {ordered.map((day) => (
            <Day
              day={day}
              isToday={day === today}
              sessions={sessions.filter(({ heldOn }) => heldOn === day)}
              siteNames={siteNames}
            />
          ))}
        </div>
      )}
    </Page>
  );
}

interface DayProps {
  readonly day: PlainDate;
  readonly isToday: boolean;
  readonly sessions: readonly SessionRegister[];
  readonly siteNames: ReadonlyMap<string, string>;
}

function Day({ day, isToday, sessions, siteNames }: DayProps): JSX.Element {
  const nameOf = ({ siteId }: SessionRegister): string => siteNames.get(siteId) ?? '';
  const rows = [...sessions].sort((a, b) => nameOf(a).localeCompare(nameOf(b), 'en-GB'));
  return (
    <Table
      caption={isToday ? `Today, ${dayWords(day)}` : dayWords(day)}
      columns={[{ head: 'Site' }, { head: 'How' }, { head: 'Register' }]}
      rows={rows.map((session) => [
        <a href={`/classes/${session.id}`}>
          <span safe>{nameOf(session)}</span>
          <span class="visually-hidden" safe>{`, ${dayWords(day)}`}</span>
        </a>,
        <span safe>{capital(kindWords(session))}</span>,
        session.attendances.length === 0 ? (
          <span class="muted">nobody registered yet</span>
        ) : (
          <span safe>{registerWords(session.attendances)}</span>
        ),
      ])}
    />
  );
}

function addressOf(week: PlainDate, siteId: string | null): string {
  return `/classes?week=${week}${siteId === null ? '' : `&site=${siteId}`}`;
}
