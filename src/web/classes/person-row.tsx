import { ATTENDANCE_WORDS } from '../../domain/referral/step-words.js';
import type { AttendanceOutcome } from '../../domain/referral/closed-sets.js';
import type { ClassPerson } from '../../usecases/sessions/read-class.js';
import { attributeText } from '../components/field.js';
import { Tag } from '../components/parts.js';
import { capital } from '../components/words.js';
import { PersonName, spokenName } from '../people/names.js';

const TAPS: readonly AttendanceOutcome[] = ['attended', 'did-not-attend', 'cancelled-by-patient'];
/** Of a class that lies ahead only a cancellation is known. */
const TAPS_AHEAD: readonly AttendanceOutcome[] = ['cancelled-by-patient'];

interface PersonRowProps {
  readonly person: ClassPerson;
  readonly isAhead: boolean;
}

/** One person of the register, with a button for each thing that may have become of them. */
export function PersonRow({ person, isAhead }: PersonRowProps): JSX.Element {
  const { referralId, outcome } = person;
  const name = spokenName(person);
  return (
    <li id={`person-${referralId}`}>
      <div class="who">
        <a href={`/referrals/${referralId}`}>
          <PersonName person={person} />
        </a>
        <span class="muted" safe>
          {`${person.attended} of ${person.expectedSessions} sessions attended before`}
        </span>
        <Marks person={person} />
        {outcome === null ? '' : <Clear person={person} name={name} />}
      </div>
      <div class="marks" role="group" aria-label={attributeText(name)} data-marks="">
        {(isAhead ? TAPS_AHEAD : TAPS).map((each) => (
          <button
            type="submit"
            class="button tap"
            id={`tap-${referralId}-${each}`}
            name="mark"
            value={`${referralId}:${each}`}
            aria-pressed={outcome === each ? 'true' : 'false'}
            data-words={attributeText(`${name}: ${ATTENDANCE_WORDS[each]}`)}
          >
            <span safe>{capital(ATTENDANCE_WORDS[each])}</span>
            <span class="visually-hidden" safe>{`: ${name}`}</span>
          </button>
        ))}
      </div>
    </li>
  );
}

function Marks({ person }: { readonly person: ClassPerson }): JSX.Element {
  return (
    <span class="tags">
      {person.isNewcomer ? <Tag label="first session" kind="check" /> : ''}
      {person.reachesEnough ? <Tag label="reaches 75 % today" kind="good" /> : ''}
      {person.outcome === 'cancelled-by-service' ? (
        <Tag label={ATTENDANCE_WORDS['cancelled-by-service']} />
      ) : (
        ''
      )}
    </span>
  );
}

/** Takes a mark back: a tap on the wrong line is put right where it was made. */
function Clear({ person, name }: { readonly person: ClassPerson; readonly name: string }): JSX.Element {
  return (
    <button
      type="submit"
      class="link-button"
      id={`tap-${person.referralId}-none`}
      name="mark"
      value={`${person.referralId}:none`}
      data-words={attributeText(`${name}: mark taken back`)}
    >
      Take back
      <span class="visually-hidden" safe>{` the mark of ${name}`}</span>
    </button>
  );
}
