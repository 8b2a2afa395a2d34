import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { SessionRegister } from '../../usecases/sessions/keep-register.js';
import type { ClassPerson } from '../../usecases/sessions/read-class.js';
import { REASON_FIELD, REASON_FOR_ALL, ReasonField } from './reason-field.js';
import { Button, Form } from '../components/form.js';
import { VersionField } from '../components/version-field.js';
import { Notice } from '../components/notice.js';
import { EmptyState } from '../components/parts.js';
import { capital, counted } from '../components/words.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { Notes } from './class-notes.js';
import type { ClassNotes } from './class-notes.js';
import { AddPerson } from './add-person.js';
import { dayWords, kindWords, registerWords } from './class-words.js';
import { PersonRow } from './person-row.js';

interface ClassViewProps {
  readonly frame: Frame;
  readonly session: SessionRegister;
  readonly people: readonly ClassPerson[];
  readonly siteName: string;
  readonly today: PlainDate;
  readonly notes: ClassNotes;
  /** Why registers were changed lately, the latest first. */
  readonly reasons: readonly string[];
}

/** The register of a class. Every button sends a form of its own accord: it works without a script. */
export function ClassView(props: ClassViewProps): JSX.Element {
  const { frame, session, people, siteName, today, notes, reasons } = props;
  const title = `Class, ${siteName}, ${dayWords(session.heldOn)}`;
  const isAhead = session.heldOn > today;
  const isCorrected = session.heldOn < today && session.attendances.length > 0;
  return (
    <Page frame={frame} title={title} scripts={[SEND_FORM]}>
      <p class="crumb">
        <a href={`/classes?week=${session.heldOn}`}>Classes</a>
      </p>
      <h1 safe>{`${siteName}, ${session.heldOn === today ? 'today, ' : ''}${dayWords(session.heldOn)}`}</h1>
      <p class="muted" safe>
        {`${capital(kindWords(session))}.`}
      </p>
      <Notes session={session} people={people} notes={notes} />
      <Tally people={people} />
      {people.length === 0 ? (
        <EmptyState>Nobody is expected. Add whoever is here by name.</EmptyState>
      ) : (
        <Form frame={frame} action={`/classes/${session.id}`} sending="taps" id="register" class="register">
          <VersionField version={session.version} />
          {isCorrected ? (
            <>
              {/* Enter in the reason taps nobody. */}
              <button type="submit" class="visually-hidden" tabindex="-1">
                Tap what became of somebody
              </button>
              <ReasonField name={REASON_FIELD} change={notes.change} errors={notes.errors} given={reasons} />
            </>
          ) : (
            ''
          )}
          <ul>
            {people.map((person) => (
              <PersonRow person={person} isAhead={isAhead} />
            ))}
          </ul>
        </Form>
      )}
      <AddPerson frame={frame} session={session} people={people} search={notes.search ?? null} />
      {people.length === 0 ? '' : <CancelAll {...{ frame, session, people, notes, reasons, isCorrected }} />}
      <p class="downloads not-printed">
        <a href={`/classes/${session.id}/register.csv`}>Take the register with you (CSV): it names people</a>
      </p>
      {session.enteredInError === null ? (
        <p class="not-printed">
          <a href={`/classes/${session.id}/entered-in-error`}>Mark this class as entered in error</a>
        </p>
      ) : (
        ''
      )}
    </Page>
  );
}

/** How many are expected, marked and still to be marked. */
function Tally({ people }: { readonly people: readonly ClassPerson[] }): JSX.Element {
  const marked = people.flatMap(({ outcome }) => (outcome === null ? [] : [{ outcome }]));
  const left = people.length - marked.length;
  const leftWords = left === 0 ? 'everybody is marked' : `${left} not marked yet`;
  const words = marked.length === 0 ? leftWords : `${registerWords(marked)}; ${leftWords}`;
  return (
    <p role="status" class="tally" safe>
      {`${counted(people.length, 'person', 'people')}: ${words}.`}
    </p>
  );
}

function CancelAll({
  frame,
  session,
  people,
  notes,
  reasons,
  isCorrected,
}: Pick<ClassViewProps, 'frame' | 'session' | 'people' | 'notes' | 'reasons'> & {
  /** The day is over and entries stand, so that a reason is needed. */
  readonly isCorrected: boolean;
}): JSX.Element {
  const isAsked = notes.asksWhetherAll === true;
  return (
    <section class="panel not-printed" aria-labelledby="cancel-all">
      <h2 id="cancel-all">The class did not take place</h2>
      {isAsked ? (
        <div role="alert">
          <Notice kind="check" title="Some people are marked already">
            <p safe>
              {`${capital(registerWords(session.attendances))}. If you go on, all ${people.length} are marked as cancelled by the service.`}
            </p>
          </Notice>
        </div>
      ) : (
        <p>
          Marks everybody above as cancelled by the service. It takes no session away from anybody's
          attendance.
        </p>
      )}
      <Form frame={frame} action={`/classes/${session.id}`} sending="whole" id="cancel-all-form">
        <VersionField version={session.version} />
        <input type="hidden" name="all" value="yes" />
        {isAsked ? <input type="hidden" name="sure" value="yes" /> : ''}
        {isAsked && isCorrected ? (
          <ReasonField name={REASON_FOR_ALL} change={notes.change} errors={notes.errors} given={reasons} />
        ) : (
          ''
        )}
        <div class="actions">
          <Button kind="grave">
            {isAsked ? 'Yes, cancelled by the service for all' : 'Cancelled by the service for all'}
          </Button>
          {isAsked ? <a href={`/classes/${session.id}`}>No, keep the register as it is</a> : ''}
        </div>
      </Form>
    </section>
  );
}
