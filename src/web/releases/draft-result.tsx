import { codeListsOf, titleOf } from '../../domain/release/exposure.js';
import { countOf } from '../../domain/release/issued.js';
import { precisionOf } from '../../domain/release/precision.js';
import type { Exposure } from '../../domain/release/exposure.js';
import { LEFT_OUT } from '../../domain/release/settle.js';
import { universeOf } from '../../domain/release/universes.js';
import { releaseDocument } from '../../reports/release/release-document.js';
import type { ReleaseDraft } from '../../usecases/releases/draft-release.js';
import { Button, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { Table, Text } from '../components/table.js';
import type { FormValues } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import { DocumentView } from '../report/document-view.js';
import { HiddenDraft } from './hidden-draft.js';

interface ResultProps {
  readonly frame: Frame;
  readonly form: FormValues;
  readonly draft: ReleaseDraft;
}

/** What a draft came to: the attack, what is hidden and why, what was merged and lost, and the summary as it will be read. */
export function DraftResult({ frame, form, draft }: ResultProps): JSX.Element {
  const { attack } = draft;
  return (
    <>
      {attack.isPassed ? (
        <Passed frame={frame} form={form} draft={draft} />
      ) : (
        <Refused frame={frame} form={form} draft={draft} />
      )}
      <HiddenCounts draft={draft} />
      <Lost draft={draft} />
      <details>
        <summary>The summary as the commissioner will read it</summary>
        <DocumentView document={releaseDocument(draft.release)} addressOf={() => '#in-short'} />
      </details>
    </>
  );
}

function Passed({ frame, form, draft }: ResultProps): JSX.Element {
  const { targets, releases } = draft.attack;
  const others = releases.length - 1;
  return (
    <>
      <Notice kind="done" title="No hidden count can be worked out closely" isLive>
        <p safe>
          {`The service tried to work out ${targets} hidden counts and small differences from this summary with ${others === 0 ? 'no other release' : `${others} other ${others === 1 ? 'release' : 'releases'}`} of the financial year. None comes out closely enough to know somebody by.`}
        </p>
      </Notice>
      <Form frame={frame} action="/releases/new" label="Release this summary">
        <HiddenDraft form={form} />
        <p>Once released it never changes, and the commissioner can read it at once.</p>
        <div class="actions">
          <Button kind="primary">Release this summary</Button>
        </div>
      </Form>
    </>
  );
}

function Refused({ frame, form, draft }: ResultProps): JSX.Element {
  const { exposures, trouble } = draft.attack;
  return (
    <>
      <Notice kind="warning" title="This draft would give people away" isLive>
        <p safe>{trouble ?? 'It cannot be released as it is. Each finding names what would mend it.'}</p>
      </Notice>
      {exposures.length === 0 ? (
        ''
      ) : (
        <Table
          caption="What a reader could work out"
          columns={[
            { head: 'Table' },
            { head: 'Figures' },
            { head: 'Could be worked out as' },
            { head: 'What mends it' },
          ]}
          rows={exposures.map((exposure) => [
            <Text value={exposure.tableTitle} />,
            <Text value={exposure.figures} />,
            <Text value={spanWords(exposure)} />,
            <Text value={exposure.remedy.words} />,
          ])}
        />
      )}
      <Form frame={frame} action="/releases/draft/merged" label="Merge as proposed">
        <HiddenDraft form={form} />
        <div class="actions">
          <Button kind="primary">Merge as proposed</Button>
        </div>
      </Form>
    </>
  );
}

function spanWords({ low, high }: Exposure): string {
  if (high === null) return `${low} or more`;
  return low === high ? `exactly ${low}` : `${low} to ${high}`;
}

const BECAUSE = {
  small: 'so small that somebody could be known by it',
  'protects-others': 'a small count could be worked out from it',
} as const;

/** For the lead only: the counts themselves never leave the team. */
function HiddenCounts({ draft }: { readonly draft: ReleaseDraft }): JSX.Element {
  const { issued } = draft;
  const rows = [
    ...issued.totals.flatMap(({ universe, count, hidden }) =>
      hidden === null ? [] : [['Totals', universeOf(universe).words, String(count), BECAUSE[hidden]]],
    ),
    ...issued.tables.flatMap((table) =>
      table.cells.flatMap((cell) => {
        const because = table.hidden[cell.id];
        if (because === undefined) return [];
        return [[titleOf(table.tableId), cell.words, String(countOf(table, cell)), BECAUSE[because]]];
      }),
    ),
  ];
  if (rows.length === 0) return <p>No count needs to be hidden.</p>;
  return (
    <Table
      caption="What is hidden, and why: for you only, since the counts never leave the team"
      columns={[{ head: 'Table' }, { head: 'Group' }, { head: 'Referrals', isNumber: true }, { head: 'Why' }]}
      rows={rows.map((cells) => cells.map((cell) => <Text value={cell} />))}
    />
  );
}

function Lost({ draft }: { readonly draft: ReleaseDraft }): JSX.Element {
  const { issued, release, choices } = draft;
  const { cells, hiddenCells, roundedCells, mostRoundedBy, shares } = precisionOf(issued, release);
  const isPrinted = (id: string): boolean => issued.tables.some(({ tableId }) => tableId === id);
  const merged = Object.entries(choices)
    .filter(([id, list]) => list === LEFT_OUT || (isPrinted(id) && list !== codeListsOf(id)[0]?.id))
    .map(([id]) => titleOf(id));
  return (
    <>
      <h2>What is lost</h2>
      <p safe>
        {`${hiddenCells} of ${cells} counts are hidden; ${roundedCells} are rounded, by ${mostRoundedBy} at most. ${merged.length === 0 ? 'No table was merged or left out.' : `Merged or left out: ${merged.join('; ')}.`}`}
      </p>
      {shares.length === 0 ? (
        ''
      ) : (
        <Table
          caption="Percentages as counted, and as they are printed"
          columns={[{ head: 'Percentage' }, { head: 'As counted', isNumber: true }, { head: 'As printed' }]}
          rows={shares.map(({ title, countedPercent, printedPercent }) => [
            <Text value={title} />,
            <Text value={`${countedPercent.toFixed(1)} %`} />,
            <Text value={printedPercent === null ? 'left out' : `${printedPercent} %`} />,
          ])}
        />
      )}
    </>
  );
}
