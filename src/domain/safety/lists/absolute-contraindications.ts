import type { SafetyItem, SafetyList } from '../safety-list.js';
import { HOLLAND_2014_TABLE_4 } from '../safety-sources.js';

/** With any of these no walk test is done. */
export const ABSOLUTE_CONTRAINDICATIONS: SafetyList = {
  id: 'absolute-contraindications',
  title: 'Absolute contraindications to a walk test',
  stage: 'before-a-test',
  items: [
    item('recent-myocardial-infarction', 'Heart attack (myocardial infarction) within the last 3 to 5 days'),
    item('unstable-angina', 'Unstable angina'),
    item(
      'uncontrolled-arrhythmia',
      'Abnormal heart rhythm, not controlled, that causes symptoms or upsets the circulation',
    ),
    item('active-endocarditis', 'Endocarditis that is active'),
    item('acute-myocarditis-or-pericarditis', 'Myocarditis or pericarditis, acute'),
    item('symptomatic-severe-aortic-stenosis', 'Severe aortic stenosis with symptoms'),
    item('uncontrolled-heart-failure', 'Heart failure that is not controlled'),
    item('acute-pulmonary-embolus', 'Pulmonary embolus or infarction, acute'),
    item('leg-thrombosis', 'Thrombosis in a leg'),
    item('suspected-dissecting-aneurysm', 'A dissecting aneurysm is suspected'),
    item('uncontrolled-asthma', 'Asthma that is not controlled'),
    item('pulmonary-oedema', 'Pulmonary oedema'),
    item(
      'resting-saturation-at-or-below-85',
      'SpO2 of 85 % or less at rest on room air',
      'The test may be done with supplemental oxygen. A secondary page prints below 85 %; the standard prints 85 % or less.',
    ),
    item('acute-respiratory-failure', 'Respiratory failure, acute'),
    item(
      'acute-other-illness',
      'Another acute illness that exercise would worsen, or that would spoil the test, such as an infection',
    ),
    item('unable-to-cooperate', 'Mental impairment such that the person cannot cooperate with the test'),
  ],
};

function item(id: string, text: string, note: string | null = null): SafetyItem {
  return {
    id,
    text,
    strength: 'absolute',
    canBeFound: true,
    note,
    citation: HOLLAND_2014_TABLE_4,
    furtherSources: [],
  };
}
