// Source: Holland AE and others 2014, Eur Respir J 44:1428, ERS/ATS technical standard, doi 10.1183/09031936.00150314.
// Table 4 (contraindications: sixteen absolute, then ten relative) and Table 7 (shuttle walk instructions): READ.
// The split into absolute and relative was confirmed in the table of laboratory exercise testing that it follows
// (PMC2000933, Table 4). The body of the standard was not read: what is marked value-from-memory below is REMEMBERED.
// Tolerance: none; limits are compared exactly as printed.
import { describe } from 'vitest';
import {
  publishedRestingLimit,
  publishedSafetyItem,
  publishedSafetyList,
} from '../support/published-safety.js';

const DOI = '10.1183/09031936.00150314';

const TABLE_4 = {
  canBeFound: true,
  citationId: 'holland-2014-table-4',
  status: 'retrieved',
  doi: DOI,
} as const;

describe('Table 4, absolute contraindications', () => {
  const absolute = { ...TABLE_4, list: 'absolute-contraindications', strength: 'absolute' } as const;

  publishedSafetyList('absolute-contraindications', [
    'recent-myocardial-infarction',
    'unstable-angina',
    'uncontrolled-arrhythmia',
    'active-endocarditis',
    'acute-myocarditis-or-pericarditis',
    'symptomatic-severe-aortic-stenosis',
    'uncontrolled-heart-failure',
    'acute-pulmonary-embolus',
    'leg-thrombosis',
    'suspected-dissecting-aneurysm',
    'uncontrolled-asthma',
    'pulmonary-oedema',
    'resting-saturation-at-or-below-85',
    'acute-respiratory-failure',
    'acute-other-illness',
    'unable-to-cooperate',
  ]);

  publishedSafetyItem('recent-myocardial-infarction', {
    ...absolute,
    says: ['myocardial infarction', '3 to 5 days'],
  });
  publishedSafetyItem('unstable-angina', { ...absolute, says: ['Unstable angina'] });
  publishedSafetyItem('uncontrolled-arrhythmia', {
    ...absolute,
    says: ['rhythm', 'not controlled', 'symptoms', 'circulation'],
  });
  publishedSafetyItem('active-endocarditis', { ...absolute, says: ['Endocarditis', 'active'] });
  publishedSafetyItem('acute-myocarditis-or-pericarditis', {
    ...absolute,
    says: ['Myocarditis', 'pericarditis', 'acute'],
  });
  publishedSafetyItem('symptomatic-severe-aortic-stenosis', {
    ...absolute,
    says: ['Severe aortic stenosis', 'symptoms'],
  });
  publishedSafetyItem('uncontrolled-heart-failure', {
    ...absolute,
    says: ['Heart failure', 'not controlled'],
  });
  publishedSafetyItem('acute-pulmonary-embolus', {
    ...absolute,
    says: ['Pulmonary embolus', 'infarction', 'acute'],
  });
  publishedSafetyItem('leg-thrombosis', { ...absolute, says: ['Thrombosis', 'leg'] });
  publishedSafetyItem('suspected-dissecting-aneurysm', {
    ...absolute,
    says: ['dissecting aneurysm', 'suspected'],
  });
  publishedSafetyItem('uncontrolled-asthma', { ...absolute, says: ['Asthma', 'not controlled'] });
  publishedSafetyItem('pulmonary-oedema', { ...absolute, says: ['Pulmonary oedema'] });
  publishedSafetyItem('resting-saturation-at-or-below-85', {
    ...absolute,
    says: ['85 % or less', 'at rest', 'room air', 'supplemental oxygen'],
  });
  publishedSafetyItem('acute-respiratory-failure', { ...absolute, says: ['Respiratory failure', 'acute'] });
  publishedSafetyItem('acute-other-illness', {
    ...absolute,
    says: ['acute illness', 'worsen', 'spoil the test', 'infection'],
  });
  publishedSafetyItem('unable-to-cooperate', { ...absolute, says: ['Mental impairment', 'cooperate'] });
});

