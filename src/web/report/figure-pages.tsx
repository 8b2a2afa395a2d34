import { z } from 'zod';
import { britishDate } from '../../domain/calendar/british-date.js';
import { periodWords } from '../../domain/calendar/period-words.js';
import { MEMBER_FILTERS } from '../../domain/indicators/figure.js';
import type { Figure, MemberFilter, MemberKind } from '../../domain/indicators/figure.js';
import { NOT_NARROWED } from '../../domain/cohort/narrowing.js';
import { narrowedTo } from '../../reports/quarterly/narrowed-to.js';
import { commissionersOfTeam, sitesOfTeam } from '../../usecases/providers.js';
import { openFigureOfQuarter } from '../../usecases/reports/open-figure.js';
import type { FigureWithMembers, NamedMember } from '../../usecases/reports/open-figure.js';
import { reportRequest } from '../../usecases/reports/report-request.js';
import type { AskedReport, ReportRequest } from '../../usecases/reports/report-request.js';
import { attributeText } from '../components/field.js';
import { EmptyState, Pager } from '../components/parts.js';
import { Definitions, Table, Text } from '../components/table.js';
import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { PersonName } from '../people/names.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { faultsAddress, readReportAddress, reportQuery } from './report-address.js';

const SHOWN = 100;

const KIND_WORDS: Readonly<Record<MemberKind, string>> = {
  numerator: 'Counts',
  'not-numerator': 'Does not count',
  open: 'Still open',
  excluded: 'Left out',
};

const FILTER_WORDS: Readonly<Record<MemberFilter, string>> = { ...KIND_WORDS, counted: 'Of these' };

const FigureQuery = z.object({
  kind: z.enum(MEMBER_FILTERS).nullable().catch(null).default(null),
  after: z.uuid().nullable().catch(null).default(null),
});

/** Where the list of a figure stands: which of them, and from whom on. */
interface Shown {
  readonly figureId: string;
  readonly kind: MemberFilter | null;
  readonly after: string | null;
}

/** Who stands behind a figure: everybody in it with the reason in words, and a way to each referral. */
export function figurePages(app: WebApp, web: Web): void {
  const { context } = web;
  app.get<{ Params: { figureId: string } }>(
    '/report/figures/:figureId',
    pageOf('page:report-figure'),
    async (request, reply) => {
      const today = context.clock.today();
      const { asked, faults } = readReportAddress(request.query, today);
      if (faults.length > 0) return reply.redirect(faultsAddress(request.url), 303);
      const { kind, after } = FigureQuery.parse(request.query ?? {});
      const { figureId } = request.params;
      const read = reportRequest(asked, today);
      if (read.kind === 'refused') return sendRefusal(web, request, reply, read.refusal);
      const page = { limit: SHOWN, after: after === null ? null : { key: '', id: after } };
      const outcome = await openFigureOfQuarter(context, memberOf(request), read.value, {
        figureId,
        kind,
        page,
      });
      if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
      const { figure } = outcome.value;
      const narrowing = narrowingWords(read.value, {
        sites: await sitesOfTeam(context, memberOf(request)),
        commissioners: await commissionersOfTeam(context, memberOf(request)),
      });
      return sendPage(
        reply,
        <Page frame={frameOf(request, reply)} title={figure.title}>
          <p class="crumb">
            <a href={attributeText(`/report?${reportQuery(asked)}`)} safe>
              {`Report ${periodWords(read.value.period)}`}
            </a>
          </p>
          <h1 safe>{figure.title}</h1>
          <p class="muted" safe>
            {`${periodWords(read.value.period)}, data cut ${britishDate(read.value.asAt)}; ${cohortWords(figure)}.`}
          </p>
          {narrowing === '' ? '' : <p safe>{narrowing}</p>}
          <Rule opened={outcome.value} />
          <Kinds figure={figure} shown={{ figureId, kind, after }} asked={asked} />
          <Members members={outcome.value.page.rows} figure={figure} />
          <Pager
            first={after === null ? null : addressOf({ figureId, kind, after: null }, asked)}
            next={
              outcome.value.page.next === null
                ? null
                : addressOf({ figureId, kind, after: outcome.value.page.next.id }, asked)
            }
            what="referrals"
          />
        </Page>,
      );
    },
  );
}

