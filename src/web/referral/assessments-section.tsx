import type { Assessment } from '../../domain/assessment/assessment.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import type { NamedMark } from '../../usecases/corrections/named-mark.js';
import { TIMEPOINT_WORDS } from '../assessment-entry/words.js';
import { markWords } from '../corrections/marking-view.js';
import { Tag } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { capital } from '../components/words.js';

/** An assessment, with the mark that it was entered in error; null where it stands. */
export interface MarkedAssessment {
  readonly assessment: Assessment;
  readonly mark: NamedMark | null;
}

/** Every assessment of a referral with what may be done about it. Nothing where there is none. */
export function AssessmentsSection({
  assessments,
}: {
  readonly assessments: readonly MarkedAssessment[];
}): JSX.Element {
  if (assessments.length === 0) return '';
  return (
    <section id="assessments">
      <h2>Assessments</h2>
      <Table
        caption="Assessments in the record, the earliest first"
        isStacked
        columns={[
          { head: 'Assessment' },
          { head: 'Assessed on' },
          { head: 'State' },
          { head: 'What may be done' },
        ]}
        rows={assessments.map(({ assessment, mark }) => [
          <Text value={capital(TIMEPOINT_WORDS[assessment.entry.timepoint])} />,
          <Text value={britishDate(assessment.entry.assessedOn)} />,
          <State assessment={assessment} mark={mark} />,
          <AssessmentLinks assessment={assessment} isMarked={mark !== null} />,
        ])}
      />
    </section>
  );
}

function State({ assessment, mark }: MarkedAssessment): JSX.Element {
  const { id, version } = assessment;
  return (
    <>
      {mark === null ? (
        ''
      ) : (
        <>
          <Tag kind="warning" label="entered in error" /> <Text value={`${markWords(mark)}. `} />
        </>
      )}
      {version === 1 ? (
        'As recorded'
      ) : (
        <a href={`/assessments/${id}/history`}>
          <Text value={`Version ${version}`} />
          <span class="visually-hidden" safe>{`, history${whichWords(assessment)}`}</span>
        </a>
      )}
    </>
  );
}

/** Tells the links of one assessment from those of another. */
function whichWords({ entry }: Assessment): string {
  return `, ${TIMEPOINT_WORDS[entry.timepoint]} of ${britishDate(entry.assessedOn)}`;
}

function AssessmentLinks({
  assessment,
  isMarked,
}: {
  readonly assessment: Assessment;
  readonly isMarked: boolean;
}): JSX.Element {
  const { id, referralId, entry } = assessment;
  const which = whichWords(assessment);
  return isMarked ? (
    <a href={`/assessments/${id}/restoration`}>
      Restore
      <span class="visually-hidden" safe>
        {which}
      </span>
    </a>
  ) : (
    <>
      <a href={`/referrals/${referralId}/assessments/${entry.timepoint}/recorded/${id}`}>
        Results
        <span class="visually-hidden" safe>
          {which}
        </span>
      </a>
      {' · '}
      <a href={`/assessments/${id}/correction`}>
        Correct
        <span class="visually-hidden" safe>
          {which}
        </span>
      </a>
      {' · '}
      <a href={`/assessments/${id}/entered-in-error`}>
        Mark as entered in error
        <span class="visually-hidden" safe>
          {which}
        </span>
      </a>
    </>
  );
}
