import type { HistoryEntry } from '../../domain/history/history.js';
import { HistoryList } from '../components/history-list.js';
import type { Frame } from '../frame.js';
import { SETTINGS_WORDS } from './settings-history-words.js';
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
        <a href="/team/settings">Back to the settings</a>
      </p>
      <HistoryList entries={entries} of="settings" words={{ isTold: () => true, ...SETTINGS_WORDS }} />
    </TeamPage>
  );
}