/** Empty where the report is of everybody. @example 'Narrowed to diagnosis: COPD.' */
function narrowingWords(
  { narrowing = NOT_NARROWED }: ReportRequest,
  names: Parameters<typeof narrowedTo>[1],
): string {
  const words = narrowedTo(narrowing, names).map((each) => each.words);
  return words.length === 0 ? '' : `Narrowed to ${words.join('; ')}.`;
}

function cohortWords({ cohort }: Figure): string {
  return cohort === 'waiting' ? 'everybody who waits for a start, whenever received' : `${cohort} cohort`;
}

function Rule({ opened: { figure, rule } }: { readonly opened: FigureWithMembers }): JSX.Element {
  const { numerator, denominator, percentage, interval, excluded, people } = figure;
  const share =
    percentage === null || interval === null
      ? 'nobody is counted yet'
      : `${numerator} of ${denominator}: ${percentage.toFixed(1)} % (95 % interval ${interval.low.toFixed(1)} to ${interval.high.toFixed(1)})`;
  const leftOut = excluded.map(({ count, reason }) => `${count} ${reason}`);
  const mark = rule.source.mark === null ? '' : ` [${rule.source.mark}]`;
  return (
    <Definitions
      items={[
        { term: 'Figure', value: <Text value={share} /> },
        { term: 'People behind it', value: <Text value={`${people.numerator} of ${people.denominator}`} /> },
        { term: 'Counts', value: <Text value={rule.numerator} /> },
        { term: 'Of', value: <Text value={rule.denominator} /> },
        { term: 'Left out by rule', value: <Text value={rule.exclusions ?? 'registered in error only'} /> },
        {
          term: 'Left out here',
          value: <Text value={leftOut.length === 0 ? 'nobody' : leftOut.join(', ')} />,
        },
        { term: 'Rule', value: <Text value={figure.ruleId} /> },
        { term: 'Source', value: <Text value={`${rule.source.text}${mark}`} /> },
      ]}
    />
  );
}

interface KindsProps {
  readonly figure: Figure;
  readonly shown: Shown;
  readonly asked: AskedReport;
}

/** The denominator first, then its two parts, then who is not in it. */
const FILTERS_SHOWN = ['counted', 'numerator', 'not-numerator', 'open', 'excluded'] as const;

/** The ways to count, with how many do so, as a way to each. */
function Kinds({ figure, shown, asked }: KindsProps): JSX.Element {
  const counts: Readonly<Record<MemberFilter, number>> = {
    counted: figure.denominator,
    numerator: figure.numerator,
    'not-numerator': figure.denominator - figure.numerator,
    open: figure.open,
    excluded: figure.excluded.reduce((sum, { count }) => sum + count, 0),
  };
  const all = counts.counted + counts.open + counts.excluded;
  const link = (kind: MemberFilter | null, words: string): JSX.Element => (
    <li>
      <a
        href={attributeText(addressOf({ figureId: shown.figureId, kind, after: null }, asked))}
        aria-current={shown.kind === kind ? 'true' : undefined}
        safe
      >
        {words}
      </a>
    </li>
  );
  return (
    <nav class="places inner" aria-label="How they count">
      <ul>
        {link(null, `Everybody (${all})`)}
        {FILTERS_SHOWN.map((kind) => link(kind, `${FILTER_WORDS[kind]} (${counts[kind]})`))}
      </ul>
    </nav>
  );
}

function Members({
  members,
  figure,
}: {
  readonly members: readonly NamedMember[];
  readonly figure: Figure;
}): JSX.Element {
  if (members.length === 0) return <EmptyState>Nobody stands here.</EmptyState>;
  return (
    <Table
      caption={`Referrals behind ${figure.title}`}
      isStacked
      columns={[
        { head: 'Person' },
        { head: 'Referral received' },
        { head: 'How they count' },
        { head: 'Why' },
      ]}
      rows={members.map((member) => [
        <a href={`/referrals/${member.referralId}`}>
          <PersonName person={member} />
        </a>,
        <Text value={britishDate(member.receivedOn)} />,
        <Text value={KIND_WORDS[member.kind]} />,
        <Text value={member.reason} />,
      ])}
    />
  );
}

function addressOf({ figureId, kind, after }: Shown, asked: AskedReport): string {
  const query = new URLSearchParams(reportQuery(asked));
  if (kind !== null) query.set('kind', kind);
  if (after !== null) query.set('after', after);
  return `/report/figures/${encodeURIComponent(figureId)}?${query.toString()}`;
}
