import { britishDate } from '../../domain/calendar/british-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Patient } from '../../domain/patient/patient.js';
import { ETHNIC_WORDS, GENDER_WORDS, SMOKING_WORDS, YES_NO_WORDS } from '../../domain/patient/words.js';
import { STAGE_WORDS } from '../../domain/referral/step-words.js';
import { DIAGNOSIS_WORDS, SEX_WORDS } from '../../domain/referral/words.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import { Tag } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { PersonName } from '../people/names.js';
import { bornWords, nhsNumberWords } from '../people/person-words.js';

/** Two records that may be of one person, in the order in which they stand on the page. */
export interface Pair {
  readonly first: FoundPerson;
  readonly second: FoundPerson;
}

interface CompareTableProps {
  readonly pair: Pair;
  readonly today: PlainDate;
}

/** Both records side by side, with a word where they differ. */
export function CompareTable({ pair, today }: CompareTableProps): JSX.Element {
  const { first, second } = pair;
  const facts = factsOf(today);
  return (
    <Table
      caption="Both records side by side"
      columns={[{ head: 'What' }, { head: 'First record' }, { head: 'Second record' }]}
      rows={[
        ...facts.map(({ what, words }) => [
          <FactName what={what} differs={words(first.patient) !== words(second.patient)} />,
          what === 'Name' ? <PersonName person={first.patient} /> : <Text value={words(first.patient)} />,
          what === 'Name' ? <PersonName person={second.patient} /> : <Text value={words(second.patient)} />,
        ]),
        [<Text value="Referrals" />, <Referrals person={first} />, <Referrals person={second} />],
      ]}
    />
  );
}

function FactName({ what, differs }: { readonly what: string; readonly differs: boolean }): JSX.Element {
  return (
    <>
      <Text value={what} /> {differs ? <Tag kind="check" label="differs" /> : ''}
    </>
  );
}

interface Fact {
  readonly what: string;
  readonly words: (patient: Patient) => string;
}

function factsOf(today: PlainDate): readonly Fact[] {
  return [
    { what: 'Name', words: ({ familyName, givenName }) => `${familyName}, ${givenName}` },
    { what: 'Born', words: ({ bornOn }) => bornWords(bornOn, today) },
    { what: 'NHS number', words: nhsNumberWords },
    { what: 'Sex at birth', words: ({ sexAtBirth }) => SEX_WORDS[sexAtBirth] },
    { what: 'Gender', words: ({ gender }) => GENDER_WORDS[gender] },
    { what: 'Ethnic category', words: ({ ethnicCategory }) => ETHNIC_WORDS[ethnicCategory] },
    { what: 'Deprivation fifth of the home address', words: deprivationWords },
    { what: 'Smoking', words: ({ smokingStatus }) => SMOKING_WORDS[smokingStatus] },
    { what: 'Needs an interpreter', words: ({ interpreterNeed }) => YES_NO_WORDS[interpreterNeed] },
    { what: 'Lives alone', words: ({ livesAlone }) => YES_NO_WORDS[livesAlone] },
    { what: 'Oxygen at home', words: ({ homeOxygen }) => YES_NO_WORDS[homeOxygen] },
    { what: 'Practice code', words: ({ gpPracticeCode }) => gpPracticeCode ?? 'not recorded' },
  ];
}

function deprivationWords({ deprivationQuintile, deprivationIndexYear }: Patient): string {
  if (deprivationQuintile === null) return 'not known';
  return `${deprivationQuintile} of 5, index of ${deprivationIndexYear ?? 'no year'}`;
}

function Referrals({ person }: { readonly person: FoundPerson }): JSX.Element {
  if (person.referrals.length === 0) return <span class="muted">none</span>;
  return (
    <ul class="plain">
      {person.referrals.map(({ id, receivedOn, diagnosis, stage }) => (
        <li>
          <a href={`/referrals/${id}`} safe>
            {`Received ${britishDate(receivedOn)}`}
          </a>
          <span class="muted" safe>
            {`: ${DIAGNOSIS_WORDS[diagnosis]}, ${STAGE_WORDS[stage]}`}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** A record in a line, for choices. @example 'Mavis Sandwort, born 9 March 1954, 72 years; 999 000 0018' */
export function recordWords({ patient }: FoundPerson, today: PlainDate): string {
  const { givenName, familyName, bornOn } = patient;
  return `${givenName} ${familyName}, born ${bornWords(bornOn, today)}; ${nhsNumberWords(patient)}`;
}
