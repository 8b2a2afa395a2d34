import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import type { Caution } from '../../reports/outcomes/outcomes-model.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import { findMeasure } from '../../domain/measures/catalogue.js';
import { WALK_TESTS } from '../../domain/measures/registered.js';
import { TIMEPOINT_WORDS } from '../assessment-entry/words.js';
import { acknowledgementWords } from '../cautions/caution-words.js';
import { Notice } from '../components/notice.js';
import { capital } from '../components/words.js';
import type { MarkedAssessment } from './assessments-section.js';

/** A caution of the outcomes, with who has put a name to it. */
export interface ShownCaution extends Caution {
  readonly acknowledgement: StandingCaution['acknowledgement'];
}

interface CautionListProps {
  readonly cautions: readonly ShownCaution[];
  /** Those that the cautions may be about. */
  readonly assessments: readonly MarkedAssessment[];
}

/** Cautions above everything else: first those that somebody must put a name to. */
export function CautionList({ cautions, assessments }: CautionListProps): JSX.Element {
  const open = cautions.filter(
    ({ mustBeAcknowledged, isAcknowledged }) => mustBeAcknowledged && !isAcknowledged,
  );
  const others = cautions.filter((caution) => !open.includes(caution));
  return (
    <>
      {open.length === 0 ? (
        ''
      ) : (
        <Cautions
          kind="warning"
          title="Cautions that nobody has acknowledged"
          cautions={open}
          assessments={assessments}
        />
      )}
      {others.length === 0 ? (
        ''
      ) : (
        <Cautions
          kind="check"
          title="Before you use these figures"
          cautions={others}
          assessments={assessments}
        />
      )}
    </>
  );
}

interface CautionsProps extends CautionListProps {
  readonly kind: 'warning' | 'check';
  readonly title: string;
}

function Cautions({ kind, title, cautions, assessments }: CautionsProps): JSX.Element {
  return (
    <Notice kind={kind} title={title}>
      <ul>
        {grouped(cautions, assessments).map(({ words, cautionsAt }) => (
          <li>
            <span safe>{words}</span>
            {cautionsAt === null ? (
              ''
            ) : (
              <>
                {' '}
                <a href={`/assessments/${cautionsAt}/cautions`}>
                  {kind === 'warning' ? 'Acknowledge' : 'Source'}
                  <span class="visually-hidden" safe>{`: ${words}`}</span>
                </a>
              </>
            )}
          </li>
        ))}
      </ul>
    </Notice>
  );
}

interface Told {
  readonly words: string;
  /** The assessment on whose page the caution is acknowledged; null where none is needed. */
  readonly cautionsAt: string | null;
}

interface Group extends Omit<Told, 'words'> {
  readonly text: string;
  /** The assessment that raised it in words; empty where the comparison of two did. */
  readonly raisedBy: string;
}

/** Each text once, with the measures that it belongs to; what an assessment raised stands for each of them. */
function grouped(
  cautions: readonly ShownCaution[],
  assessments: readonly MarkedAssessment[],
): readonly Told[] {
  const groups = new Map<string, Group & { readonly names: string[] }>();
  for (const caution of cautions) {
    const { measureId } = caution;
    const [text, cautionsAt] = [textOf(caution), caution.mustBeAcknowledged ? caution.assessmentId : null];
    const raisedBy = whichWords(caution.assessmentId, assessments);
    const key = `${raisedBy} ${text}`;
    const group = groups.get(key) ?? { names: [], raisedBy, text, cautionsAt };
    const name = measureId === null ? null : (findMeasure(measureId)?.shortName ?? measureId);
    if (name !== null && !isNamedIn(text, name, measureId) && !group.names.includes(name)) {
      group.names.push(name);
    }
    groups.set(key, group);
  }
  return [...groups.values()].map(({ names, raisedBy, text, cautionsAt }) => ({
    words: [raisedBy, names.join(', '), text].filter((part) => part !== '').join(': '),
    cautionsAt,
  }));
}

/** Whether a text says already what it is about: the measure, or the walk that gave it. */
function isNamedIn(text: string, name: string, measureId: string | null): boolean {
  const test = WALK_TESTS.find(({ measure }) => measure.id === measureId)?.shortName ?? name;
  return text.startsWith(name) || text.startsWith(test);
}

/** The assessment that raised a caution. @example 'Baseline assessment of 20 April 2026' */
function whichWords(id: string | null, assessments: readonly MarkedAssessment[]): string {
  const entry = assessments.find(({ assessment }) => assessment.id === id)?.assessment.entry;
  if (entry === undefined) return '';
  return `${capital(TIMEPOINT_WORDS[entry.timepoint])} of ${britishDate(entry.assessedOn)}`;
}

function textOf({ text, acknowledgement }: ShownCaution): string {
  return acknowledgement === null ? text : `${text} ${acknowledgementWords(acknowledgement)}`;
}
