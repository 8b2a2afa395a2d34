import type { Period } from '../../domain/calendar/period.js';
import { periodWords } from '../../domain/calendar/period-words.js';
import { INDICATORS } from '../../domain/indicators/registered.js';
import { COHORT_WORDS } from '../../domain/cohort/cohorts.js';
import type { MemberKind } from '../../domain/indicators/figure.js';
import type { FigureOfReferral } from '../../reports/quarterly/open-figure.js';
import type { CourseShown } from '../../usecases/referrals/open-referral.js';
import { EmptyState, Tag } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { OtherQuarters } from './other-quarters.js';

/** The figures of one quarter in which a referral counts. */
export interface FiguresShown {
  readonly period: Period;
  /** Quarters to choose from. */
  readonly quarters: readonly Period[];
  readonly figures: readonly FigureOfReferral[];
  readonly cohortDays: CourseShown['cohortDays'];
}

/** Whether a figure is one of the table of indicators. */
function isIndicator({ figureId }: FigureOfReferral): boolean {
  return INDICATORS.some(({ id }) => id === figureId);
}

/** Whether a figure is another one in whose numerator somebody is, or may come to be. */
export function isOtherThatCounts(figure: FigureOfReferral): boolean {
  return !isIndicator(figure) && (figure.kind === 'numerator' || figure.kind === 'open');
}

interface FiguresSectionProps {
  readonly referralId: string;
  readonly shown: FiguresShown;
}

/** Where this person counts: every indicator of the quarter with the reason in words. */
export function FiguresSection({ referralId, shown }: FiguresSectionProps): JSX.Element {
  const { period, quarters, figures, cohortDays } = shown;
  const [indicators, others] = [figures.filter(isIndicator), figures.filter(isOtherThatCounts)];
  return (
    <section id="counts">
      <h2>Where this person counts</h2>
      <p>
        Quarter:{' '}
        {quarters.map((quarter) => (
          <a
            class="choice-link"
            href={`/referrals/${referralId}?quarter=${encodeURIComponent(quarter.label)}#counts`}
            aria-current={quarter.label === period.label ? 'true' : undefined}
            safe
          >
            {periodWords(quarter)}
          </a>
        ))}
      </p>
      {figures.length === 0 ? (
        <EmptyState>The referral counts in no figure of this quarter.</EmptyState>
      ) : (
        <FigureTable
          caption={`Indicators of ${periodWords(period)}, as things stand today`}
          figures={indicators}
        />
      )}
      <OtherQuarters figures={figures} cohortDays={cohortDays} />
      {others.length === 0 ? (
        ''
      ) : (
        <p>
          <a href={`/referrals/${referralId}/figures?quarter=${encodeURIComponent(period.label)}`} safe>
            {`${others.length} other figures of ${periodWords(period)} in which this person counts`}
          </a>
        </p>
      )}
    </section>
  );
}

const KINDS: Readonly<
  Record<MemberKind, { readonly words: string; readonly tag: 'good' | 'plain' | 'check' }>
> = {
  numerator: { words: 'counts', tag: 'good' },
  'not-numerator': { words: 'in the denominator only', tag: 'plain' },
  open: { words: 'not decided yet', tag: 'check' },
  excluded: { words: 'left out', tag: 'plain' },
};

interface FigureTableProps {
  readonly caption: string;
  readonly figures: readonly FigureOfReferral[];
}

/** How a referral counts in some figures, and why. */
export function FigureTable({ caption, figures }: FigureTableProps): JSX.Element {
  return (
    <Table
      caption={caption}
      isStacked
      columns={[{ head: 'Figure' }, { head: 'How' }, { head: 'Why' }, { head: 'Cohort' }]}
      rows={figures.map(({ title, kind, reason, cohort }) => [
        <Text value={title} />,
        <Tag kind={KINDS[kind].tag} label={KINDS[kind].words} />,
        <Text value={reason} />,
        <Text value={COHORT_WORDS[cohort]} />,
      ])}
    />
  );
}
