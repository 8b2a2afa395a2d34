import { londonTime } from '../../domain/calendar/london-time.js';
import type { HistoryEntry } from '../../domain/history/history.js';
import { Table, Text } from '../components/table.js';
import { fieldWords, valueWords } from '../components/value-words.js';
import type { Frame } from '../frame.js';
import { TeamPage } from './team-page.js';

interface SettingsHistoryViewProps {
  readonly frame: Frame;
  /** Earliest first. */
  readonly entries: readonly HistoryEntry[];
}

/** Every version of the settings, the present one first. */
export function SettingsHistoryView({ frame, entries }: SettingsHistoryViewProps): JSX.Element {
  return (
    <TeamPage frame={frame} title="History of the settings">
      <p class="crumb">
        <a href="/team/settings">Settings</a>
      </p>
      {[...entries].reverse().map((entry) => (
        <VersionView entry={entry} />
      ))}
    </TeamPage>
  );
}

function VersionView({ entry }: { readonly entry: HistoryEntry }): JSX.Element {
  const { version, changes } = entry;
  return (
    <section>
      <h2 safe>{version === 0 ? 'The defaults' : `Version ${version}`}</h2>
      {version === 0 ? '' : <p safe>{originWords(entry)}</p>}
      <Table
        caption={version === 0 ? 'What holds until a team chooses' : `What version ${version} changed`}
        columns={[{ head: 'What' }, { head: 'Before' }, { head: 'From then on' }]}
        rows={changes.map(({ field, former, present }) => [
          <Text value={fieldWords(field)} />,
          <Text value={valueWords(former)} />,
          <Text value={valueWords(present)} />,
        ])}
      />
    </section>
  );
}

function originWords({ changedAt, changedBy, reason }: HistoryEntry): string {
  const who = `${londonTime(changedAt)}, ${changedBy?.name ?? 'somebody'}`;
  return reason === null ? who : `${who}: ${reason}`;
}
