import { DELIVERY_MODES } from '../../domain/referral/closed-sets.js';
import { correctReferral } from '../../usecases/referrals/change-referral.js';
import { DateField } from '../components/date-field.js';
import { Notice } from '../components/notice.js';
import { TextField } from '../components/text-fields.js';
import { ProgrammeFields } from '../register/programme-fields.js';
import { dateFields } from './step-routes.js';
import type { Step, StepFields } from './step-routes.js';

const SESSIONS = { min: 1, max: 60 };
const WEEKS = { min: 1, max: 52 };

/** Stands in the history where a start is planned for the first time: nothing is corrected then. */
const FIRST_PLAN = 'Start planned';

/** The day on which somebody starts, and how their programme is planned. */
export const PLANNED_START: Step = {
  slug: 'planned-start',
  pageId: 'page:planned-start',
  title: 'Planned start',
  button: 'Record the plan',
  begun: ({ referral: { plannedStartOn, deliveryMode, plannedSessions, plannedWeeks } }) => ({
    ...dateFields('plannedStartOn', plannedStartOn),
    deliveryMode: deliveryMode ?? '',
    plannedSessions: String(plannedSessions ?? ''),
    plannedWeeks: String(plannedWeeks ?? ''),
  }),
  isOpen: ({ closure }) => closure === null,
  Over: () => (
    <Notice kind="plain" title="The referral is closed">
      <p>No start can be planned.</p>
    </Notice>
  ),
  Fields: PlanFields,
  record: ({ context, actor, referralId, form, read, basedOn }) => {
    const plannedStartOn = read.date('plannedStartOn', 'Give the day of the first class.');
    const deliveryMode = read.optionalChoice('deliveryMode', DELIVERY_MODES);
    const plannedSessions = read.optionalWhole('plannedSessions', SESSIONS);
    const plannedWeeks = read.optionalWhole('plannedWeeks', WEEKS);
    const reason = form.has('reason') ? read.line('reason', 500, 'Say why the plan is changed.') : FIRST_PLAN;
    if (plannedStartOn === null || reason === null || read.errors.length > 0) return null;
    const changes = { plannedStartOn, deliveryMode, plannedSessions, plannedWeeks };
    return correctReferral(context, actor, referralId, { changes, reason, basedOn });
  },
  next: () => '',
};

function PlanFields({ referral, text, date }: StepFields): JSX.Element {
  return (
    <>
      <DateField {...date('plannedStartOn')} label="First class on" />
      <ProgrammeFields at={text} />
      {referral.plannedStartOn === null ? (
        ''
      ) : (
        <TextField
          {...text('reason')}
          label="Why the plan is changed"
          hint="Kept in the history."
          width="long"
          maxlength={500}
        />
      )}
    </>
  );
}
