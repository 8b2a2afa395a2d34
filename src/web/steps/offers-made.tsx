import { britishDate } from '../../domain/calendar/british-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Offer, Referral } from '../../domain/referral/referral.js';
import { OFFER_WORDS, RESPONSE_WORDS } from '../../domain/referral/step-words.js';
import { EmptyState } from '../components/parts.js';
import { Table } from '../components/table.js';
import { capital } from '../components/words.js';

/** What has been offered so far, the latest first. */
export function OffersMade({ referral }: { readonly referral: Referral }): JSX.Element {
  const offers = [...referral.offers].reverse();
  if (offers.length === 0) return <EmptyState>Nothing has been offered yet.</EmptyState>;
  return (
    <Table
      caption="Offers so far, the latest first"
      columns={[
        { head: 'What' },
        { head: 'Offered on' },
        { head: 'For the day' },
        { head: 'Answer' },
        { head: 'Answered on' },
      ]}
      rows={offers.map((offer) => [
        <span safe>{capital(OFFER_WORDS[offer.kind])}</span>,
        <Day date={offer.offeredOn} />,
        <Day date={offer.appointmentOn} />,
        <>
          <span safe>{capital(RESPONSE_WORDS[offer.response])}</span>
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

/** No later entry tells what became of it. */
function isAwaited(offer: Offer, { offers, closure }: Referral): boolean {
  if (closure !== null || offer.response !== 'awaiting-reply') return false;
  const later = offers.slice(offers.indexOf(offer) + 1);
  return !later.some(({ kind, offeredOn }) => kind === offer.kind && offeredOn >= offer.offeredOn);
}
