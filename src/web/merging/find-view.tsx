import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import { Button, Form } from '../components/form.js';
import { EmptyState } from '../components/parts.js';
import { TextField } from '../components/text-fields.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { recordWords } from './compare-table.js';

interface FindViewProps {
  readonly frame: Frame;
  readonly person: FoundPerson;
  /** What was searched for; empty where those are shown who are alike. */
  readonly typed: string;
  readonly others: readonly FoundPerson[];
  readonly today: PlainDate;
}

/** Finds the other record of a person: those alike are offered, anybody else is searched for. */
export function FindView({ frame, person, typed, others, today }: FindViewProps): JSX.Element {
  const { id } = person.patient;
  return (
    <Page frame={frame} title="Bring two records together">
      <p class="crumb">
        <BackToReferral person={person} />
      </p>
      <h1>Bring two records together</h1>
      <p class="lead" safe>
        {`${recordWords(person, today)}.`}
      </p>
      <h2>{typed === '' ? 'Records that are alike' : 'Records found'}</h2>
      {others.length === 0 ? (
        <EmptyState>No other record fits. Search for it below.</EmptyState>
      ) : (
        <ul class="plain">
          {others.map((other) => (
            <li>
              <a href={`/patients/${id}/merge?with=${other.patient.id}`} safe>
                {recordWords(other, today)}
              </a>
            </li>
          ))}
        </ul>
      )}
      <h2>Another record</h2>
      <Form frame={frame} action={`/patients/${id}/merge/find`} label="Find the other record">
        <TextField
          name="q"
          label="NHS number, name or date of birth of the other record"
          value={typed}
          autocomplete="off"
          type="search"
          maxlength={200}
        />
        <div class="actions">
          <Button>Find</Button>
        </div>
      </Form>
      <p>
        <a href={`/patients/${id}/merges`}>Merges of this record so far</a>
      </p>
    </Page>
  );
}

/** Back to where somebody came from: the latest referral of the person. */
export function BackToReferral({ person }: { readonly person: FoundPerson }): JSX.Element {
  const [latest] = person.referrals;
  return latest === undefined ? (
    <a href="/search">Find a person</a>
  ) : (
    <a href={`/referrals/${latest.id}`}>Referral</a>
  );
}
