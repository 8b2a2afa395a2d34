import type { SessionsSummary } from '../../reports/outcomes/outcomes-model.js';
import type { CourseShown } from '../../usecases/referrals/open-referral.js';
import { Definitions, Text } from '../components/table.js';

interface SessionsSectionProps {
  readonly course: CourseShown;
  /** What a clinician sees beside: sessions that were not supervised, and those of the diary. */
  readonly sessions: SessionsSummary | null;
}

/** Sessions attended; supervised, unsupervised and reported ones are never added up. */
export function SessionsSection({ course, sessions }: SessionsSectionProps): JSX.Element {
  const { attendance, plannedWeeks } = course;
  const { attended, expected, planned, cancelledByService, didNotAttend, cancelledByPatient } = attendance;
  const cancelled = cancelledByService === 0 ? '' : `, ${cancelledByService} cancelled by the service`;
  return (
    <section>
      <h2>Sessions</h2>
      <Definitions
        items={[
          {
            term: 'Supervised, attended',
            value: (
              <Text
                value={`${attended} of ${expected} expected (${planned} planned in ${plannedWeeks} weeks${cancelled})`}
              />
            ),
          },
          { term: 'Did not attend', value: <Text value={String(didNotAttend)} /> },
          { term: 'Cancelled by the patient', value: <Text value={String(cancelledByPatient)} /> },
          ...(sessions === null
            ? []
            : [
                {
                  term: 'Unsupervised, attended',
                  value: <Text value={String(sessions.unsupervisedAttended)} />,
                },
                { term: 'Reported in the diary', value: <Text value={diaryWords(sessions)} /> },
              ]),
        ]}
      />
    </section>
  );
}

function diaryWords({ diaryWeeks, diarySessionsReported }: SessionsSummary): string {
  if (diaryWeeks === 0) return 'no diary';
  return `${diarySessionsReported} sessions in ${diaryWeeks} weeks of diary`;
}
