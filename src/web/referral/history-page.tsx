import { britishDate } from '../../domain/calendar/british-date.js';
import type { HistoryEntry } from '../../domain/history/history.js';
import { getAssessment } from '../../usecases/assessments/record-assessment.js';
import { openReferral } from '../../usecases/referrals/open-referral.js';
import { readHistory } from '../../usecases/history/read-history.js';
import { commissionersOfTeam, sitesOfTeam } from '../../usecases/providers.js';
import { TIMEPOINT_WORDS } from '../assessment-entry/words.js';
import { HistoryList } from '../components/history-list.js';
import type { HistoryWords } from '../components/history-list.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { spokenName } from '../people/names.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { assessmentHistoryWords } from './assessment-history-words.js';
import { Params } from './params.js';
import { recordWords } from './record-words.js';

/** The history of a referral and of the person: every version, who made it, when and why. */
export function historyPage(app: WebApp, web: Web): void {
  const { context } = web;
  app.get('/referrals/:referralId/history', pageOf('page:referral'), async (request, reply) => {
    const actor = memberOf(request);
    const { referralId } = Params.parse(request.params);
    const opened = await openReferral(context, actor, referralId);
    if (opened.kind === 'refused') return sendRefusal(web, request, reply, opened.refusal);
    const { patient } = opened.value;
    const referral = await readHistory(context, actor, 'referral', referralId);
    const person = await readHistory(context, actor, 'patient', patient.id);
    const places = [...(await sitesOfTeam(context, actor)), ...(await commissionersOfTeam(context, actor))];
    const view = {
      frame: frameOf(request, reply),
      referralId,
      name: spokenName(patient),
      referral: referral.kind === 'done' ? referral.value : [],
      person: person.kind === 'done' ? person.value : [],
      words: recordWords(new Map(places.map(({ id, name }) => [id, name]))),
    };
    return sendPage(reply, <HistoryView {...view} />);
  });
}

/** The history of one assessment: every version, who made it, when and why. */
export function assessmentHistoryPage(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/assessments/:assessmentId/history';
  app.get<AssessmentParams>(path, pageOf('page:assessment-history'), async (request, reply) => {
    const actor = memberOf(request);
    const read = await getAssessment(context, actor, request.params.assessmentId);
    if (read.kind === 'refused') return sendRefusal(web, request, reply, read.refusal);
    const history = await readHistory(context, actor, 'assessment', read.value.id);
    if (history.kind === 'refused') return sendRefusal(web, request, reply, history.refusal);
    const { entry, referralId } = read.value;
    const sites = await sitesOfTeam(context, actor);
    const words = assessmentHistoryWords(new Map(sites.map(({ id, name }) => [id, name])));
    const title = `History: ${TIMEPOINT_WORDS[entry.timepoint]} of ${britishDate(entry.assessedOn)}`;
    return sendPage(
      reply,
      <Page frame={frameOf(request, reply)} title={title}>
        <p class="crumb">
          <a href={`/referrals/${referralId}#assessments`}>Back to the referral</a>
        </p>
        <h1 safe>{title}</h1>
        <HistoryList entries={history.value} of="assessment" words={words} />
      </Page>,
    );
  });
}

interface AssessmentParams {
  readonly Params: { readonly assessmentId: string };
}

interface HistoryViewProps {
  readonly frame: Frame;
  readonly referralId: string;
  readonly name: string;
  /** Earliest first, as is that of the person. */
  readonly referral: readonly HistoryEntry[];
  readonly person: readonly HistoryEntry[];
  readonly words: HistoryWords;
}

function HistoryView(props: HistoryViewProps): JSX.Element {
  const { frame, referralId, name, referral, person, words } = props;
  return (
    <Page frame={frame} title={`History: ${name}`}>
      <p class="crumb">
        <a href={`/referrals/${referralId}`}>Back to the referral</a>
      </p>
      <h1 safe>{`History: ${name}`}</h1>
      <HistoryList entries={referral} of="referral" words={words} />
      <HistoryList entries={person} of="person" words={words} />
    </Page>
  );
}
