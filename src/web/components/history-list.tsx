import { londonTime } from '../../domain/calendar/london-time.js';
import type { HistoryEntry } from '../../domain/history/history.js';
import { EmptyState } from './parts.js';
import { Table, Text } from './table.js';
import { fieldWords, valueWords } from './value-words.js';

/** How the fields of a record and what they held are read. */
export interface HistoryWords {
  /** Whether a reader is told of the field at all. */
  readonly isTold: (field: string) => boolean;
  readonly field: (field: string) => string;
  readonly value: (field: string, value: unknown) => string;
}

const PLAIN: HistoryWords = {
  isTold: () => true,
  field: fieldWords,
  value: (_field, value) => valueWords(value),
};

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
    <>
      {[...entries].reverse().map((entry) => (
        <VersionView entry={entry} of={of} words={words} />
      ))}
    </>
  );
}

interface VersionViewProps {
  readonly entry: HistoryEntry;
  readonly of: string;
  readonly words: HistoryWords;
}

function VersionView({ entry, of, words }: VersionViewProps): JSX.Element {
  const { version } = entry;
  const changes = entry.changes.filter(({ field }) => words.isTold(field));
  return (
    <section>
      <h2 safe>{version === 0 ? 'The defaults' : `Version ${version} of the ${of}`}</h2>
      {version === 0 ? '' : <p safe>{originWords(entry)}</p>}
      <Table
        caption={
          version === 0 ? 'What holds until somebody chooses' : `What version ${version} of the ${of} changed`
        }
        columns={[{ head: 'What' }, { head: 'Before' }, { head: 'From then on' }]}
        rows={changes.map(({ field, former, present }) => [
          <Text value={words.field(field)} />,
          <Text value={words.value(field, former)} />,
          <Text value={words.value(field, present)} />,
        ])}
      />
    </section>
  );
}

function originWords({ changedAt, changedBy, reason }: HistoryEntry): string {
  const who = `${londonTime(changedAt)}, ${changedBy?.name ?? 'author not kept'}`;
  return reason === null ? who : `${who}: ${reason}`;
}
