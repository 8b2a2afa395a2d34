import { britishDate } from '../../domain/calendar/british-date.js';
import type { Course } from '../../domain/pathway/course.js';
import { equationName } from '../../domain/prediction/equation-name.js';
import { CLOSURE_WORDS, DIAGNOSIS_WORDS, SOURCE_WORDS } from '../../domain/referral/words.js';
import type { EndResult, MeasureOutcome, Outcomes } from '../outcomes/outcomes-model.js';
import { TO_BE_SIGNED } from './letter-model.js';
import type { Letter, LetterBlock, LetterInput } from './letter-model.js';
import { groupedNhsNumber, shownChangeOf, shownResult, shownSize } from './letter-words.js';

/**
 * The summary for the general practice: what was measured at both ends, how each change stands against the MID, what
 * was attended and whether a written plan was given. It gives no advice: what follows is for clinicians to decide.
 */
export function gpLetter(input: LetterInput): Letter {
  const { outcomes, course, teamName } = input;
  return {
    kind: 'gp',
    title: 'Pulmonary rehabilitation: summary of outcomes',
    writtenOn: outcomes.asAt,
    settingsVersion: outcomes.settingsVersion,
    blocks: [
      { kind: 'paragraph', text: aboutWhom(input) },
      { kind: 'paragraph', text: courseInWords(course) },
      ...measuresBlocks(outcomes),
      ...cautionsBlocks(outcomes),
      { kind: 'heading', text: 'Exercise plan' },
      { kind: 'paragraph', text: planInWords(course) },
      {
        kind: 'paragraph',
        text:
          `Figures are computed from the record of ${teamName} as at ${britishDate(outcomes.asAt)}. ` +
          'This summary gives no advice on treatment: decisions belong to registered clinicians under local policy.',
      },
      { kind: 'signature', lines: ['Checked and signed by', 'Role', 'Date'] },
    ],
    notes: [TO_BE_SIGNED, ...notesOf(outcomes)],
  };
}

function aboutWhom({ person }: LetterInput): string {
  const number =
    person.nhsNumber === null
      ? 'NHS number not recorded'
      : `NHS number ${groupedNhsNumber(person.nhsNumber)}`;
  return `${person.givenName} ${person.familyName}, born ${britishDate(person.bornOn)}, ${number}`;
}

function courseInWords(course: Course): string {
  const { facts, startedOn, attendance } = course;
  const received = britishDate(facts.receivedOn);
  const sentences = [
    `Referred on ${received} (${SOURCE_WORDS[facts.source]}; ${DIAGNOSIS_WORDS[facts.diagnosis]}).`,
    startedOn === null
      ? 'Did not start the programme.'
      : `Started on ${britishDate(startedOn)} and attended ${attendance.attended} of ${attendance.expected} supervised sessions.`,
  ];
  if (facts.closure === null) sentences.push('The referral is open.');
  else {
    const { closedOn, reason } = facts.closure;
    sentences.push(`Closed on ${britishDate(closedOn)}: ${CLOSURE_WORDS[reason]}.`);
  }
  return sentences.join(' ');
}

function measuresBlocks({ measures }: Outcomes): readonly LetterBlock[] {
  const heading: LetterBlock = { kind: 'heading', text: 'What was measured' };
  if (measures.length === 0) return [heading, { kind: 'paragraph', text: 'Nothing was measured.' }];
  return [
    heading,
    {
      kind: 'table',
      caption: 'Baseline beside discharge',
      columns: ['Measure', 'Baseline', 'Discharge', 'Change', 'In words'],
      rows: measures.map((measure) => [
        measure.name,
        endInWords(measure.baseline, measure),
        endInWords(measure.discharge, measure),
        measure.change === null ? '-' : shownChangeOf(measure.change, measure),
        changeInWords(measure),
      ]),
    },
    {
      kind: 'paragraph',
      text: 'MID: minimal important difference, the smallest change that matters to people.',
    },
  ];
}

function endInWords(end: EndResult | null, measure: MeasureOutcome): string {
  if (end === null) return 'not measured';
  const result = `${shownResult(end.value, measure)} (${britishDate(end.assessedOn)})`;
  const { percentPredicted = null, equationId = '' } = end.predicted ?? {};
  if (percentPredicted === null) return result;
  return `${result}, ${Math.round(percentPredicted)} % of predicted (${equationName(equationId)})`;
}

/** How a change stands against the MID, in words; the same class that every page and report shows. */
function changeInWords(measure: MeasureOutcome): string {
  const { improvementThreshold: mid, worseningThreshold, noPairReason } = measure;
  if (measure.class === null) return noPairReason ?? 'No pair';
  const size = mid === null ? '' : ` (${shownSize(mid.value, measure)})`;
  switch (measure.class) {
    case 'improved':
      return `Better by the MID${size} or more`;
    case 'little-change':
      return `Changed by less than the MID${size}`;
    case 'worse':
      return worseningThreshold === null
        ? `Worse by the MID${size} or more`
        : `Worse by the threshold for getting worse (${shownSize(worseningThreshold.value, measure)}) or more`;
    case 'change-only':
      return 'No MID is known: the change is not judged';
  }
}

/** Only what follows from the figures; what was seen at an assessment is for the clinician to tell or not. */
function cautionsBlocks({ cautions, measures }: Outcomes): readonly LetterBlock[] {
  const names = new Map(measures.map((measure) => [measure.measureId, measure.name]));
  const items = cautions
    .filter((caution) => caution.assessmentId === null)
    .map(({ measureId, text }) => {
      const name = measureId === null ? undefined : names.get(measureId);
      return name === undefined ? text : `${name}: ${text}`;
    });
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: 'To be known with these figures' },
        { kind: 'list', items },
      ];
}

function planInWords({ facts }: Course): string {
  return facts.exercisePlanGivenOn === null
    ? 'No written exercise plan is recorded.'
    : `A written exercise plan was given on ${britishDate(facts.exercisePlanGivenOn)}.`;
}

function notesOf({ cautions }: Outcomes): readonly string[] {
  const raised = cautions.filter((caution) => caution.assessmentId !== null).length;
  if (raised === 0) return [];
  const [verb, noun, them] = raised === 1 ? ['is', 'caution', 'it'] : ['are', 'cautions', 'them'];
  return [
    `There ${verb} ${raised} ${noun} from the assessments in the record. The letter leaves ${them} out: decide what the practice must know.`,
  ];
}
