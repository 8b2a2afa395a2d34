import type { FoundPeople, FoundPerson } from '../../usecases/patients/search-people.js';
import type { SessionRegister } from '../../usecases/sessions/keep-register.js';
import type { ClassPerson } from '../../usecases/sessions/read-class.js';
import { attributeText } from '../components/field.js';
import { Button, Form } from '../components/form.js';
import { VersionField } from '../components/version-field.js';
import { EmptyState } from '../components/parts.js';
import { TextField } from '../components/text-fields.js';
import type { Frame } from '../frame.js';
import { PersonName, spokenName } from '../people/names.js';
import { nhsNumberWords } from '../people/person-words.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import { STAGE_WORDS } from '../../domain/referral/step-words.js';

interface AddPersonProps {
  readonly frame: Frame;
  readonly session: SessionRegister;
  readonly people: readonly ClassPerson[];
  readonly search: { readonly typed: string; readonly found: FoundPeople } | null;
}

/** Somebody who is here and was not expected. */
export function AddPerson({ frame, session, people, search }: AddPersonProps): JSX.Element {
  return (
    <section class="panel not-printed" aria-labelledby="add-person">
      <h2 id="add-person">Somebody else is here</h2>
      <Form frame={frame} action={`/classes/${session.id}/find`} class="row" sending="whole" id="find">
        <TextField
          name="q"
          label="NHS number, name or date of birth"
          value={search?.typed ?? ''}
          autocomplete="off"
          type="search"
          maxlength={200}
        />
        <div class="actions">
          <Button>Find</Button>
        </div>
      </Form>
      {search === null ? '' : <Found frame={frame} session={session} people={people} found={search.found} />}
    </section>
  );
}

type FoundProps = Omit<AddPersonProps, 'search'> & { readonly found: FoundPeople };

function Found({ frame, session, people, found }: FoundProps): JSX.Element {
  const listed = new Set(people.map(({ referralId }) => referralId));
  if (found.people.length === 0) {
    return <EmptyState>Nobody of your team fits.</EmptyState>;
  }
  return (
    <Form frame={frame} action={`/classes/${session.id}`} sending="whole" id="add" class="register">
      <VersionField version={session.version} />
      <ul>
        {found.people.map((person) => (
          <FoundRow person={person} listed={listed} />
        ))}
      </ul>
      {found.hasMore ? <p>More people fit. Type more of the name.</p> : ''}
    </Form>
  );
}

function FoundRow({
  person: { patient, referrals },
  listed,
}: {
  readonly person: FoundPerson;
  readonly listed: ReadonlySet<string>;
}): JSX.Element {
  const open = referrals.find(({ stage }) => stage !== 'closed');
  return (
    <li>
      <div class="who">
        <PersonName person={patient} />
        <span class="muted" safe>
          {`born ${britishDate(patient.bornOn)}, ${nhsNumberWords(patient)}${open === undefined ? '' : `, ${STAGE_WORDS[open.stage]}`}`}
        </span>
      </div>
      <div class="marks">
        {open === undefined ? (
          <span class="muted">no open referral</span>
        ) : listed.has(open.id) ? (
          <a href={`#person-${open.id}`}>stands in the list above</a>
        ) : (
          <button
            type="submit"
            class="button tap"
            name="mark"
            value={`${open.id}:attended`}
            data-words={attributeText(`${spokenName(patient)}: attended`)}
          >
            Attended
            <span class="visually-hidden" safe>{`: ${spokenName(patient)}`}</span>
          </button>
        )}
      </div>
    </li>
  );
}
