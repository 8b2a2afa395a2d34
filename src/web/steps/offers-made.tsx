import { britishDate } from '../../domain/calendar/british-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Offer, Referral } from '../../domain/referral/referral.js';
import { OFFER_WORDS, RESPONSE_WORDS } from '../../domain/referral/step-words.js';
import { EmptyState, Tag } from '../components/parts.js';
import { Table } from '../components/table.js';
import { capital } from '../components/words.js';

/** What has been offered so far, the latest first. */
export function OffersMade({ referral }: { readonly referral: Referral }): JSX.Element {
  const offers = [...referral.offers].reverse();
  if (offers.length === 0) return <EmptyState>Nothing has been offered yet.</EmptyState>;
  return (
    <Table
      caption="Offers so far, the latest first"
      isStacked
      columns={[
        { head: 'What' },
        { head: 'Offered on' },
        { head: 'For the day' },
        { head: 'Answer' },
        { head: 'Answered on' },
        { head: 'Mistaken?' },
      ]}
      rows={offers.map((offer) => [
        <span safe>{capital(OFFER_WORDS[offer.kind])}</span>,
        <Day date={offer.offeredOn} />,
        <Day date={offer.appointmentOn} />,
        <>
          <span safe>{capital(RESPONSE_WORDS[offer.response])}</span>
          {offer.enteredInError === null ? '' : <Tag kind="warning" label="entered in error" />}
          {isAwaited(offer, referral) ? (
            <>
              {' '}
              <a href={`/referrals/${referral.id}/offers?answer=${offer.id}#form`}>
                Record the answer
                <span class="visually-hidden" safe>{` to the offer of ${britishDate(offer.offeredOn)}`}</span>
              </a>
            </>
          ) : (
            ''
          )}
        </>,
        <Day date={offer.respondedOn} />,
        <MarkLink offer={offer} referralId={referral.id} />,
      ])}
    />
  );
}

function Day({ date }: { readonly date: PlainDate | null }): JSX.Element {
  return date === null ? (
    <span class="muted">none</span>
  ) : (
    <time datetime={date} safe>
      {britishDate(date)}
    </time>
  );
}

function MarkLink({
  offer,
  referralId,
}: {
  readonly offer: Offer;
  readonly referralId: string;
}): JSX.Element {
  const address = `/referrals/${referralId}/offers/${offer.id}`;
  const isMarked = offer.enteredInError !== null;
  return (
    <a href={isMarked ? `${address}/restoration` : `${address}/entered-in-error`}>
      {isMarked ? 'Restore' : 'Mark as entered in error'}
      <span class="visually-hidden" safe>{`, the offer of ${britishDate(offer.offeredOn)}`}</span>
    </a>
  );
}

/** No later entry tells what became of it. */
function isAwaited(offer: Offer, { offers, closure }: Referral): boolean {
  if (closure !== null || offer.enteredInError !== null || offer.response !== 'awaiting-reply') return false;
  const later = offers.slice(offers.indexOf(offer) + 1).filter((each) => each.enteredInError === null);
  return !later.some(({ kind, offeredOn }) => kind === offer.kind && offeredOn >= offer.offeredOn);
}
