import { britishDate } from '../../domain/calendar/british-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { STAGE_WORDS } from '../../domain/referral/step-words.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import { RadioGroup } from '../components/choices.js';
import { Notice } from '../components/notice.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { PersonName, spokenName } from '../people/names.js';
import { bornWords, nhsNumberWords } from '../people/person-words.js';

/** Name of the field that says whose referral it is: an id of a known person, or NEW_PERSON. */
export const PERSON_FIELD = 'person';
export const NEW_PERSON = 'new';

interface KnownPeopleProps {
  readonly people: readonly FoundPerson[];
  readonly chosen: string;
  readonly today: PlainDate;
  readonly errors: FormErrors;
}

/** People of the record who may be the one on the form: nothing is stored before somebody has looked. */
export function KnownPeople({ people, chosen, today, errors }: KnownPeopleProps): JSX.Element {
  const open = people.flatMap(({ patient, referrals }) =>
    referrals.filter(({ stage }) => stage !== 'closed').map((referral) => ({ patient, referral })),
  );
  return (
    <section class="panel" aria-labelledby="known-people">
      <h2 id="known-people">Your team may know this person already</h2>
      <RadioGroup
        name={PERSON_FIELD}
        label="Whose referral is it?"
        error={errorAt(errors, PERSON_FIELD)}
        value={chosen}
        choices={[
          ...people.map(({ patient, referrals }) => ({
            value: patient.id,
            label: `${spokenName(patient)}, born ${bornWords(patient.bornOn, today)}`,
            hint: `${nhsNumberWords(patient)}; ${
              referrals.length === 0
                ? 'no referral yet'
                : referrals
                    .map(
                      ({ receivedOn, stage }) => `received ${britishDate(receivedOn)}, ${STAGE_WORDS[stage]}`,
                    )
                    .join('; ')
            }`,
          })),
          { value: NEW_PERSON, label: 'None of these: a new person' },
        ]}
      />
      {open.map(({ patient, referral }) => (
        <p>
          <PersonName person={patient} /> has an open referral:{' '}
          <a href={`/referrals/${referral.id}`} safe>
            {`received ${britishDate(referral.receivedOn)}`}
          </a>
        </p>
      ))}
    </section>
  );
}

/** Whose referral it is, where that is settled. */
export function ChosenPerson({
  person: { patient },
  today,
}: {
  readonly person: FoundPerson;
  readonly today: PlainDate;
}): JSX.Element {
  return (
    <Notice kind="plain" title="A referral of a person whom your team knows">
      <p>
        <PersonName person={patient} />
        <span safe>{`, born ${bornWords(patient.bornOn, today)}; ${nhsNumberWords(patient)}.`}</span>{' '}
        <a href="/referrals/new">Somebody else</a>
      </p>
      <input type="hidden" name={PERSON_FIELD} value={patient.id} />
    </Notice>
  );
}
