import type { SafetyItem, SafetyList } from '../safety-list.js';
import { HOLLAND_2014_TABLE_4 } from '../safety-sources.js';

/** With any of these a registered clinician weighs whether a walk test is worth its risk. */
export const RELATIVE_CONTRAINDICATIONS: SafetyList = {
  id: 'relative-contraindications',
  title: 'Relative contraindications to a walk test',
  stage: 'before-a-test',
  items: [
    item('left-main-coronary-stenosis', 'Stenosis of the left main coronary artery, or its equivalent'),
    item('moderate-valve-stenosis', 'Stenosis of a heart valve, moderate'),
    item(
      'severe-untreated-hypertension',
      'Severe high blood pressure at rest, untreated: 200 mmHg systolic or 120 mmHg diastolic',
      'Printed without a sign: reaching either figure counts. An older statement has lower limits; see the resting limits.',
    ),
    item('tachyarrhythmia-or-bradyarrhythmia', 'Abnormal heart rhythm that is fast or slow'),
    item('high-degree-atrioventricular-block', 'Atrioventricular block of high degree'),
    item('hypertrophic-cardiomyopathy', 'Hypertrophic cardiomyopathy'),
    item('significant-pulmonary-hypertension', 'Pulmonary hypertension that is significant'),
    item('advanced-or-complicated-pregnancy', 'Pregnancy, advanced or with complications'),
    item('electrolyte-abnormality', 'Abnormal electrolytes'),
    item('orthopaedic-impairment', 'Impairment of bones or joints that prevents walking'),
  ],
};

function item(id: string, text: string, note: string | null = null): SafetyItem {
  return {
    id,
    text,
    strength: 'relative',
    canBeFound: true,
    note,
    citation: HOLLAND_2014_TABLE_4,
    furtherSources: [],
  };
}
