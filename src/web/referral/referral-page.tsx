import { z } from 'zod';
import { mayCall } from '../../auth/access.js';
import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import { listAssessments } from '../../usecases/assessments/record-assessment.js';
import { namedMarks } from '../../usecases/corrections/named-mark.js';
import { FHIR_MEDIA_TYPE, sendCourse } from '../../usecases/fhir/send-course.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import { openReferral } from '../../usecases/referrals/open-referral.js';
import type { OpenedReferral } from '../../usecases/referrals/open-referral.js';
import { readFiguresOfReferral } from '../../usecases/reports/figures-of-referral.js';
import { listCautions } from '../../usecases/safety/acknowledge-caution.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import type { MarkedAssessment } from './assessments-section.js';
import type { ShownCaution } from './caution-list.js';
import { assessmentHistoryPage, historyPage } from './history-page.js';
import { Params } from './params.js';
import type { FiguresShown } from './figures-section.js';
import { OtherFiguresView } from './other-figures-view.js';
import { ReferralView } from './referral-view.js';

const Query = z.object({ quarter: z.string().optional().catch(undefined) });

/** The page of one referral: its course, its outcomes, and where it counts. */
export function referralPages(app: WebApp, web: Web): void {
  const { context } = web;
  app.get('/referrals/:referralId', pageOf('page:referral'), async (request, reply) => {
    const actor = memberOf(request);
    const { referralId } = Params.parse(request.params);
    const opened = await openReferral(context, actor, referralId);
    if (opened.kind === 'refused') return sendRefusal(web, request, reply, opened.refusal);
    const { quarter } = Query.parse(request.query);
    const sites = await sitesOfTeam(context, actor);
    const [mark = null] = await namedMarks(context, [opened.value.referral.enteredInError]);
    const view = {
      frame: frameOf(request, reply),
      opened: opened.value,
      mark,
      role: actor.role,
      siteName: sites.find(({ id }) => id === opened.value.referral.siteId)?.name ?? '',
      today: context.clock.today(),
      cautions: await cautionsOf(context, actor, opened.value),
      assessments: await assessmentsOf(context, actor, opened.value.referral.id),
      figures: await figuresOf(context, actor, opened.value, quarter),
    };
    return sendPage(reply, <ReferralView {...view} />);
  });

  app.get('/referrals/:referralId/figures', pageOf('page:figures-of-referral'), async (request, reply) => {
    const actor = memberOf(request);
    const { referralId } = Params.parse(request.params);
    const opened = await openReferral(context, actor, referralId);
    if (opened.kind === 'refused') return sendRefusal(web, request, reply, opened.refusal);
    const figures = await figuresOf(context, actor, opened.value, Query.parse(request.query).quarter);
    if (figures === null) return reply.redirect(`/referrals/${opened.value.referral.id}`, 303);
    const view = { frame: frameOf(request, reply), opened: opened.value, figures };
    return sendPage(reply, <OtherFiguresView {...view} />);
  });
  app.get('/referrals/:referralId/fhir', pageOf('page:course-file'), async (request, reply) => {
    const { referralId } = Params.parse(request.params);
    const sent = await sendCourse(context, memberOf(request), referralId);
    if (sent.kind === 'refused') return sendRefusal(web, request, reply, sent.refusal);
    return reply
      .type(FHIR_MEDIA_TYPE)
      .header('content-disposition', 'attachment; filename="course.fhir.json"')
      .send(Buffer.from(sent.value));
  });
  historyPage(app, web);
  assessmentHistoryPage(app, web);
}

/** The assessments with who marked those that were entered in error; null for somebody who may not see them. */
async function assessmentsOf(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<readonly MarkedAssessment[] | null> {
  if (!mayCall(actor.role, 'listAssessments')) return null;
  const listed = await listAssessments(context, actor, referralId, 'all');
  if (listed.kind === 'refused') return null;
  const marks = await namedMarks(
    context,
    listed.value.map(({ enteredInError }) => enteredInError),
  );
  return listed.value.map((assessment, index) => ({ assessment, mark: marks[index] ?? null }));
}

/** The cautions with who acknowledged them; none for somebody who may not see them. */
async function cautionsOf(
  context: Context,
  actor: TeamMember,
  { outcomes }: OpenedReferral,
): Promise<readonly ShownCaution[]> {
  const cautions = outcomes?.cautions ?? [];
  const ids = new Set(cautions.flatMap((each) => (each.isAcknowledged ? (each.assessmentId ?? []) : [])));
  const standing = new Map<string, readonly StandingCaution[]>();
  for (const id of ids) {
    const listed = await listCautions(context, actor, id);
    if (listed.kind === 'done') standing.set(id, listed.value);
  }
  return cautions.map((caution) => {
    const found = standing
      .get(caution.assessmentId ?? '')
      ?.find(({ id, measureId }) => id === caution.id && measureId === caution.measureId);
    return { ...caution, acknowledgement: found?.acknowledgement ?? null };
  });
}

/** The figures of one of the quarters in which the referral counts, the latest unless another is asked for. */
async function figuresOf(
  context: Context,
  actor: TeamMember,
  { course, referral }: OpenedReferral,
  wanted: string | undefined,
): Promise<FiguresShown | null> {
  if (course === null || !mayCall(actor.role, 'listFiguresOfReferral')) return null;
  const { quarters, cohortDays } = course;
  const period = quarters.find(({ label }) => label === wanted) ?? quarters.at(-1);
  if (period === undefined) return null;
  const request = { period, asAt: context.clock.today() };
  const read = await readFiguresOfReferral(context, actor, referral.id, request);
  return read.kind === 'refused' ? null : { period, quarters, cohortDays, figures: read.value };
}
