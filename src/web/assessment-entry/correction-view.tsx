import { britishDate } from '../../domain/calendar/british-date.js';
import type { Assessment } from '../../domain/assessment/assessment.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import { TextField } from '../components/text-fields.js';
import { VersionField } from '../components/version-field.js';
import { REASON_MAX } from '../forms/line.js';
import { SEND_FORM } from '../forms/send-form.js';
import { Page } from '../page.js';
import { PersonName, spokenName } from '../people/names.js';
import { SheetBlocks } from './sheet-blocks.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { TIMEPOINT_WORDS } from './words.js';

interface CorrectionViewProps {
  readonly state: SheetState;
  readonly assessment: Assessment;
  /** The sheet has no room for all of the assessment: it is not corrected here. */
  readonly isTooMuch: boolean;
  readonly meanwhile: Meanwhile | null;
}

/** The sheet of an assessment once more, with what is recorded, to be corrected with a reason. */
export function CorrectionView(props: CorrectionViewProps): JSX.Element {
  const { state, assessment, isTooMuch, meanwhile } = props;
  const { patient } = state.sheet;
  const { entry, referralId } = assessment;
  return (
    <Page
      frame={state.frame}
      title={`Correction, ${spokenName(patient)}`}
      scripts={[SEND_FORM, 'assessment-walk.js']}
    >
      <p class="crumb">
        <a href={`/referrals/${referralId}#assessments`}>Referral</a>
      </p>
      <h1 safe>{`Correct the ${TIMEPOINT_WORDS[entry.timepoint]} of ${britishDate(entry.assessedOn)}`}</h1>
      <p class="lead">
        <PersonName person={patient} />
      </p>
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} />}
      <ErrorSummary errors={[...state.errors, ...state.queries.filter(({ field }) => field !== '')]} />
      {isTooMuch ? <TooMuch referralId={referralId} /> : <CorrectionForm {...props} />}
    </Page>
  );
}

function CorrectionForm({ state, assessment }: CorrectionViewProps): JSX.Element {
  const address = `/assessments/${assessment.id}/correction`;
  return (
    <Form frame={state.frame} action={address} class="sheet" sending="whole">
      <VersionField version={assessment.version} />
      {/* Enter in a field checks; only the button below records. */}
      <button type="submit" class="visually-hidden" name="check" value="yes" tabindex="-1">
        Check what is typed
      </button>
      <SheetBlocks state={state} isLive={false} />
      <TextField
        {...fieldState(state, 'reason')}
        label="Why it is corrected"
        hint="Kept in the history with your name; the former version stays readable."
        width="long"
        autocomplete="off"
        maxlength={REASON_MAX}
      />
      <div class="actions">
        <Button kind="primary">Record the correction</Button>
        <ButtonLink href={`/referrals/${assessment.referralId}#assessments`}>Leave it as it is</ButtonLink>
      </div>
    </Form>
  );
}

function TooMuch({ referralId }: { readonly referralId: string }): JSX.Element {
  return (
    <>
      <Notice kind="check" title="This assessment cannot be corrected on this page">
        <p>
          It holds more than the page has fields for, such as two different walk tests of one visit, and what
          has no field would be lost. It came in by a sheet or by another program: have it corrected there.
        </p>
      </Notice>
      <p>
        <a href={`/referrals/${referralId}#assessments`}>Back to the referral</a>
      </p>
    </>
  );
}
