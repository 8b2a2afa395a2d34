import { mayOpen } from '../../auth/access.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { TeamMember } from '../../usecases/context.js';
import type { NamedMark } from '../../usecases/corrections/named-mark.js';
import type { OpenedReferral } from '../../usecases/referrals/open-referral.js';
import { markWords } from '../corrections/marking-view.js';
import { Notice } from '../components/notice.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { spokenName } from '../people/names.js';
import { AssessmentsSection } from './assessments-section.js';
import type { MarkedAssessment } from './assessments-section.js';
import { CautionList } from './caution-list.js';
import type { ShownCaution } from './caution-list.js';
import { ChangeFigure } from './change-figure.js';
import { CourseLine } from './course-line.js';
import { FiguresSection } from './figures-section.js';
import type { FiguresShown } from './figures-section.js';
import { ReferralHead } from './referral-head.js';
import { SessionsSection } from './sessions-section.js';
import { StepsSection } from './steps-section.js';

interface ReferralViewProps {
  readonly frame: Frame;
  readonly opened: OpenedReferral;
  readonly role: TeamMember['role'];
  readonly mark: NamedMark | null;
  readonly siteName: string;
  readonly today: PlainDate;
  /** None for somebody who may not see them. */
  readonly cautions: readonly ShownCaution[];
  /** Those that stand and those entered in error; null for somebody who may not see them. */
  readonly assessments: readonly MarkedAssessment[] | null;
  /** Null for somebody who may not see them. */
  readonly figures: FiguresShown | null;
}

/** The page of one referral. An administrator sees it without scores, cautions and figures. */
export function ReferralView(props: ReferralViewProps): JSX.Element {
  const { frame, opened, role, mark, siteName, today, cautions, assessments, figures } = props;
  const { referral, patient, course, outcomes } = opened;
  return (
    <Page frame={frame} title={spokenName(patient)}>
      <ReferralHead {...{ opened, siteName, today }} />
      <StepsSection role={role} opened={opened} />
      {mark === null ? '' : <InErrorNotice referralId={referral.id} mark={mark} />}
      <CautionList cautions={cautions} assessments={assessments ?? []} />
      {course === null ? '' : <CourseLine timeline={course.timeline} />}
      {outcomes === null ? '' : <ChangeFigure outcomes={outcomes} />}
      {course === null ? '' : <SessionsSection course={course} sessions={outcomes?.sessions ?? null} />}
      {assessments === null ? '' : <AssessmentsSection assessments={assessments} />}
      {figures === null ? '' : <FiguresSection referralId={referral.id} shown={figures} />}
      <ul class="plain not-printed">
        <li>
          <a href={`/referrals/${referral.id}/history`}>History and corrections</a>
        </li>
        {mark === null ? (
          <li>
            <a href={`/referrals/${referral.id}/entered-in-error`}>Mark this referral as entered in error</a>
          </li>
        ) : (
          ''
        )}
        {outcomes === null ? (
          ''
        ) : (
          <li>
            <a href={`/referrals/${referral.id}/fhir`} download="course.fhir.json">
              This course as a file for other services (FHIR R4, JSON)
            </a>
          </li>
        )}
        {mayOpen(role, 'page:merge') ? (
          <li>
            <a href={`/patients/${referral.patientId}/merge`}>Bring two records of this person together</a>
          </li>
        ) : (
          ''
        )}
      </ul>
    </Page>
  );
}

interface InErrorNoticeProps {
  readonly referralId: string;
  readonly mark: NamedMark;
}

function InErrorNotice({ referralId, mark }: InErrorNoticeProps): JSX.Element {
  return (
    <Notice kind="warning" title="This referral was entered in error">
      <p safe>{`It counts in no figure. ${markWords(mark)}`}</p>
      <p>
        <a href={`/referrals/${referralId}/restoration`}>Restore it</a>
      </p>
    </Notice>
  );
}
