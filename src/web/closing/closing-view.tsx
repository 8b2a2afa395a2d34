import { britishDate } from '../../domain/calendar/british-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { CLOSURE_REASONS } from '../../domain/referral/closed-sets.js';
import type { Closure } from '../../domain/referral/referral.js';
import { CLOSURE_WORDS } from '../../domain/referral/words.js';
import type { Letter, LetterKind } from '../../reports/letters/letter-model.js';
import type { ClosingSheet } from '../../usecases/referrals/closing-sheet.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { RadioGroup, Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import { TextArea } from '../components/text-fields.js';
import { VersionField } from '../components/version-field.js';
import { capital, choicesOf } from '../components/words.js';
import type { TypedDate } from '../forms/date-entry.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { PersonName } from '../people/names.js';
import { bornWords, nhsNumberWords } from '../people/person-words.js';
import { recordWords } from '../referral/record-words.js';
import { LetterView } from './letter-view.js';
import { LETTER_WORDS } from './letter-words.js';

/** What was typed of a closing. */
export interface TypedClosing {
  readonly closedOn: TypedDate;
  readonly reason: string;
  readonly plan: string;
  readonly exercisePlanGivenOn: TypedDate;
  readonly note: string;
}

/** A letter, or why there is none. */
export type ShownLetter =
  | { readonly kind: LetterKind; readonly letter: Letter }
  | { readonly kind: LetterKind; readonly why: string };

interface ClosingViewProps extends ClosingSheet {
  readonly frame: Frame;
  readonly today: PlainDate;
  readonly typed: TypedClosing;
  readonly errors: FormErrors;
  readonly meanwhile: Meanwhile | null;
  /** Both, where the referral is closed and the reader may see scores. */
  readonly letters: readonly ShownLetter[];
}

/** The closing of a referral: the form while it is open, what was closed and both letters afterwards. */
export function ClosingView(props: ClosingViewProps): JSX.Element {
  const { frame, patient, referral, today, errors, meanwhile, letters } = props;
  const { closure } = referral;
  const what = closure === null ? 'Close a referral' : 'Closed referral';
  return (
    <Page frame={frame} title={errors.length === 0 ? what : `Error: ${what}`} scripts={[SEND_FORM]}>
      <p class="crumb not-printed">
        <a href={`/referrals/${referral.id}`}>Referral</a>
      </p>
      <h1 class="not-printed">{what}</h1>
      <p class="lead not-printed">
        <PersonName person={patient} />
      </p>
      <p class="muted not-printed" safe>
        {`Born ${bornWords(patient.bornOn, today)}; ${nhsNumberWords(patient)}. Referred on ${britishDate(referral.receivedOn)}.`}
      </p>
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} words={recordWords()} />}
      <ErrorSummary errors={errors} />
      {closure === null ? <ClosingForm {...props} /> : <Closed {...props} closure={closure} />}
      {letters.map((each) => (
        <LetterSection referralId={referral.id} shown={each} />
      ))}
    </Page>
  );
}

function ClosingForm({ frame, referral, lastEventOn, typed, errors }: ClosingViewProps): JSX.Element {
  const last = lastEventOn === null ? '' : ` Last seen on ${britishDate(lastEventOn)}.`;
  return (
    <Form frame={frame} action={`/referrals/${referral.id}/closing`} sending="whole">
      <VersionField version={referral.version} />
      <DateField
        name="closedOn"
        label="Closed on"
        hint={`Not before the last session attended or the last assessment.${last}`}
        value={typed.closedOn}
        error={errorAt(errors, 'closedOn')}
      />
      <Select
        name="reason"
        label="Reason"
        none="Choose the reason"
        value={typed.reason}
        error={errorAt(errors, 'reason')}
        choices={choicesOf(CLOSURE_REASONS, CLOSURE_WORDS)}
      />
      <PlanFields referral={referral} typed={typed} errors={errors} />
      <TextArea
        name="note"
        label="Note"
        hint="If there is more to say. It stands in the record and in no letter."
        value={typed.note}
        error={errorAt(errors, 'note')}
        maxlength={2000}
      />
      <div class="actions">
        <Button kind="primary">Close the referral</Button>
        <ButtonLink href={`/referrals/${referral.id}`}>Leave it open</ButtonLink>
      </div>
    </Form>
  );
}

function PlanFields({
  referral,
  typed,
  errors,
}: Pick<ClosingViewProps, 'referral' | 'typed' | 'errors'>): JSX.Element {
  if (referral.exercisePlanGivenOn !== null) {
    return (
      <p>
        <input type="hidden" name="planKnown" value="yes" />
        <span
          safe
        >{`A written exercise plan was given on ${britishDate(referral.exercisePlanGivenOn)}.`}</span>
      </p>
    );
  }
  return (
    <>
      <RadioGroup
        name="plan"
        label="Written exercise plan for the time after discharge"
        value={typed.plan}
        error={errorAt(errors, 'plan')}
        choices={[
          { value: 'yes', label: 'Given' },
          { value: 'no', label: 'Not given' },
        ]}
      />
      <div class="plan-day">
        <DateField
          name="exercisePlanGivenOn"
          label="Day on which the plan was given"
          hint="Where one was given."
          value={typed.exercisePlanGivenOn}
          error={errorAt(errors, 'exercisePlanGivenOn')}
        />
      </div>
    </>
  );
}

function Closed({
  referral,
  closure,
  letters,
}: ClosingViewProps & { readonly closure: Closure }): JSX.Element {
  const { exercisePlanGivenOn } = referral;
  return (
    <div class="not-printed">
      <Notice kind="done" title={`Closed on ${britishDate(closure.closedOn)}`} isLive>
        <p safe>{`${capital(CLOSURE_WORDS[closure.reason])}.`}</p>
        <p safe>
          {exercisePlanGivenOn === null
            ? 'No written exercise plan is recorded.'
            : `A written exercise plan was given on ${britishDate(exercisePlanGivenOn)}.`}
        </p>
        {closure.note === null ? '' : <p safe>{closure.note}</p>}
      </Notice>
      <p>
        {letters.length === 0
          ? 'The letters hold results: a clinician checks, prints and signs them.'
          : 'Both letters are built from the record. A clinician checks each, prints it and signs it by hand; nothing is sent from here.'}
      </p>
      <div class="actions">
        <ButtonLink href={`/referrals/${referral.id}`} kind="primary">
          To the referral
        </ButtonLink>
        <ButtonLink href="/work-list">To the work list</ButtonLink>
      </div>
    </div>
  );
}

function LetterSection({
  referralId,
  shown,
}: {
  readonly referralId: string;
  readonly shown: ShownLetter;
}): JSX.Element {
  const id = `to-${shown.kind}`;
  return (
    <section aria-labelledby={id}>
      <h2 id={id} class="not-printed" safe>
        {LETTER_WORDS[shown.kind]}
      </h2>
      {'why' in shown ? (
        <p class="not-printed" safe>
          {shown.why}
        </p>
      ) : (
        <>
          <p class="not-printed">
            <a href={`/referrals/${referralId}/letters/${shown.kind}`} safe>
              {`${LETTER_WORDS[shown.kind]}, alone on a page to print`}
            </a>
          </p>
          <LetterView letter={shown.letter} />
        </>
      )}
    </section>
  );
}
