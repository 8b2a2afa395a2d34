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
}

/** What became of a record while somebody was typing: who changed it, when, why, and what differs now. */
export function ChangedMeanwhile({ meanwhile, words = PLAIN_WORDS }: ChangedMeanwhileProps): JSX.Element {
  const changes = guarded(meanwhile.changes);
  return (
    <Notice kind="warning" title="Somebody changed this while you were typing" isLive>
      <p>
        Nothing of yours was stored. What you typed is still below. Compare it with what holds now, and send
        it again if it is still right.
      </p>
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
          columns={[{ head: 'What' }, { head: 'When you opened it' }, { head: 'Now' }]}
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
