// Source: American Thoracic Society 2002, statement on the six-minute walk, Am J Respir Crit Care Med 166:111,
// doi 10.1164/ajrccm.166.1.at1102. The statement's own text was not reached. Read in pages that quote it:
// - six signs at which the walk is stopped;
// - relative contraindications as printed in the methods of a study of course length in COPD: resting heart rate over 120
//   beats/min, systolic above 180 mmHg, diastolic above 100 mmHg (the same figures as remembered before);
// - a straight course of 30 m, in the introduction of the same study.
// Tolerance: none; limits are compared exactly as printed.
import { describe, expect, it } from 'vitest';
import { findSafetyItem } from '../../src/domain/safety/conduct.js';
import { publishedRestingLimit, publishedSafetyItem } from '../support/published-safety.js';

const DOI = '10.1164/ajrccm.166.1.at1102';

describe('signs to stop', () => {
  const sign = {
    list: 'stop-rules',
    strength: null,
    canBeFound: true,
    citationId: 'ats-2002-stop-signs',
    status: 'retrieved-indirect',
    doi: DOI,
  } as const;

  publishedSafetyItem('stop-chest-pain', { ...sign, says: ['Chest pain'] });
  publishedSafetyItem('stop-intolerable-breathlessness', { ...sign, says: ['Breathlessness', 'cannot be'] });
  publishedSafetyItem('stop-leg-cramps', { ...sign, says: ['Cramps', 'legs'] });
  publishedSafetyItem('stop-staggering', { ...sign, says: ['Staggering'] });
  publishedSafetyItem('stop-sweating', { ...sign, says: ['sweating'] });
  publishedSafetyItem('stop-pale-or-ashen', { ...sign, says: ['pale', 'ashen'] });

  it('has chest pain from the community checklist as well', () => {
    expect(findSafetyItem('stop-chest-pain')?.furtherSources.map((source) => source.id)).toEqual([
      'community-checklist-2016',
    ]);
  });
});

describe('limits at rest', () => {
  const limit = {
    reachedWhen: 'above',
    strength: 'relative',
    isOnRoomAirOnly: false,
    usedBy: ['ats-2002'],
    citationId: 'ats-2002-resting-limits',
    status: 'retrieved-indirect',
  } as const;

  publishedRestingLimit('resting-heart-rate-above-120', {
    ...limit,
    field: 'heartRateBpm',
    value: 120,
    unit: 'beats/min',
  });
  publishedRestingLimit('resting-systolic-above-180', {
    ...limit,
    field: 'systolicMmHg',
    value: 180,
    unit: 'mmHg',
  });
  publishedRestingLimit('resting-diastolic-above-100', {
    ...limit,
    field: 'diastolicMmHg',
    value: 100,
    unit: 'mmHg',
  });
});

describe('course', () => {
  publishedSafetyItem('six-minute-walk-course', {
    list: 'conduct-of-tests',
    strength: null,
    canBeFound: false,
    citationId: 'ats-2002-course',
    status: 'retrieved-indirect',
    doi: DOI,
    says: ['6MWT', 'straight', '30 m'],
  });
});
