import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import type { Frame } from '../frame.js';
import { TeamPage } from '../team/team-page.js';

/** What each form of the record holds, whom it names, and the way to each. */
export function ExportView({ frame }: { readonly frame: Frame }): JSX.Element {
  return (
    <TeamPage frame={frame} title="Take the record out">
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
    </TeamPage>
  );
}