describe('Table 4, relative contraindications', () => {
  const relative = { ...TABLE_4, list: 'relative-contraindications', strength: 'relative' } as const;

  publishedSafetyList('relative-contraindications', [
    'left-main-coronary-stenosis',
    'moderate-valve-stenosis',
    'severe-untreated-hypertension',
    'tachyarrhythmia-or-bradyarrhythmia',
    'high-degree-atrioventricular-block',
    'hypertrophic-cardiomyopathy',
    'significant-pulmonary-hypertension',
    'advanced-or-complicated-pregnancy',
    'electrolyte-abnormality',
    'orthopaedic-impairment',
  ]);

  publishedSafetyItem('left-main-coronary-stenosis', {
    ...relative,
    says: ['left main coronary', 'equivalent'],
  });
  publishedSafetyItem('moderate-valve-stenosis', { ...relative, says: ['Stenosis', 'valve', 'moderate'] });
  publishedSafetyItem('severe-untreated-hypertension', {
    ...relative,
    says: ['Severe', 'untreated', 'at rest', '200 mmHg systolic', '120 mmHg diastolic'],
  });
  publishedSafetyItem('tachyarrhythmia-or-bradyarrhythmia', {
    ...relative,
    says: ['rhythm', 'fast', 'slow'],
  });
  publishedSafetyItem('high-degree-atrioventricular-block', {
    ...relative,
    says: ['Atrioventricular block', 'high degree'],
  });
  publishedSafetyItem('hypertrophic-cardiomyopathy', {
    ...relative,
    says: ['Hypertrophic cardiomyopathy'],
  });
  publishedSafetyItem('significant-pulmonary-hypertension', {
    ...relative,
    says: ['Pulmonary hypertension', 'significant'],
  });
  publishedSafetyItem('advanced-or-complicated-pregnancy', {
    ...relative,
    says: ['Pregnancy', 'advanced', 'complications'],
  });
  publishedSafetyItem('electrolyte-abnormality', { ...relative, says: ['electrolytes'] });
  publishedSafetyItem('orthopaedic-impairment', { ...relative, says: ['prevents walking'] });
});

describe('Table 4, values at rest', () => {
  const table4 = { citationId: 'holland-2014-table-4', status: 'retrieved' } as const;

  // Printed as "at or below 85 % on room air", with the note that the test may be done on oxygen.
  publishedRestingLimit('resting-saturation-at-or-below-85', {
    ...table4,
    field: 'spo2Percent',
    reachedWhen: 'at-or-below',
    value: 85,
    unit: '%',
    strength: 'absolute',
    isOnRoomAirOnly: true,
    usedBy: ['ats-2002', 'ers-ats-2014'],
  });
  // Printed without a sign; that 200 itself counts is how this service reads it.
  publishedRestingLimit('resting-systolic-at-200', {
    ...table4,
    field: 'systolicMmHg',
    reachedWhen: 'at-or-above',
    value: 200,
    unit: 'mmHg',
    strength: 'relative',
    isOnRoomAirOnly: false,
    usedBy: ['ers-ats-2014'],
  });
  publishedRestingLimit('resting-diastolic-at-120', {
    ...table4,
    field: 'diastolicMmHg',
    reachedWhen: 'at-or-above',
    value: 120,
    unit: 'mmHg',
    strength: 'relative',
    isOnRoomAirOnly: false,
    usedBy: ['ers-ats-2014'],
  });
});

describe('Table 7', () => {
  const table7 = {
    strength: null,
    canBeFound: false,
    citationId: 'holland-2014-table-7',
    status: 'retrieved',
    doi: DOI,
  } as const;

  publishedSafetyItem('iswt-ends-when-too-breathless', {
    ...table7,
    list: 'stop-rules',
    says: ['ISWT', 'too breathless to keep the speed'],
  });
  publishedSafetyItem('iswt-ends-when-pace-is-lost', {
    ...table7,
    list: 'stop-rules',
    says: ['ISWT', 'no longer keep the pace'],
  });
  publishedSafetyItem('shuttle-walk-course', {
    ...table7,
    list: 'conduct-of-tests',
    says: ['ISWT', 'ESWT', '10 m', 'pace of the recording'],
  });
  publishedSafetyItem('incremental-shuttle-walk-first-level', {
    ...table7,
    list: 'conduct-of-tests',
    says: ['first minute', '20 s'],
  });
  publishedSafetyItem('endurance-shuttle-walk-speeds', {
    ...table7,
    list: 'conduct-of-tests',
    says: ['16 speed levels'],
  });
});

describe('body of the standard, FROM MEMORY', () => {
  const remembered = {
    strength: null,
    canBeFound: false,
    citationId: 'holland-2014-body',
    status: 'value-from-memory',
    doi: DOI,
  } as const;

  publishedSafetyItem('resume-at-saturation-85', {
    ...remembered,
    list: 'stop-rules',
    says: ['walk on', '85 % or more'],
  });
  publishedSafetyItem('iswt-ends-when-short-of-cone-twice', {
    ...remembered,
    list: 'stop-rules',
    says: ['more than 0.5 m', 'second time'],
  });
  publishedSafetyItem('rest-until-settled', {
    ...remembered,
    list: 'conduct-of-tests',
    says: ['heart rate', 'SpO2', 'back'],
  });
  publishedSafetyItem('endurance-walk-after-incremental', {
    ...remembered,
    list: 'conduct-of-tests',
    says: ['ISWT', 'sets its speed'],
  });
});

describe('the whole list of stop rules, of this source and others', () => {
  publishedSafetyList('stop-rules', [
    'stop-saturation-below-80',
    'resume-at-saturation-85',
    'stop-chest-pain',
    'stop-intolerable-breathlessness',
    'stop-leg-cramps',
    'stop-staggering',
    'stop-sweating',
    'stop-pale-or-ashen',
    'iswt-ends-when-too-breathless',
    'iswt-ends-when-pace-is-lost',
    'iswt-ends-when-short-of-cone-twice',
  ]);
});
