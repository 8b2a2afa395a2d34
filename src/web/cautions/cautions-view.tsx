import { britishDate } from '../../domain/calendar/british-date.js';
import type { Assessment } from '../../domain/assessment/assessment.js';
import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import { TIMEPOINT_WORDS } from '../assessment-entry/words.js';
import { attributeText } from '../components/field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { EmptyState } from '../components/parts.js';
import { TextArea } from '../components/text-fields.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { PersonName } from '../people/names.js';
import type { ReferralOfPerson } from '../steps/load-referral.js';
import { acknowledgementWords, cautionKey, cautionWords, sourceWords } from './caution-words.js';

/** Room for what was done, as the API has it. */
export const LONGEST_ACTION = 2000;

/** The field for what was done about a caution. */
export function actionField(key: string): string {
  return `actionTaken.${key}`;
}

interface CautionsViewProps {
  readonly frame: Frame;
  readonly of: ReferralOfPerson;
  readonly assessment: Assessment;
  readonly cautions: readonly StandingCaution[];
  /** The caution that is acknowledged now, and what was typed about it; where it is not open, the first open one is. */
  readonly typed: { readonly key: string; readonly action: string };
  readonly errors: FormErrors;
}

/** The cautions of an assessment: where each comes from, and who has put a name to it. */
export function CautionsView(props: CautionsViewProps): JSX.Element {
  const { frame, of, assessment, cautions, typed, errors } = props;
  const { entry, referralId } = assessment;
  const title = 'Cautions of an assessment';
  const open = cautions.filter(isOpen);
  const chosen = open.find((caution) => cautionKey(caution) === typed.key) ?? open[0];
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`} scripts={[SEND_FORM]}>
      <p class="crumb">
        <a href={`/referrals/${referralId}`}>
          <PersonName person={of.patient} />
        </a>
      </p>
      <h1 safe>{`Cautions: ${TIMEPOINT_WORDS[entry.timepoint]} of ${britishDate(entry.assessedOn)}`}</h1>
      <ErrorSummary errors={errors} />
      {cautions.length === 0 ? <EmptyState>This assessment has no cautions.</EmptyState> : ''}
      {open.length === 0 ? (
        ''
      ) : (
        <p>
          Judge each as a registered clinician, and say what you did. Your name and the time are kept with it;
          an acknowledgement is not taken back.
        </p>
      )}
      {chosen === undefined ? '' : <OpenCaution {...props} caution={chosen} />}
      {cautions.map((caution) =>
        caution === chosen ? '' : <OtherCaution assessmentId={assessment.id} caution={caution} />,
      )}
    </Page>
  );
}

function isOpen({ mustBeAcknowledged, acknowledgement }: StandingCaution): boolean {
  return mustBeAcknowledged && acknowledgement === null;
}

function OpenCaution({
  frame,
  assessment,
  caution,
  typed,
  errors,
}: CautionsViewProps & { readonly caution: StandingCaution }): JSX.Element {
  const key = cautionKey(caution);
  const name = actionField(key);
  return (
    <section class="panel" aria-label={attributeText(cautionWords(caution))}>
      <CautionNotice caution={caution} />
      <Form frame={frame} action={`/assessments/${assessment.id}/cautions`} sending="whole">
        <input type="hidden" name="caution" value={attributeText(key)} />
        <TextArea
          name={name}
          label="What you did about it"
          value={typed.key === key ? typed.action : ''}
          error={errorAt(errors, name)}
          rows={3}
          maxlength={LONGEST_ACTION}
        />
        <div class="actions">
          <Button kind="primary">Acknowledge</Button>
        </div>
      </Form>
    </section>
  );
}

/** One form stands on the page, so that acknowledging one caution loses nothing that was typed about another. */
function OtherCaution({
  assessmentId,
  caution,
}: {
  readonly assessmentId: string;
  readonly caution: StandingCaution;
}): JSX.Element {
  const address = `/assessments/${assessmentId}/cautions?caution=${encodeURIComponent(cautionKey(caution))}`;
  return (
    <>
      <CautionNotice caution={caution} />
      {isOpen(caution) ? (
        <p>
          <a href={attributeText(address)} safe>{`Acknowledge: ${cautionWords(caution)}`}</a>
        </p>
      ) : (
        ''
      )}
    </>
  );
}

/** A caution with its source, and with who acknowledged it where somebody has. */
export function CautionNotice({ caution }: { readonly caution: StandingCaution }): JSX.Element {
  const { mustBeAcknowledged, acknowledgement, isFromFormerVersion } = caution;
  const title = mustBeAcknowledged && acknowledgement === null ? 'Caution: to be acknowledged' : 'Caution';
  return (
    <Notice kind={acknowledgement === null ? 'warning' : 'plain'} title={title}>
      <p safe>{cautionWords(caution)}</p>
      {isFromFormerVersion ? (
        <p>A former version of the assessment raised it; a correction does not take it away.</p>
      ) : (
        ''
      )}
      {acknowledgement === null ? '' : <p safe>{acknowledgementWords(acknowledgement)}</p>}
      <p class="small muted" safe>
        {sourceWords(caution)}
      </p>
    </Notice>
  );
}
