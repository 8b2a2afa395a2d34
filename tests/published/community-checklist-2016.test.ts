// Source: a community-based rehabilitation programme 2016, Chron Respir Dis 14:3-10, Table 1, doi 10.1177/1479972316654287
// (PMC5720209); table READ. It is one programme's checklist and no standard. Testing or training begins only with SpO2 of
// 91 % or more at rest and a heart rate of 125 or less and 50 or more; it ends with chest pain, new arrhythmia, dizziness or
// nausea; rest is imposed below 85 %; a test ends with a heart rate persistently above 210 - 0.65 x age; rescue medication
// must be there. Tolerance: none.
import { describe } from 'vitest';
import {
  publishedRestingLimit,
  publishedSafetyItem,
  publishedSafetyList,
} from '../support/published-safety.js';

const TABLE_1 = {
  strength: 'local',
  citationId: 'community-checklist-2016',
  status: 'retrieved',
  doi: '10.1177/1479972316654287',
} as const;

describe('when to stop', () => {
  const stop = { ...TABLE_1, list: 'community-stop-rules' } as const;

  // Chest pain, the fourth sign, stands in the list of stop rules and names this source there.
  publishedSafetyList('community-stop-rules', [
    'community-new-arrhythmia',
    'community-dizziness',
    'community-nausea',
    'community-rest-below-85',
    'community-heart-rate-limit',
  ]);
  publishedSafetyItem('community-new-arrhythmia', { ...stop, canBeFound: true, says: ['rhythm', 'new'] });
  publishedSafetyItem('community-dizziness', { ...stop, canBeFound: true, says: ['Dizziness'] });
  publishedSafetyItem('community-nausea', { ...stop, canBeFound: true, says: ['Nausea'] });
  publishedSafetyItem('community-rest-below-85', {
    ...stop,
    canBeFound: false,
    says: ['rest', 'below 85 %'],
  });
  publishedSafetyItem('community-heart-rate-limit', {
    ...stop,
    canBeFound: false,
    says: ['stays above', '210 less 0.65 times the age'],
  });
});

describe('at home', () => {
  publishedSafetyItem('home-rescue-medication', {
    ...TABLE_1,
    list: 'exercise-at-home',
    canBeFound: false,
    says: ['Rescue medication'],
  });
});

describe('when not to begin', () => {
  const start = {
    strength: 'local',
    isOnRoomAirOnly: false,
    citationId: 'community-checklist-2016',
    status: 'retrieved',
  } as const;

  // To begin at 91 % or more is not to begin below it.
  publishedRestingLimit('resting-saturation-below-91', {
    ...start,
    field: 'spo2Percent',
    reachedWhen: 'below',
    value: 91,
    unit: '%',
    usedBy: ['ats-2002', 'ers-ats-2014'],
  });
  // Said only where no lower limit of the chosen set stands for it.
  publishedRestingLimit('resting-heart-rate-above-125', {
    ...start,
    field: 'heartRateBpm',
    reachedWhen: 'above',
    value: 125,
    unit: 'beats/min',
    usedBy: ['ers-ats-2014'],
  });
  publishedRestingLimit('resting-heart-rate-below-50', {
    ...start,
    field: 'heartRateBpm',
    reachedWhen: 'below',
    value: 50,
    unit: 'beats/min',
    usedBy: ['ats-2002', 'ers-ats-2014'],
  });
});
