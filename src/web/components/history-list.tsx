import { londonTime } from '../../domain/calendar/london-time.js';
import type { HistoryEntry } from '../../domain/history/history.js';
import { EmptyState } from './parts.js';
import { Table, Text } from './table.js';
import { PLAIN_WORDS } from './value-words.js';
import type { RecordWords } from './value-words.js';

/** How a history is read. */
export type HistoryWords = Required<RecordWords>;

const PLAIN: HistoryWords = { isTold: () => true, ...PLAIN_WORDS };

interface HistoryListProps {
  /** Earliest first. */
  readonly entries: readonly HistoryEntry[];
  /** What it is the history of, such as `referral`; one page may show several. */
  readonly of: string;
  readonly words?: HistoryWords;
}

/** Every version of a record, the present one first: who made it, when, why, and what it changed. */
export function HistoryList({ entries, of, words = PLAIN }: HistoryListProps): JSX.Element {
  if (entries.length === 0) return <EmptyState>There is no history.</EmptyState>;
  return (
    <div class="aligned">
      {[...entries].reverse().map((entry) => (
        <VersionView entry={entry} isFirst={entry === entries[0]} of={of} words={words} />
      ))}
    </div>
  );
}

interface VersionViewProps {
  readonly entry: HistoryEntry;
  /** Nothing was there before. */
  readonly isFirst: boolean;
  readonly of: string;
  readonly words: HistoryWords;
}

function VersionView({ entry, isFirst, of, words }: VersionViewProps): JSX.Element {
  const { version } = entry;
  const changes = entry.changes.filter(({ field }) => words.isTold(field));
  const present = { head: version === 0 ? 'What holds' : isFirst ? 'Recorded' : 'From then on' };
  return (
    <section>
      <h2 safe>{version === 0 ? 'The defaults' : `Version ${version} of the ${of}`}</h2>
      {version === 0 ? '' : <p safe>{originWords(entry)}</p>}
      <Table
        caption={
          version === 0
            ? 'What holds until somebody chooses'
            : `What version ${version} of the ${of} ${isFirst ? 'recorded' : 'changed'}`
        }
        columns={[{ head: 'What' }, ...(isFirst ? [] : [{ head: 'Before' }]), present]}
        rows={changes.map((change) => [
          <Text value={words.field(change.field)} />,
          ...(isFirst ? [] : [<Text value={words.value(change.field, change.former)} />]),
          <Text value={words.value(change.field, change.present)} />,
        ])}
      />
    </section>
  );
}

function originWords({ changedAt, changedBy, reason }: HistoryEntry): string {
  const who = `${londonTime(changedAt)}, ${changedBy?.name ?? 'author not kept'}`;
  return reason === null ? who : `${who}: ${reason}`;
}
