import { britishDate } from '../../domain/calendar/british-date.js';
import { TRIAGE_DECISIONS } from '../../domain/referral/closed-sets.js';
import type { Referral } from '../../domain/referral/referral.js';
import { TRIAGE_WORDS } from '../../domain/referral/step-words.js';
import { triageReferral } from '../../usecases/referrals/change-referral.js';
import { RadioGroup } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { MrcGradeField } from '../components/mrc-grade-field.js';
import { Notice } from '../components/notice.js';
import { TextField } from '../components/text-fields.js';
import { capital, choicesOf } from '../components/words.js';
import { textOf } from '../forms/form-values.js';
import { dateFields } from './step-routes.js';
import type { Step, StepFields } from './step-routes.js';

const GRADES = { min: 1, max: 5 };

/** The decision whether the programme suits somebody; it is made once. */
export const TRIAGE: Step = {
  slug: 'triage',
  pageId: 'page:triage',
  title: 'Triage',
  button: 'Record the decision',
  begun: ({ referral }, today) => ({
    mrcGrade: String(referral.mrcGrade ?? ''),
    ...dateFields('decidedOn', today),
  }),
  isOpen: ({ triage }) => triage === null,
  Over: ({ referral }) => (
    <Notice kind="plain" title="Decided already">
      <p safe>{decidedWords(referral)}</p>
    </Notice>
  ),
  Fields: TriageFields,
  record: ({ context, actor, referralId, read, basedOn }) => {
    const decision = read.choice('decision', TRIAGE_DECISIONS, 'Choose the decision.');
    const reason = read.optionalText('reason', 500);
    const mrcGrade = read.optionalWhole('mrcGrade', GRADES);
    const decidedOn = read.date('decidedOn', 'Give the day of the decision.');
    if (decision === null || decidedOn === null || read.errors.length > 0) return null;
    return triageReferral(context, actor, referralId, { decision, decidedOn, reason, mrcGrade, basedOn });
  },
  // Who was accepted is booked next; otherwise the referral is closed.
  next: (form) => (textOf(form, 'decision') === 'accepted' ? '/offers' : '/closing'),
};

function decidedWords({ triage }: Referral): string {
  if (triage === null) return '';
  const reason = triage.reason === null ? '' : `: ${triage.reason}`;
  return `${capital(TRIAGE_WORDS[triage.decision])} on ${britishDate(triage.decidedOn)}${reason}.`;
}

function TriageFields({ text, date }: StepFields): JSX.Element {
  return (
    <>
      <RadioGroup
        {...text('decision')}
        label="Decision"
        choices={choicesOf(TRIAGE_DECISIONS, TRIAGE_WORDS)}
      />
      <TextField
        {...text('reason')}
        label="Reason"
        hint="Needed where the referral is not accepted; where it was redirected, say where to."
        width="long"
        maxlength={500}
      />
      <MrcGradeField {...text('mrcGrade')} label="MRC dyspnoea grade" none="Not known" />
      <DateField {...date('decidedOn')} label="Decided on" />
    </>
  );
}
