import { londonTime } from '../../domain/calendar/london-time.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { NamedMerge } from '../../usecases/patients/list-merges.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import { Notice } from '../components/notice.js';
import { EmptyState, Tag } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { counted } from '../components/words.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { recordWords } from './compare-table.js';
import { BackToReferral } from './find-view.js';

interface MergesViewProps {
  readonly frame: Frame;
  readonly person: FoundPerson;
  /** Earliest first, each with the other record; null where that is gone. */
  readonly merges: readonly { readonly merge: NamedMerge; readonly other: FoundPerson | null }[];
  readonly today: PlainDate;
}

/** Every merge of a record: with which other, by whom, why, and whether it stands. */
export function MergesView({ frame, person, merges, today }: MergesViewProps): JSX.Element {
  const { id, mergedInto } = person.patient;
  return (
    <Page frame={frame} title="Records brought together">
      <p class="crumb">
        <BackToReferral person={person} />
      </p>
      <h1>Records brought together</h1>
      <p class="lead" safe>{`${recordWords(person, today)}.`}</p>
      {mergedInto === null ? (
        ''
      ) : (
        <Notice kind="plain" title="This record was brought into another">
          <p>
            <a href={`/patients/${mergedInto}/merges`}>The record in which the person is kept</a>
          </p>
        </Notice>
      )}
      {merges.length === 0 ? (
        <EmptyState>This record was never brought together with another.</EmptyState>
      ) : (
        <Table
          caption="Merges of this record, the latest first"
          isStacked
          columns={[
            { head: 'With' },
            { head: 'When and why' },
            { head: 'Referrals moved' },
            { head: 'State' },
          ]}
          rows={[...merges]
            .reverse()
            .map(({ merge, other }) => [
              <Text value={otherWords(merge, id, other, today)} />,
              <Text value={`${merge.mergedByName}, ${londonTime(merge.mergedAt)}: ${merge.reason}`} />,
              <Text value={counted(merge.referralIds.length, 'referral', 'referrals')} />,
              <State merge={merge} isKept={merge.survivorId === id} />,
            ])}
        />
      )}
      {mergedInto === null ? (
        <p>
          <a href={`/patients/${id}/merge`}>Bring another record into this one</a>
        </p>
      ) : (
        ''
      )}
    </Page>
  );
}

function otherWords(merge: NamedMerge, id: string, other: FoundPerson | null, today: PlainDate): string {
  const which = merge.survivorId === id ? 'Brought in' : 'Brought into';
  return `${which}: ${other === null ? 'a record that is gone' : recordWords(other, today)}`;
}

function State({ merge, isKept }: { readonly merge: NamedMerge; readonly isKept: boolean }): JSX.Element {
  const { undone, undoneByName, id, survivorId } = merge;
  if (undone !== null) {
    return (
      <>
        <Tag label="undone" />{' '}
        <Text value={`${undoneByName ?? ''}, ${londonTime(undone.at)}: ${undone.reason}`} />
      </>
    );
  }
  return isKept ? (
    <>
      <Tag kind="good" label="stands" /> <a href={`/patients/${survivorId}/merges/${id}/undo`}>Undo</a>
    </>
  ) : (
    <Tag kind="good" label="stands" />
  );
}
