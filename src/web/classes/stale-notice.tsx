import { londonTime } from '../../domain/calendar/london-time.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { ATTENDANCE_WORDS } from '../../domain/referral/step-words.js';
import type { Attendance } from '../../domain/session/session.js';
import type { Mark } from '../../usecases/sessions/keep-register.js';
import type { ClassPerson } from '../../usecases/sessions/read-class.js';
import { Notice } from '../components/notice.js';
import { spokenName } from '../people/names.js';

interface StaleNoticeProps {
  readonly meanwhile: Meanwhile;
  readonly marks: readonly Mark[];
  readonly people: readonly ClassPerson[];
  /** The register as it stands now. */
  readonly register: readonly Attendance[];
}

/** Says that somebody else was quicker, what they changed, and what was not stored for it. */
export function StaleNotice({ meanwhile, marks, people, register }: StaleNoticeProps): JSX.Element {
  const last = meanwhile.versions.at(-1);
  const who = last?.changedBy?.name ?? 'Somebody';
  const when = last === undefined ? '' : ` on ${londonTime(last.changedAt)}`;
  const names = new Map(people.map((person) => [person.referralId, spokenName(person)]));
  const changed = differing(meanwhile, register)
    .map((entry) => wordsOf(entry, names))
    .sort((a, b) => a.localeCompare(b, 'en-GB'));
  return (
    <div role="alert">
      <Notice kind="check" title="Not stored: the register has changed meanwhile">
        <p safe>{`${who} changed it${when}, while you had it open. It is shown as it stands now.`}</p>
        {changed.length === 0 ? (
          ''
        ) : (
          <ul>
            {changed.map((words) => (
              <li safe>{`Changed: ${words}`}</li>
            ))}
          </ul>
        )}
        <p safe>
          {`Your last tap was not stored (${marks.length === 1 ? marks.map((mark) => wordsOf(mark, names)).join('') : 'everybody cancelled by the service'}). If it is still right, tap again.`}
        </p>
      </Notice>
    </div>
  );
}

/** Those whose entry differs from the version that was open; the history names each by their referral. */
function differing(meanwhile: Meanwhile, register: readonly Attendance[]): readonly Mark[] {
  const now = new Map(register.map(({ referralId, outcome }) => [referralId, outcome] as const));
  return meanwhile.changes.flatMap(({ field }) => {
    const [, referralId] = /^attendances\.(.+)$/.exec(field) ?? [];
    return referralId === undefined ? [] : [{ referralId, outcome: now.get(referralId) ?? null }];
  });
}

function wordsOf({ referralId, outcome }: Mark, names: ReadonlyMap<string, string>): string {
  const name = names.get(referralId) ?? 'somebody else';
  return `${name}: ${outcome === null ? 'not marked' : ATTENDANCE_WORDS[outcome]}`;
}
