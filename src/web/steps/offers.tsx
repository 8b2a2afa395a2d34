import { z } from 'zod';
import { OFFER_KINDS, OFFER_RESPONSES } from '../../domain/referral/closed-sets.js';
import { OFFER_WORDS, RESPONSE_WORDS } from '../../domain/referral/step-words.js';
import { recordOffer } from '../../usecases/referrals/change-referral.js';
import { RadioGroup } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Notice } from '../components/notice.js';
import { choicesOf } from '../components/words.js';
import { OffersMade } from './offers-made.js';
import { dateFields } from './step-routes.js';
import type { Step, StepFields } from './step-routes.js';

const Query = z.object({ answer: z.string().nullable().catch(null).default(null) });

/** Offers of an assessment or of a place in the programme, with what became of them. */
export const OFFERS: Step = {
  slug: 'offers',
  pageId: 'page:offers',
  title: 'Offers',
  button: 'Record the offer',
  // A new offer is made today, of what comes next; an answer is to the offer that waits for it.
  begun: ({ referral, stage }, today, query) => {
    const { answer } = Query.parse(query ?? {});
    const offer = referral.offers.find(({ id }) => id === answer);
    const kind = stage === 'awaiting-start' ? 'programme' : 'assessment';
    return {
      kind: offer?.kind ?? kind,
      response: offer === undefined ? 'awaiting-reply' : '',
      ...dateFields('offeredOn', offer?.offeredOn ?? today),
      ...dateFields('appointmentOn', offer?.appointmentOn ?? null),
      ...dateFields('respondedOn', offer === undefined ? null : today),
    };
  },
  Before: OffersMade,
  isOpen: ({ closure }) => closure === null,
  Over: () => (
    <Notice kind="plain" title="The referral is closed">
      <p>Nothing more can be offered.</p>
    </Notice>
  ),
  Fields: OfferFields,
  record: ({ context, actor, referralId, read, basedOn }) => {
    const kind = read.choice('kind', OFFER_KINDS, 'Choose what was offered.');
    const offeredOn = read.date('offeredOn', 'Give the day of the offer.');
    const appointmentOn = read.optionalDate('appointmentOn');
    const response = read.choice('response', OFFER_RESPONSES, 'Choose the answer, or awaiting reply.');
    const respondedOn = read.optionalDate('respondedOn');
    if (kind === null || offeredOn === null || response === null || read.errors.length > 0) return null;
    const offer = { kind, offeredOn, appointmentOn, response, respondedOn, basedOn };
    return recordOffer(context, actor, referralId, offer);
  },
  next: () => '/offers',
};

function OfferFields({ text, date }: StepFields): JSX.Element {
  return (
    <>
      <h2>Record an offer</h2>
      <RadioGroup {...text('kind')} label="What is offered" choices={choicesOf(OFFER_KINDS, OFFER_WORDS)} />
      <DateField {...date('offeredOn')} label="Offered on" />
      <DateField
        {...date('appointmentOn')}
        label="For the day (optional)"
        hint="The day of the assessment, or of the first class."
      />
      <RadioGroup {...text('response')} label="Answer" choices={choicesOf(OFFER_RESPONSES, RESPONSE_WORDS)} />
      <DateField {...date('respondedOn')} label="Answered on (optional)" />
    </>
  );
}
