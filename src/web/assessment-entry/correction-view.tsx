import { britishDate } from '../../domain/calendar/british-date.js';
import type { Assessment } from '../../domain/assessment/assessment.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { TextField } from '../components/text-fields.js';
import { VersionField } from '../components/version-field.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { REASON_MAX } from '../forms/line.js';
import { Page } from '../page.js';
import { PersonName, spokenName } from '../people/names.js';
import { assessmentHistoryWords } from '../referral/assessment-history-words.js';
import { SheetNoticeView } from './draft-notices.js';
import type { SheetNotice } from './draft-notices.js';
import { BEGUN_FROM } from './field-names.js';
import type { Missing } from './next-missing.js';
import { SheetBlocks } from './sheet-blocks.js';
import { CheckOnEnter, DiscardForm, DraftVersionField, SheetFoot } from './sheet-foot.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { TIMEPOINT_WORDS } from './words.js';

interface CorrectionViewProps {
  readonly state: SheetState;
  readonly assessment: Assessment;
  /** The sheet has no room for all of the assessment: it is not corrected here. */
  readonly isTooMuch: boolean;
  /** The version of the assessment that the typing began with. */
  readonly begunFrom: number;
  /** Whether the fields hold what was just sent, and not a draft of before. */
  readonly isSent: boolean;
  /** What was corrected since then. */
  readonly meanwhile: Meanwhile | null;
  readonly notice: SheetNotice | null;
}

/** Address of the page on which an assessment is corrected. */
export function correctionAddress(assessmentId: string): string {
  return `/assessments/${assessmentId}/correction`;
}

/** What is missing of a correction before it can be recorded. */
export function missingReason(values: FormValues): Missing | null {
  return textOf(values, 'reason') === '' ? { what: 'why it is corrected', field: 'reason' } : null;
}

/** The sheet of an assessment once more, with what is recorded, to be corrected with a reason. */
export function CorrectionView(props: CorrectionViewProps): JSX.Element {
  const { state, assessment, isSent, isTooMuch, meanwhile, notice } = props;
  const { patient } = state.sheet;
  const { entry, referralId } = assessment;
  return (
    <Page
      frame={state.frame}
      title={`Correction, ${spokenName(patient)}`}
      scripts={['assessment-draft.js', 'assessment-walk.js']}
    >
      <p class="crumb">
        <a href={`/referrals/${referralId}#assessments`}>Referral</a>
      </p>
      <h1 safe>{`Correct the ${TIMEPOINT_WORDS[entry.timepoint]} of ${britishDate(entry.assessedOn)}`}</h1>
      <p class="lead">
        <PersonName person={patient} />
      </p>
      <SheetNoticeView notice={notice} />
      {meanwhile === null ? (
        ''
      ) : (
        <ChangedMeanwhile meanwhile={meanwhile} words={wordsOf(state)} typedIn={isSent ? 'form' : 'draft'} />
      )}
      <ErrorSummary errors={[...state.errors, ...state.queries.filter(({ field }) => field !== '')]} />
      {isTooMuch ? <TooMuch referralId={referralId} /> : <CorrectionForm {...props} />}
    </Page>
  );
}

function wordsOf({ sites }: SheetState) {
  return assessmentHistoryWords(new Map(sites.map(({ id, name }) => [id, name])));
}

function CorrectionForm({ state, assessment, begunFrom }: CorrectionViewProps): JSX.Element {
  const action = correctionAddress(assessment.id);
  const { frame, draft, values } = state;
  return (
    <>
      <Form frame={frame} action={action} class="sheet">
        <VersionField version={assessment.version} />
        <input type="hidden" name={BEGUN_FROM} value={String(begunFrom)} />
        <DraftVersionField draft={draft} />
        <CheckOnEnter action={action} />
        <SheetBlocks state={state} isLive={false} action={action} />
        <TextField
          {...fieldState(state, 'reason')}
          label="Why it is corrected"
          hint="Kept in the history with your name; the former version stays readable."
          width="long"
          autocomplete="off"
          maxlength={REASON_MAX}
        />
        <p>
          <a href={`/referrals/${assessment.referralId}#assessments`}>Leave it as it is</a>
        </p>
        <SheetFoot
          draft={draft}
          action={action}
          missing={missingReason(values)}
          recordWords="Record the correction"
        />
      </Form>
      <DiscardForm frame={frame} draft={draft} action={action} />
    </>
  );
}

function TooMuch({ referralId }: { readonly referralId: string }): JSX.Element {
  return (
    <>
      <Notice kind="check" title="This assessment cannot be corrected on this page">
        <p>
          It holds something that the page has no field for, such as an answer that is not in use any more,
          and what has no field would be lost. It came in by a sheet or by another program: have it corrected
          there.
        </p>
      </Notice>
      <p>
        <a href={`/referrals/${referralId}#assessments`}>Back to the referral</a>
      </p>
    </>
  );
}
