import { britishDate } from '../../domain/calendar/british-date.js';
import { quarterOf } from '../../domain/calendar/period.js';
import type { CohortKind } from '../../domain/cohort/cohorts.js';
import { INDICATORS } from '../../domain/indicators/registered.js';
import type { FigureOfReferral } from '../../reports/quarterly/open-figure.js';
import type { CourseShown } from '../../usecases/referrals/open-referral.js';
import { Table, Text } from '../components/table.js';
import { counted } from '../components/words.js';

interface OtherQuartersProps {
  /** What the person counts in this quarter. */
  readonly figures: readonly FigureOfReferral[];
  readonly cohortDays: CourseShown['cohortDays'];
}

/** The indicators in which a person does not count this quarter, each with the day by which they count in another. */
export function OtherQuarters({ figures, cohortDays }: OtherQuartersProps): JSX.Element {
  const here = new Set(figures.map(({ figureId }) => figureId));
  const elsewhere = INDICATORS.filter(({ id }) => !here.has(id));
  if (elsewhere.length === 0) return '';
  const title = `${counted(elsewhere.length, 'indicator', 'indicators')} not of this quarter`;
  return (
    <details>
      <summary safe>{title}</summary>
      <Table
        caption="Where this person counts in another quarter, or in none yet"
        isStacked
        columns={[{ head: 'Figure' }, { head: 'Why' }]}
        rows={elsewhere.map(({ title: name, cohort }) => [
          <Text value={name} />,
          <Text value={whyElsewhere(cohort, cohortDays)} />,
        ])}
      />
    </details>
  );
}

const DAYS: Readonly<Record<CohortKind, { readonly on: string; readonly never: string }>> = {
  referral: { on: 'Received on', never: 'Not received' },
  start: { on: 'Started on', never: 'Has not started' },
  discharge: { on: 'Discharged on', never: 'Neither assessed for discharge nor closed' },
};

/** @example whyElsewhere('start', started on 20 December 2024) -> 'Started on 20 December 2024: counts in 2024-25-Q3' */
function whyElsewhere(cohort: CohortKind, cohortDays: CourseShown['cohortDays']): string {
  const [day, { on, never }] = [cohortDays[cohort], DAYS[cohort]];
  return day === null
    ? `${never}: counts in no quarter yet`
    : `${on} ${britishDate(day)}: counts in ${quarterOf(day).label}`;
}
