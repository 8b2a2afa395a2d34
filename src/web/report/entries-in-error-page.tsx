import { britishDate } from '../../domain/calendar/british-date.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import { periodWords } from '../../domain/calendar/period-words.js';
import { ENTRY_KINDS, entryKindWords } from '../../domain/history/entered-in-error.js';
import type { EntryKind } from '../../domain/history/entered-in-error.js';
import { readEntriesInError } from '../../usecases/reports/list-entries-in-error.js';
import type { NamedEntryInError } from '../../usecases/reports/list-entries-in-error.js';
import { reportRequest } from '../../usecases/reports/report-request.js';
import { attributeText } from '../components/field.js';
import { EmptyState } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { PersonName } from '../people/names.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { readReportAddress, reportQuery } from './report-address.js';

/** What the report keeps out because it was entered in error, each with the reason and a way to it. */
export function entriesInErrorPage(app: WebApp, web: Web): void {
  const { context } = web;
  app.get('/report/entries-in-error', pageOf('page:report-entries-in-error'), async (request, reply) => {
    const today = context.clock.today();
    const { asked } = readReportAddress(request.query, today);
    const read = reportRequest(asked, today);
    if (read.kind === 'refused') return sendRefusal(web, request, reply, read.refusal);
    const { period } = read.value;
    const entries = await readEntriesInError(context, memberOf(request), read.value);
    return sendPage(
      reply,
      <Page frame={frameOf(request, reply)} title={`Entries in error ${periodWords(period)}`}>
        <p class="crumb">
          <a href={attributeText(`/report?${reportQuery(asked)}`)} safe>
            {`Report ${periodWords(period)}`}
          </a>
        </p>
        <h1>Entries in error</h1>
        <p safe>
          {`Dated ${britishDate(period.firstDay)} to ${britishDate(period.lastDay)}, of the whole team. They stay readable, and count in no figure.`}
        </p>
        {entries.length === 0 ? <EmptyState>Nothing is marked as entered in error.</EmptyState> : ''}
        {ENTRY_KINDS.map((kind) => (
          <OfKind kind={kind} entries={entries.filter((entry) => entry.kind === kind)} />
        ))}
      </Page>,
    );
  });
}

const CAPTIONS: Readonly<Record<EntryKind, string>> = {
  referrals: 'Referrals, by day of receipt',
  offers: 'Offers, by day',
  sessions: 'Classes and contacts, by day',
  assessments: 'Assessments, by day',
};

interface OfKindProps {
  readonly kind: EntryKind;
  readonly entries: readonly NamedEntryInError[];
}

function OfKind({ kind, entries }: OfKindProps): JSX.Element {
  if (entries.length === 0) return '';
  return (
    <section id={kind}>
      <Table
        caption={`${CAPTIONS[kind]}: ${entries.length}`}
        isStacked
        columns={[{ head: 'Entry' }, { head: 'Dated' }, { head: 'Marked' }, { head: 'Reason' }]}
        rows={entries.map((entry) => [
          <EntryLink entry={entry} />,
          <Text value={britishDate(entry.datedOn)} />,
          <Text value={londonTime(entry.markedAt)} />,
          <Text value={entry.reason} />,
        ])}
      />
    </section>
  );
}

function EntryLink({ entry }: { readonly entry: NamedEntryInError }): JSX.Element {
  const { kind, id, referralId, person } = entry;
  if (referralId === null) return <a href={`/classes/${id}`}>class</a>;
  return (
    <a href={`/referrals/${referralId}`}>
      {person === null ? entryKindWords(kind) : <PersonName person={person} />}
    </a>
  );
}
