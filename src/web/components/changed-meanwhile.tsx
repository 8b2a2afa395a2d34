import { londonTime } from '../../domain/calendar/london-time.js';
import { guarded } from '../../domain/history/withheld.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { Notice } from './notice.js';
import { Table, Text } from './table.js';
import { PLAIN_WORDS } from './value-words.js';
import type { RecordWords } from './value-words.js';

interface ChangedMeanwhileProps {
  readonly meanwhile: Meanwhile;
  /** Fields and values as the page calls them. */
  readonly words?: RecordWords;
  /** Where what was typed stands: in the form that was just sent, or in a draft of before. */
  readonly typedIn?: 'form' | 'draft';
}

/** What became of a record while somebody was typing: who changed it, when, why, and what differs now. */
export function ChangedMeanwhile({
  meanwhile,
  words = PLAIN_WORDS,
  typedIn = 'form',
}: ChangedMeanwhileProps): JSX.Element {
  const changes = guarded(meanwhile.changes).filter(({ field }) => words.isTold?.(field) ?? true);
  return (
    <Notice kind="warning" title={TITLES[typedIn]} isLive>
      <p safe>{LEADS[typedIn]}</p>
      <ul>
        {meanwhile.versions.map(({ changedBy, changedAt, reason }) => (
          <li safe>
            {`${changedBy?.name ?? 'Somebody'}, ${londonTime(changedAt)}${reason === null ? '' : `: ${reason}`}`}
          </li>
        ))}
      </ul>
      {changes.length === 0 ? (
        ''
      ) : (
        <Table
          caption="What differs now"
          columns={[{ head: 'What' }, { head: THEN[typedIn] }, { head: 'Now' }]}
          rows={changes.map((change) => [
            <Text value={words.field(change.field)} />,
            <Text value={'former' in change ? words.value(change.field, change.former) : WITHHELD} />,
            <Text value={'present' in change ? words.value(change.field, change.present) : WITHHELD} />,
          ])}
        />
      )}
    </Notice>
  );
}

/** Stands for a value that says who somebody is. */
const WITHHELD = 'not repeated here';

const TITLES = {
  form: 'Somebody changed this while you were typing',
  draft: 'Somebody changed this since the draft was begun',
};

const LEADS = {
  form: 'Nothing of yours was stored. What you typed is still below. Compare it with what holds now, and send it again if it is still right.',
  draft:
    'The draft is still below as it was typed, and is not recorded. Compare it with what holds now, and record it if it is still right.',
};

const THEN = { form: 'When you opened it', draft: 'When it was begun' };
