import { isShown } from '../../domain/indicators/figure.js';
import type { FigureMember, MemberFilter } from '../../domain/indicators/figure.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { OpenedFigure } from '../../reports/quarterly/open-figure.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { patientNames } from '../../storage/patients/patient-names.js';
import type { PatientName } from '../../storage/patients/patient-names.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { ReportRequest } from './report-request.js';

/** A referral behind a figure, with the name of the person. */
export type NamedMember = FigureMember & PatientName;

/** A figure with some of those behind it. */
export interface FigureWithMembers extends Omit<OpenedFigure, 'members'> {
  readonly page: Page<NamedMember>;
}

/**
 * Who stands behind a figure of the report; that it was opened, and whom it showed, is told to the trail.
 *
 * @param kind those who count so only, or all of the denominator; everybody where it is null
 * @returns refused where there is no such figure, or the page asked for goes on from nobody in it
 */
export async function openFigureOfQuarter(
  context: Context,
  actor: TeamMember,
  request: ReportRequest,
  asked: { readonly figureId: string; readonly kind: MemberFilter | null; readonly page: PageRequest },
): Promise<Outcome<FigureWithMembers>> {
  const { figureId, kind } = asked;
  const opened = await context.reports.figure({ ...request, teamId: actor.teamId }, figureId);
  if (opened === null) return refused({ code: 'not-found', what: 'figure' });
  const members = opened.members.filter((member) => kind === null || isShown(kind, member.kind));
  const page = pageOfMembers(members, asked.page);
  if (page === null) return refused({ code: 'bad-cursor' });
  const ids = page.rows.map(({ patientId }) => patientId);
  const names = await patientNames(context.reader, actor.teamId, ids);
  const { period, asAt, narrowing = {} } = request;
  const referralIds = page.rows.map(({ referralId }) => referralId);
  await recordRead(context, actor, {
    action: 'figure-opened',
    details: { figureId, period: period.label, asAt, ...narrowing, referralIds },
  });
  const { figure, rule } = opened;
  return done({ figure, rule, page: { next: page.next, rows: page.rows.map((row) => named(row, names)) } });
}

function named(member: FigureMember, names: ReadonlyMap<string, PatientName>): NamedMember {
  const name = names.get(member.patientId);
  if (name === undefined) throw new Error('A referral of the team is of a person of the team.');
  return { ...member, ...name };
}

/** Null where the list holds nobody from whom it was to go on. */
function pageOfMembers(
  members: readonly FigureMember[],
  { after, limit }: PageRequest,
): Page<FigureMember> | null {
  const last = after === null ? -1 : members.findIndex(({ referralId }) => referralId === after.id);
  if (after !== null && last < 0) return null;
  const rows = members.slice(last + 1, last + 1 + limit);
  const end = rows.at(-1);
  const isEnd = end === undefined || last + 1 + limit >= members.length;
  return { rows, next: isEnd ? null : { key: '', id: end.referralId } };
}
