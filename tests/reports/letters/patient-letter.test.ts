import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import { courseOf } from '../../../src/domain/pathway/course.js';
import { patientLetter } from '../../../src/reports/letters/patient-letter.js';
import { PLAIN_MEASURES } from '../../../src/reports/letters/plain-measures.js';
import { renderLetterText } from '../../../src/reports/letters/render-letter-text.js';
import { anyStore } from '../../support/arbitrary-facts.js';
import { aCat, anAssessment, aResult, aShuttleWalk, closed, sessionsFrom } from '../../support/facts.js';
import { letterInput, readingGrade, textsOf } from '../../support/letter.js';

const finished = {
  contacts: sessionsFrom('2026-05-04', { attended: 9, missed: 3 }),
  assessments: [
    anAssessment('baseline', '2026-04-20', [
      aShuttleWalk(200),
      aCat(22),
      aResult('one-minute-sit-to-stand', 18),
      aResult('five-repetition-sit-to-stand', 15.2),
      aResult('hads-depression', 6),
    ]),
    anAssessment('discharge', '2026-06-15', [
      aShuttleWalk(250),
      aCat(21),
      aResult('one-minute-sit-to-stand', 19),
      aResult('five-repetition-sit-to-stand', 13),
      aResult('hads-depression', 9),
    ]),
  ],
  exercisePlanGivenOn: plainDate('2026-06-15'),
  closure: closed('2026-06-16'),
};

const itemsOf = (facts: Parameters<typeof letterInput>[0]): readonly string[] =>
  patientLetter(letterInput(facts)).blocks.find((block) => block.kind === 'list')?.items ?? [];

describe('the letter to the person', () => {
  it('tells what was done in plain sentences, and judges it as every report does', () => {
    const items = itemsOf(finished);
    expect(items).toContain(
      'At the start you walked 200 metres in the walk that gets faster. At the end you walked 250 metres. That is 50 metres more. This is a gain that counts.',
    );
    expect(items).toContain(
      'At the start you stood up from a chair 18 times in one minute. At the end it was 19 times. That is 1 more. This is a small change.',
    );
    expect(items).toContain(
      'At the start it took you 15.2 seconds to stand up from a chair five times. At the end it took 13 seconds. That is 2.2 seconds faster. This is a gain that counts.',
    );
  });

  it('tells answers on questionnaires without a number', () => {
    const items = itemsOf(finished).filter((item) => item.startsWith('We asked'));
    expect(items).toEqual([
      'We asked about how your chest makes your days. Your answers at the end were much the same.',
      'We asked about your mood. Your answers at the end were less good.',
    ]);
    expect(items.join(' ')).not.toMatch(/\d/);
  });

  it('warns the clinician of what is worse, and of what the letter leaves out', () => {
    const assessments = finished.assessments.map((assessment) => ({
      ...assessment,
      results: [...assessment.results, aResult('bckq-total', 30)],
    }));
    const { notes } = patientLetter(letterInput({ ...finished, assessments }));
    expect(notes).toContain(
      'The letter tells of a change for the worse: Hospital Anxiety and Depression Scale, depression.',
    );
    expect(notes).toContain('Not in the letter: Bristol COPD Knowledge Questionnaire total.');
  });

  it('says so where a test is missing at the end, where the two were done differently, and where nothing changed', () => {
    const [baseline] = finished.assessments;
    if (baseline === undefined) throw new Error('No baseline.');
    const end = (walk: ReturnType<typeof aShuttleWalk>) =>
      itemsOf({ ...finished, assessments: [baseline, anAssessment('discharge', '2026-06-15', [walk])] })[0];
    expect(itemsOf({ ...finished, assessments: [baseline] })[0]).toMatch(
      /We do not have this test from the end\.$/,
    );
    expect(end(aShuttleWalk(250, { conditions: { walkingAid: 'stick' } }))).toMatch(
      /The two tests were not done in the same way\.$/,
    );
    expect(end(aShuttleWalk(200))).toMatch(/That is the same\.$/);
  });

  it('tells somebody who did not start so, without blame', () => {
    const texts = textsOf(patientLetter(letterInput({ closure: closed('2026-05-01', 'declined') })));
    expect(texts).toContain('You did not start the classes with us.');
    expect(texts).toContain('We have no tests to tell you about.');
  });

  it('knows every measure that it tells of', () => {
    const known = MEASURES.map((measure) => measure.id);
    expect(known).toEqual(expect.arrayContaining([...PLAIN_MEASURES.keys()]));
  });

  it('reads at the sixth grade (about eleven years) or below', () => {
    const sentences = textsOf(patientLetter(letterInput(finished))).filter((text) => text.endsWith('.'));
    expect(readingGrade(sentences.join(' '))).toBeLessThanOrEqual(6);
  });

  it('shows no jargon, no threshold and no score of a questionnaire, whatever was measured', () => {
    const names = MEASURES.map((measure) => measure.name);
    fc.assert(
      fc.property(anyStore, (store) => {
        for (const facts of store) {
          if (courseOf(facts, plainDate('2026-12-31')) === null) continue;
          const text = renderLetterText(patientLetter(letterInput(facts)));
          expect(text).not.toMatch(/MID|baseline|discharge|dyspnoea|COPD|score|points|undefined|null|NaN/);
          for (const name of names) expect(text).not.toContain(name);
        }
      }),
    );
  });
});
