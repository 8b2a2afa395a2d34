import type { ReleaseEntry } from '../../domain/release/kept-release.js';
import { parsePeriod } from '../../domain/calendar/period.js';
import { periodWords } from '../../domain/calendar/period-words.js';
import { londonDateAt } from '../../domain/calendar/plain-date.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import { readReleases } from '../../usecases/releases/read-releases.js';
import { ButtonLink, EmptyState } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { pageOf, visitorOf } from '../web.js';
import type { Web, WebApp } from '../web.js';

/** The list of releases: of the own team for a lead, those made to it for a commissioner. */
export function releaseListPage(app: WebApp, { context }: Web): void {
  app.get('/releases', pageOf('page:releases'), async (request, reply) => {
    const { actor } = visitorOf(request);
    const releases = await readReleases(context, actor);
    const view = { frame: frameOf(request, reply), releases, isLead: actor.role === 'lead' };
    return sendPage(reply, <ListView {...view} />);
  });
}

interface ListProps {
  readonly frame: Frame;
  readonly releases: readonly ReleaseEntry[];
  readonly isLead: boolean;
}

function ListView({ frame, releases, isLead }: ListProps): JSX.Element {
  return (
    <Page frame={frame} title="Releases">
      <h1>Releases</h1>
      <p>
        {isLead
          ? 'Summaries that left the team, with nobody to be recognised in them. A release never changes; a correction is a new number.'
          : 'Summaries that were released to you, newest first. A release never changes; a correction is a new number.'}
      </p>
      {isLead ? (
        <p>
          <ButtonLink href="/releases/draft" kind="primary">
            Draft a release
          </ButtonLink>
        </p>
      ) : (
        ''
      )}
      {releases.length === 0 ? (
        <EmptyState>Nothing has been released yet.</EmptyState>
      ) : (
        <Table
          caption="Releases, newest first"
          isStacked
          columns={[
            { head: 'Release' },
            { head: 'Period' },
            { head: isLead ? 'Commissioner' : 'Team' },
            { head: 'Counts' },
            { head: 'Released' },
            { head: 'Stands' },
          ]}
          rows={releases.map((release) => rowOf(release, isLead))}
        />
      )}
    </Page>
  );
}

function rowOf(release: ReleaseEntry, isLead: boolean): readonly JSX.Element[] {
  const { number, period, commissionerName, teamName, mode, releasedAt } = release;
  return [
    <a href={`/releases/${number}`} safe>
      {`Release ${number}`}
    </a>,
    <Text value={periodInWords(period)} />,
    <Text value={isLead ? commissionerName : teamName} />,
    <Text value={mode} />,
    <Text value={britishDate(londonDateAt(releasedAt))} />,
    <Text value={standingWords(release)} />,
  ];
}

/** A release is of a quarter or a year, by its label. @example periodInWords('2026-27-Q1') -> '2026-27-Q1 (April to June 2026)' */
function periodInWords(label: string): string {
  const period = parsePeriod(label);
  return period === null ? label : periodWords(period);
}

/** Whether a release stands. @example standingWords(corrected by 4) -> 'corrected by release 4' */
function standingWords({ withdrawn, correctedBy, corrects }: ReleaseEntry): string {
  if (withdrawn !== null) return 'withdrawn';
  if (correctedBy !== null) return `corrected by release ${correctedBy}`;
  return corrects === null ? 'yes' : `yes, corrects release ${corrects}`;
}
