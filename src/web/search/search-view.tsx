import { britishDate } from '../../domain/calendar/british-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { STAGE_WORDS } from '../../domain/referral/step-words.js';
import { DIAGNOSIS_WORDS } from '../../domain/referral/words.js';
import type { FoundPeople, FoundPerson } from '../../usecases/patients/search-people.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { ButtonLink, EmptyState } from '../components/parts.js';
import { Table } from '../components/table.js';
import { TextField } from '../components/text-fields.js';
import { counted } from '../components/words.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { PersonName, spokenName } from '../people/names.js';
import { bornWords, nhsNumberWords } from '../people/person-words.js';

interface SearchViewProps {
  readonly frame: Frame;
  readonly typed: string;
  readonly errors: FormErrors;
  /** Null before anything was searched. */
  readonly found: FoundPeople | null;
  readonly today: PlainDate;
  readonly siteNames: ReadonlyMap<string, string>;
}

/** The search: one line for an NHS number, a name or a date of birth, and who was found. */
export function SearchView({ frame, typed, errors, found, today, siteNames }: SearchViewProps): JSX.Element {
  return (
    <Page frame={frame} title={errors.length === 0 ? 'Find a person' : 'Error: Find a person'}>
      <h1>Find a person</h1>
      <ErrorSummary errors={errors} title="Nothing was searched: please mend this first" />
      <Form frame={frame} action="/search" label="Find a person">
        <TextField
          name="q"
          label="NHS number, name or date of birth"
          hint="Such as: 999 000 0018; Sandwort; Sandwort, Mavis; 9 3 1954. The beginning of a name is enough."
          value={typed}
          error={errorAt(errors, 'q')}
          autocomplete="off"
          type="search"
          maxlength={200}
        />
        <div class="actions">
          <Button kind="primary">Find</Button>
        </div>
      </Form>
      {found === null ? '' : <Found found={found} today={today} siteNames={siteNames} />}
    </Page>
  );
}

type FoundProps = Pick<SearchViewProps, 'today' | 'siteNames'> & { readonly found: FoundPeople };

function Found({ found, today, siteNames }: FoundProps): JSX.Element {
  const { people, hasMore } = found;
  if (people.length === 0) {
    return (
      <>
        <EmptyState>Nobody of your team fits. Check the spelling, or try the date of birth alone.</EmptyState>
        <p class="actions">
          <ButtonLink href="/referrals/new">Register a referral</ButtonLink>
        </p>
      </>
    );
  }
  return (
    <>
      <Table
        caption={`${counted(people.length, 'person', 'people')} found`}
        isStacked
        columns={[
          { head: 'Name' },
          { head: 'Born' },
          { head: 'NHS number' },
          { head: 'Referrals, the latest first' },
          { head: 'New' },
        ]}
        rows={people.map((person) => rowOf(person, today, siteNames))}
      />
      {hasMore ? (
        <p>More people fit than are shown. Type more of the name, or an NHS number or date of birth.</p>
      ) : (
        ''
      )}
    </>
  );
}

function rowOf(
  { patient, referrals }: FoundPerson,
  today: PlainDate,
  siteNames: ReadonlyMap<string, string>,
): readonly JSX.Element[] {
  const isOpen = referrals.some(({ stage }) => stage !== 'closed');
  return [
    <PersonName person={patient} />,
    <span safe>{bornWords(patient.bornOn, today)}</span>,
    <span safe>{nhsNumberWords(patient)}</span>,
    referrals.length === 0 ? (
      <span class="muted">none</span>
    ) : (
      <ul class="plain">
        {referrals.map(({ id, receivedOn, diagnosis, stage, siteId }) => (
          <li>
            <a href={`/referrals/${id}`} safe>
              {`Received ${britishDate(receivedOn)}: ${DIAGNOSIS_WORDS[diagnosis]}`}
            </a>
            <span class="muted" safe>
              {`, ${STAGE_WORDS[stage]}, ${siteNames.get(siteId) ?? ''}`}
            </span>
          </li>
        ))}
      </ul>
    ),
    isOpen ? (
      <span class="muted">open already</span>
    ) : (
      <a href={`/referrals/new?person=${patient.id}`}>
        New referral
        <span class="visually-hidden" safe>{` of ${spokenName(patient)}`}</span>
      </a>
    ),
  ];
}
