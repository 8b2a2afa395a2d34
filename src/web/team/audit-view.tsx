import type { AuditEvent } from '../../domain/audit/audit-event.js';
import { ROLES } from '../../domain/account/role.js';
import { ROLE_WORDS } from '../../domain/account/role-words.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import type { AccountView } from '../../usecases/accounts/account-view.js';
import { Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { attributeText } from '../components/field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { EmptyState, Pager } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { TextField } from '../components/text-fields.js';
import { typedDateOf } from '../forms/date-entry.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import { actionWords, detailLines } from './audit-words.js';
import { TeamPage } from './team-page.js';

interface AuditViewProps {
  readonly frame: Frame;
  readonly query: FormValues;
  readonly events: readonly AuditEvent[];
  readonly people: readonly AccountView[];
  /** Names of the sites and commissioners of the team, by id. */
  readonly placeNames: ReadonlyMap<string, string>;
  readonly errors: FormErrors;
  readonly first: string | null;
  readonly next: string | null;
}

/** The audit trail: who did, read or was refused what. */
export function AuditView(props: AuditViewProps): JSX.Element {
  const { frame, events, people, placeNames, errors, first, next } = props;
  const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
  return (
    <TeamPage frame={frame} title="Audit trail" hasErrors={errors.length > 0}>
      <p>
        Every change, every reading of somebody's record, every sign-in and every refusal, latest first. An
        entry can be neither changed nor removed.
      </p>
      <ErrorSummary errors={errors} title="Please mend this first" />
      <FilterForms {...props} />
      {events.length === 0 ? (
        <EmptyState>
          {next === null
            ? 'Nothing of this kind is in the trail.'
            : 'Nothing of this kind is in this part of the trail; earlier parts follow.'}
        </EmptyState>
      ) : (
        <Table
          caption={`${events.length} entries, latest first; times of London`}
          isStacked
          columns={[
            { head: 'When' },
            { head: 'Who' },
            { head: 'What' },
            { head: 'Record' },
            { head: 'Details' },
          ]}
          rows={events.map((event) => [
            <Text value={londonTime(event.occurredAt)} />,
            <Text value={whoWords(event, names)} />,
            <Text value={actionWords(event.action)} />,
            <RecordLinks event={event} />,
            <DetailList event={event} placeNames={placeNames} />,
          ])}
        />
      )}
      <Pager first={first} next={next} what="entries" />
    </TeamPage>
  );
}

function FilterForms({ frame, query, people, errors }: AuditViewProps): JSX.Element {
  const patient = textOf(query, 'patient');
  return (
    <>
      <form method="get" action="/team/audit-trail" class="panel" aria-label="Narrow the trail">
        {patient === '' ? '' : <input type="hidden" name="patient" value={attributeText(patient)} />}
        <div class="row">
          <Select
            name="person"
            label="Who"
            none="Everybody"
            choices={people.map(({ id, displayName }) => ({ value: id, label: displayName }))}
            value={textOf(query, 'person')}
            error={errorAt(errors, 'person')}
          />
          <DateField
            name="from"
            label="From"
            value={typedDateOf(query, 'from')}
            error={errorAt(errors, 'from')}
          />
          <DateField
            name="to"
            label="Up to and with"
            value={typedDateOf(query, 'to')}
            error={errorAt(errors, 'to')}
          />
          <div class="actions">
            <Button kind="primary">Show</Button>
            <a href="/team/audit-trail">Show all</a>
          </div>
        </div>
        {patient === '' ? (
          ''
        ) : (
          <p>
            Only entries about one patient are shown: those of the record, and those that list the patient
            among others. A part of the trail is looked through at a time, so that a page may be short.
          </p>
        )}
      </form>
      <Form frame={frame} action="/team/audit-trail/patient" class="panel" label="Entries about one patient">
        <div class="row">
          <TextField
            name="nhsNumber"
            label="Entries about the patient with the NHS number"
            inputmode="numeric"
            autocomplete="off"
            maxlength={20}
            error={errorAt(errors, 'nhsNumber')}
          />
          <div class="actions">
            <Button>Find</Button>
          </div>
        </div>
      </Form>
    </>
  );
}

function whoWords({ accountId, role }: AuditEvent, names: ReadonlyMap<string, string>): string {
  const name = accountId === null ? 'nobody signed in' : (names.get(accountId) ?? 'somebody who left');
  const known = ROLES.find((each) => each === role);
  return known === undefined ? name : `${name}, ${ROLE_WORDS[known].toLowerCase()}`;
}

function RecordLinks({ event }: { readonly event: AuditEvent }): JSX.Element {
  const { patientId } = event;
  if (patientId === null) return '';
  return <a href={`/team/audit-trail?patient=${encodeURIComponent(patientId)}`}>All of this patient</a>;
}

function DetailList({
  event,
  placeNames,
}: Pick<AuditViewProps, 'placeNames'> & { readonly event: AuditEvent }): JSX.Element {
  const lines = detailLines(event, placeNames);
  if (lines.length === 0) return '';
  return (
    <details>
      <summary safe>{`${lines.length} ${lines.length === 1 ? 'detail' : 'details'}`}</summary>
      <ul class="plain">
        {lines.map((line) => (
          <li class="wraps" safe>
            {line}
          </li>
        ))}
      </ul>
    </details>
  );
}
