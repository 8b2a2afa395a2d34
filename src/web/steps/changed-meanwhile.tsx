import { londonTime } from '../../domain/calendar/london-time.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { Notice } from '../components/notice.js';

/** What was typed stays in the fields; it is stored when it is sent again, knowing what changed. */
export function ChangedMeanwhile({ meanwhile }: { readonly meanwhile: Meanwhile }): JSX.Element {
  const last = meanwhile.versions.at(-1);
  const who = last?.changedBy?.name ?? 'Somebody';
  const when = last === undefined ? '' : ` on ${londonTime(last.changedAt)}`;
  return (
    <div role="alert">
      <Notice kind="check" title="Not stored: the referral has changed meanwhile">
        <p safe>
          {`${who} changed it${when}, while you had it open. What you typed is still here: look at the facts above, and send it again if it is still right.`}
        </p>
      </Notice>
    </div>
  );
}
