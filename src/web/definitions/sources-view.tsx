import { allSources } from '../../domain/sources/all-sources.js';
import { evidenceMark } from '../../domain/evidence/citation.js';
import type { EvidenceStatus } from '../../domain/evidence/citation.js';
import { Table, Text } from '../components/table.js';
import type { Frame } from '../frame.js';
import { StatusMark } from './citation.js';
import { DefinitionsPage } from './definitions-page-frame.js';

const READ = 'read';

/** Every source, how well it is known, and what rests on it. */
export function SourcesView({ frame }: { readonly frame: Frame }): JSX.Element {
  const sources = allSources();
  return (
    <DefinitionsPage frame={frame} title="Sources">
      <p safe>{countWords(sources.map(({ citation }) => citation.status))}</p>
      <Table
        caption={`${sources.length} sources`}
        isStacked
        columns={[{ head: 'Source' }, { head: 'How well it is known' }, { head: 'What rests on it' }]}
        rows={sources.map(({ citation, usedFor }) => [
          <span id={`source-${citation.id}`}>
            <span safe>{citation.text}</span>
            {citation.doi === null ? '' : <span class="muted" safe>{`, doi ${citation.doi}`}</span>}
          </span>,
          evidenceMark(citation.status) === null ? (
            <Text value={READ} />
          ) : (
            <StatusMark status={citation.status} />
          ),
          <span class="small" safe>
            {usedFor.join('; ')}
          </span>,
        ])}
      />
    </DefinitionsPage>
  );
}

/** @example 'Read: 120. Quoted in another paper: 14.' */
function countWords(statuses: readonly EvidenceStatus[]): string {
  const counts = new Map<string, number>();
  for (const status of statuses) {
    const mark = evidenceMark(status) ?? READ;
    counts.set(mark, (counts.get(mark) ?? 0) + 1);
  }
  return [...counts]
    .map(([mark, count]) => `${mark.charAt(0).toUpperCase()}${mark.slice(1)}: ${count}.`)
    .join(' ');
}
