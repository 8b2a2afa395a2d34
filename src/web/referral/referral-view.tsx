import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { TeamMember } from '../../usecases/context.js';
import type { OpenedReferral } from '../../usecases/referrals/open-referral.js';
import { Notice } from '../components/notice.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { spokenName } from '../people/names.js';
import { CautionList } from './caution-list.js';
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
  readonly siteName: string;
  readonly today: PlainDate;
  /** Null for somebody who may not see them. */
  readonly figures: FiguresShown | null;
}

/** The page of one referral. An administrator sees it without scores, cautions and figures. */
export function ReferralView({
  frame,
  opened,
  role,
  siteName,
  today,
  figures,
}: ReferralViewProps): JSX.Element {
  const { referral, patient, course, outcomes } = opened;
  return (
    <Page frame={frame} title={spokenName(patient)}>
      <ReferralHead {...{ opened, siteName, today }} />
      <StepsSection role={role} opened={opened} />
      {referral.enteredInError === null ? (
        ''
      ) : (
        <Notice kind="warning" title="This referral was entered in error">
          <p safe>{`It counts in no figure. Reason: ${referral.enteredInError.reason}`}</p>
        </Notice>
      )}
      {outcomes === null ? '' : <CautionList outcomes={outcomes} />}
      {course === null ? '' : <CourseLine timeline={course.timeline} />}
      {outcomes === null ? '' : <ChangeFigure outcomes={outcomes} />}
      {course === null ? '' : <SessionsSection course={course} sessions={outcomes?.sessions ?? null} />}
      {figures === null ? '' : <FiguresSection referralId={referral.id} shown={figures} />}
      <p>
        <a href={`/referrals/${referral.id}/history`}>History and corrections</a>
      </p>
    </Page>
  );
}
