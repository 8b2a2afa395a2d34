import { shownValue } from '../../domain/measures/shown-value.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import type { Course } from '../../domain/pathway/course.js';
import type { MeasureOutcome, Outcomes } from '../outcomes/outcomes-model.js';
import { TO_BE_SIGNED } from './letter-model.js';
import type { Letter, LetterBlock, LetterInput } from './letter-model.js';
import { PLAIN_MEASURES } from './plain-measures.js';
import type { PlainMeasure } from './plain-measures.js';

/**
 * The summary for the person: the same results and the same judgement as everywhere, in short plain sentences, without
 * a score, a threshold or advice.
 */
export function patientLetter(input: LetterInput): Letter {
  const { outcomes, course, person, teamName } = input;
  const told = outcomes.measures.flatMap((measure) => {
    const plain = PLAIN_MEASURES.get(measure.measureId);
    return plain === undefined ? [] : [{ measure, sentences: sentencesOf(measure, plain) }];
  });
  const items = told.flatMap(({ sentences }) => (sentences === null ? [] : [sentences]));
  return {
    kind: 'patient',
    title: 'What you did, and what changed',
    writtenOn: outcomes.asAt,
    settingsVersion: outcomes.settingsVersion,
    blocks: [
      { kind: 'paragraph', text: `Dear ${person.givenName} ${person.familyName},` },
      { kind: 'paragraph', text: courseInWords(course) },
      { kind: 'heading', text: 'What we measured' },
      items.length === 0
        ? { kind: 'paragraph', text: 'We have no tests to tell you about.' }
        : ({ kind: 'list', items } satisfies LetterBlock),
      { kind: 'heading', text: 'Your plan' },
      { kind: 'paragraph', text: planInWords(course) },
      {
        kind: 'paragraph',
        text: `Your care team can tell you more about this letter. It was made for ${teamName}.`,
      },
      { kind: 'signature', lines: ['Checked and signed by', 'Date'] },
    ],
    notes: [TO_BE_SIGNED, ...notesOf(outcomes, told)],
  };
}

function courseInWords({ startedOn, attendance }: Course): string {
  if (startedOn === null) return 'You did not start the classes with us.';
  const { attended, expected } = attendance;
  return `You began our classes on ${britishDate(startedOn)}. You came to ${attended} out of ${expected}.`;
}

function planInWords({ facts }: Course): string {
  return facts.exercisePlanGivenOn === null
    ? 'We have no note that we gave you a plan to keep active.'
    : `We gave you a plan to keep active on ${britishDate(facts.exercisePlanGivenOn)}.`;
}

/** What is said of one measure; null where nothing can be said in plain words. */
function sentencesOf(measure: MeasureOutcome, plain: PlainMeasure): string | null {
  const verdict = verdictOf(measure);
  const caution = measure.isLikeForLike === false ? 'The two tests were not done in the same way.' : null;
  if (plain.kind === 'feeling') {
    if (verdict === null) return null;
    return joined([`We asked about ${plain.about}. ${FEELINGS[verdict]}`, caution]);
  }
  const { baseline, discharge, improvement, unit } = measure;
  if (baseline === null) return null;
  const first = plain.first(shownValue(baseline.value, unit));
  if (discharge === null) return joined([first, 'We do not have this test from the end.']);
  if (improvement === null) {
    return joined([
      first,
      plain.then(shownValue(discharge.value, unit)),
      'These two tests can not be put side by side.',
    ]);
  }
  return joined([
    first,
    plain.then(shownValue(discharge.value, unit)),
    differenceInWords(shownValue(Math.abs(improvement), unit), improvement, plain),
    verdict === null || improvement === 0 ? null : RESULTS[verdict],
    caution,
  ]);
}

function differenceInWords(
  size: string,
  improvement: number,
  plain: Extract<PlainMeasure, { readonly kind: 'result' }>,
): string {
  if (size === '0') return 'That is the same.';
  return improvement > 0 ? plain.more(size) : plain.less(size);
}

type Verdict = 'improved' | 'little-change' | 'worse';

const RESULTS: Readonly<Record<Verdict, string>> = {
  improved: 'This is a gain that counts.',
  'little-change': 'This is a small change.',
  worse: 'This is a step back.',
};

const FEELINGS: Readonly<Record<Verdict, string>> = {
  improved: 'Your answers at the end were better.',
  'little-change': 'Your answers at the end were much the same.',
  worse: 'Your answers at the end were less good.',
};

function verdictOf(measure: MeasureOutcome): Verdict | null {
  return measure.class === null || measure.class === 'change-only' ? null : measure.class;
}

function joined(sentences: readonly (string | null)[]): string {
  return sentences.filter((sentence) => sentence !== null).join(' ');
}

function notesOf(
  { measures }: Outcomes,
  told: readonly { readonly measure: MeasureOutcome; readonly sentences: string | null }[],
): readonly string[] {
  const said = new Set(
    told.flatMap(({ measure, sentences }) => (sentences === null ? [] : [measure.measureId])),
  );
  const unsaid = measures.filter((measure) => !said.has(measure.measureId)).map((measure) => measure.name);
  const worse = measures
    .filter((measure) => said.has(measure.measureId) && measure.class === 'worse')
    .map((measure) => measure.name);
  return [
    ...(worse.length === 0 ? [] : [`The letter tells of a change for the worse: ${worse.join('; ')}.`]),
    ...(unsaid.length === 0 ? [] : [`Not in the letter: ${unsaid.join('; ')}.`]),
  ];
}
