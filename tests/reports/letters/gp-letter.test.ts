import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { gpLetter } from '../../../src/reports/letters/gp-letter.js';
import { renderLetterText } from '../../../src/reports/letters/render-letter-text.js';
import { aCat, anAssessment, aResult, aShuttleWalk, closed, sessionsFrom } from '../../support/facts.js';
import { letterInput, textsOf } from '../../support/letter.js';

const finished = {
  contacts: sessionsFrom('2026-05-04', { attended: 9, missed: 3 }),
  assessments: [
    anAssessment('baseline', '2026-04-20', [
      aShuttleWalk(200),
      aCat(22),
      aResult('crq-dyspnoea', 2.6),
      aResult('bckq-total', 30),
    ]),
    anAssessment('discharge', '2026-06-15', [
      aShuttleWalk(250),
      aCat(21),
      aResult('crq-dyspnoea', 2),
      aResult('bckq-total', 34),
    ]),
  ],
  exercisePlanGivenOn: plainDate('2026-06-15'),
  closure: closed('2026-06-16'),
};

function rowsOf(facts: Parameters<typeof letterInput>[0]) {
  const table = gpLetter(letterInput(facts)).blocks.find((block) => block.kind === 'table');
  return new Map(table?.rows.map(([name = '', ...cells]) => [name, cells]));
}

describe('the letter to the general practice', () => {
  it('says whom it is about and how the course went', () => {
    const [whom, course] = textsOf(gpLetter(letterInput(finished)));
    expect(whom).toBe('Mavis Sandwort, born 9 March 1954, NHS number 999 000 0018');
    expect(course).toBe(
      'Referred on 1 April 2026 (general practice; COPD). Started on 4 May 2026 and attended 9 of 12 supervised sessions. Closed on 16 June 2026: programme finished.',
    );
  });

  it('sets baseline beside discharge and judges each change by its MID, equality included', () => {
    const rows = rowsOf(finished);
    // Probst and others 2012, women: 1449.701 - 11.735 x age - 5.686 x body mass index; 70 years, 160 cm, 70 kg.
    const predictedM = 1449.701 - 11.735 * 70 - (5.686 * 70) / 1.6 ** 2;
    const share = (distanceM: number) => `${Math.round((100 * distanceM) / predictedM)} % of predicted`;
    expect(rows.get('Incremental shuttle walk distance')).toEqual([
      `200 m (20 April 2026), ${share(200)} (Probst 2012)`,
      `250 m (15 June 2026), ${share(250)} (Probst 2012)`,
      '+50 m',
      'Better by the MID (47.5 m) or more',
    ]);
    expect(rows.get('COPD Assessment Test total')?.slice(2)).toEqual([
      '-1 point',
      'Changed by less than the MID (2 points)',
    ]);
    expect(rows.get('Chronic Respiratory Questionnaire, dyspnoea')?.slice(2)).toEqual([
      '-0.6 per item',
      'Worse by the MID (0.5 per item) or more',
    ]);
    expect(rows.get('Bristol COPD Knowledge Questionnaire total')?.slice(2)).toEqual([
      '+4 points',
      'No MID is known: the change is not judged',
    ]);
  });

  it('says what is missing, and claims no change', () => {
    const rows = rowsOf({ ...finished, assessments: finished.assessments.slice(0, 1) });
    expect(rows.get('COPD Assessment Test total')).toEqual([
      '22 (20 April 2026)',
      'not measured',
      '-',
      'No discharge result',
    ]);
  });

  it('names the difference where a pair is not like for like', () => {
    const unlike = [
      anAssessment('baseline', '2026-04-20', [aShuttleWalk(200)]),
      anAssessment('discharge', '2026-06-15', [
        aShuttleWalk(250, { conditions: { walkingAid: 'rollator' } }),
      ]),
    ];
    const texts = textsOf(gpLetter(letterInput({ ...finished, assessments: unlike })));
    expect(texts.find((text) => text.includes('Not like for like'))).toMatch(
      /^Incremental shuttle walk distance: Not like for like: /,
    );
  });

  it('tells of the plan, or that none is recorded', () => {
    expect(textsOf(gpLetter(letterInput(finished)))).toContain(
      'A written exercise plan was given on 15 June 2026.',
    );
    const without = { ...finished, exercisePlanGivenOn: null };
    expect(textsOf(gpLetter(letterInput(without)))).toContain('No written exercise plan is recorded.');
  });

  it('tells of somebody who never started, and of whom nothing was measured', () => {
    const texts = textsOf(gpLetter(letterInput({ closure: closed('2026-05-01', 'declined') })));
    expect(texts[1]).toMatch(/Did not start the programme\. Closed on 1 May 2026: declined\.$/);
    expect(texts).toContain('Nothing was measured.');
  });

  it('must be signed, leaves decisions to clinicians, and advises nothing', () => {
    const letter = gpLetter(letterInput(finished));
    expect(letter.notes[0]).toMatch(/checked and signed by a clinician/);
    expect(letter.blocks.at(-1)).toMatchObject({ kind: 'signature' });
    const text = renderLetterText(letter);
    expect(text).toContain('decisions belong to registered clinicians under local policy');
    expect(text).not.toMatch(/\b(should|must|recommend|advise|consider|please)\b/i);
  });

  it('says that the NHS number is not recorded where there is none', () => {
    const input = letterInput(finished);
    const letter = gpLetter({ ...input, person: { ...input.person, nhsNumber: null } });
    expect(textsOf(letter)[0]).toMatch(/NHS number not recorded$/);
  });

  it('reads as plain text line by line', () => {
    const text = renderLetterText(gpLetter(letterInput(finished)));
    expect(text.startsWith('Pulmonary rehabilitation: summary of outcomes\n\n31 December 2026\n\n')).toBe(
      true,
    );
    expect(text).toContain(
      'Measure: COPD Assessment Test total\n  Baseline: 22 (20 April 2026)\n  Discharge: 21 (15 June 2026)\n',
    );
    expect(text).toMatch(/Checked and signed by: _+\nRole: _+\nDate: _+\n$/);
  });
});
