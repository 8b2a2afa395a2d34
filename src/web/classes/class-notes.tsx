import type { Meanwhile } from '../../domain/history/history.js';
import type { FoundPeople } from '../../usecases/patients/search-people.js';
import type { Mark, SessionRegister } from '../../usecases/sessions/keep-register.js';
import type { ClassPerson } from '../../usecases/sessions/read-class.js';
import { ATTENDANCE_WORDS } from '../../domain/referral/step-words.js';
import type { FormErrors } from '../forms/form-errors.js';
import { spokenName } from '../people/names.js';
import type { RegisterChange } from './reason-field.js';
import { ErrorSummary } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { StaleNotice } from './stale-notice.js';

/** What is to be said on the page besides the register. */
export interface ClassNotes {
  /** Everybody is to be marked, and some are marked already. */
  readonly asksWhetherAll?: boolean;
  /** Somebody else has changed the register, and the taps were not stored. */
  readonly stale?: { readonly meanwhile: Meanwhile; readonly marks: readonly Mark[] };
  /** Why a mark was not stored. */
  readonly faults?: readonly string[];
  /** What is wrong with the reason, and the taps that were not stored for it. */
  readonly errors?: FormErrors;
  readonly marks?: readonly Mark[];
  /** Why the register is changed, as it was typed. */
  readonly change?: RegisterChange | undefined;
  readonly search?: { readonly typed: string; readonly found: FoundPeople };
}

/** What is to be said above the register: a mark, who was quicker, and what is wrong. */
export function Notes({
  session,
  people,
  notes,
}: {
  readonly session: SessionRegister;
  readonly people: readonly ClassPerson[];
  readonly notes: ClassNotes;
}): JSX.Element {
  const { faults = [], errors = [], marks = [], stale } = notes;
  return (
    <>
      {session.enteredInError === null ? (
        ''
      ) : (
        <Notice kind="warning" title="Entered in error">
          <p>
            This class is marked as entered in error. It counts nowhere, and its register cannot be changed.{' '}
            <a href={`/classes/${session.id}/restoration`}>Restore it</a>
          </p>
        </Notice>
      )}
      {stale === undefined ? '' : <StaleNotice people={people} register={session.attendances} {...stale} />}
      {faults.length === 0 ? (
        ''
      ) : (
        <div role="alert">
          <Notice kind="warning" title="Not stored">
            {faults.map((message) => (
              <p safe>{message}</p>
            ))}
          </Notice>
        </div>
      )}
      <ErrorSummary errors={errors} title={notStoredTitle(marks, people)} />
    </>
  );
}

/** Which tap waits for its reason. */
function notStoredTitle(marks: readonly Mark[], people: readonly ClassPerson[]): string {
  const [mark] = marks;
  if (mark === undefined || marks.length > 1) return 'Nothing was stored: please mend this first';
  const person = people.find(({ referralId }) => referralId === mark.referralId);
  const outcome = mark.outcome === null ? 'not marked' : ATTENDANCE_WORDS[mark.outcome];
  return `Not stored (${person === undefined ? 'somebody else' : spokenName(person)}: ${outcome}): please mend this and tap again`;
}
