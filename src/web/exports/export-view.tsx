import type { AnalysisAsked } from '../../usecases/exports/export-analysis.js';
import { RadioGroup } from '../components/choices.js';
import { Button, ErrorSummary } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import { TextField } from '../components/text-fields.js';
import type { Frame } from '../frame.js';
import { TeamPage } from '../team/team-page.js';

interface ExportViewProps {
  readonly frame: Frame;
  /** The service keeps a key of pseudonyms. */
  readonly hasKey: boolean;
  readonly asked: AnalysisAsked;
  /** What is wrong with the period that was typed. */
  readonly error: string | null;
}

/** What each form of the record holds, whom it names, and the way to each. */
export function ExportView({ frame, hasKey, asked, error }: ExportViewProps): JSX.Element {
  return (
    <TeamPage frame={frame} title="Take the record out" hasErrors={error !== null}>
      <ErrorSummary
        errors={error === null ? [] : [{ field: 'received', message: error }]}
        title="Nothing was taken out"
      />
      <p>
        The record is yours. Take it out whole to keep it, to move it to another place, or to look at it with
        a program of your own. Each time stands in the audit trail with your name.
      </p>
      <h2>The whole record</h2>
      <Notice kind="warning" title="These files name people">
        <p>
          They hold names, NHS numbers, dates of birth, results and everything that was typed about everybody.
          Keep them encrypted, for as long as you need them and no longer, and give them to nobody who may not
          see the record itself. They are no way to send results to a commissioner: that is what releases are
          for.
        </p>
      </Notice>
      <dl class="facts">
        <dt>Tables (ZIP)</dt>
        <dd>
          A CSV file for each table of the record, former versions and releases included, with a data
          dictionary: type, unit, codes and meaning of every column. An operator can bring the file into a
          store without your team, where it gives the same reports.
        </dd>
        <dt>One document (JSON)</dt>
        <dd>The same rows and the same dictionary for a program to read.</dd>
      </dl>
      <p class="actions">
        <ButtonLink href="/team/export/record/zip">Take out as tables (ZIP)</ButtonLink>{' '}
        <ButtonLink href="/team/export/record/json">Take out as one document (JSON)</ButtonLink>
      </p>
      <p class="muted">
        Left behind are the audit trail, which belongs to this store, and everything by which people and
        programs sign in.
      </p>
      <h2>For analysis, under pseudonyms</h2>
      <Notice kind="check" title="Still data about people">
        <p>
          Nobody is named, and no date of birth, NHS number, practice or typed text is in the file. Yet a rare
          diagnosis, an age and a month may be enough for somebody who knows the person. Give it only to those
          with whom you have agreed what it is for, and say there that it is joined with nothing that names
          people.
        </p>
      </Notice>
      <p>
        {hasKey
          ? 'Pseudonyms are made with a key that the service keeps: the same person has the same one in every such file of your team.'
          : 'Pseudonyms are made with a key that is forgotten with the file: they fit no other file. An operator can set a key, so that files fit together.'}
      </p>
      <form method="get" action="/team/export/analysis" aria-label="What the file for analysis holds">
        <RadioGroup
          name="dates"
          label="Dates"
          value={asked.dates}
          choices={[
            {
              value: 'month',
              label: 'Months only',
              hint: 'Gives least away; waits can be told in whole months.',
            },
            { value: 'day', label: 'Days', hint: 'Where waits in days are what is asked.' },
          ]}
        />
        <RadioGroup
          name="ages"
          label="Age at receipt"
          value={asked.ages}
          choices={[
            { value: 'band', label: 'Bands of ten years' },
            { value: 'years', label: 'Years', hint: '90 stands for 90 and over.' },
          ]}
        />
        <TextField
          name="received"
          label="Referrals received in (all of them where it is empty)"
          hint="A financial quarter as 2026-27-Q1, a financial year as 2026-27, or two dates as 2026-04-01..2026-05-31."
          value={asked.received ?? ''}
          error={error}
        />
        <p class="actions">
          <Button kind="plain">Take out for analysis (ZIP)</Button>
        </p>
      </form>
    </TeamPage>
  );
}
