import { fraction } from '../../exact/fraction.js';
import { fromMemory, interval, range } from '../limits.js';
import type { Questionnaire } from '../questionnaire.js';
import { sumFilledByMean } from '../scoring/fill-missing.js';
import { sameLimits } from '../scoring/pick-items.js';
import { ALMA_2018, SMID_2017 } from '../shared-sources.js';

const measureId = 'cat-total';

const HOUBEN_WILKE_2018 = {
  id: 'houben-2018',
  text: 'Houben-Wilke S and others 2018, Health Qual Life Outcomes',
  doi: null,
  status: 'retrieved',
} as const;

/** COPD Assessment Test: eight items of 0 to 5, lower is better. */
export const COPD_ASSESSMENT_TEST: Questionnaire = {
  id: 'copd-assessment-test',
  name: 'COPD Assessment Test',
  shortName: 'CAT',
  items: sameLimits(8, 0, 5),
  // Two of the eight may be missing.
  scoreItems: (items) => [sumFilledByMean(measureId, items, 6)],
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: { text: 'Sum of eight items of 0 to 5: 0 to 40.', citation: HOUBEN_WILKE_2018 },
  missingItemRule: {
    text: 'Up to two missing items count as the mean of the answered ones; with more there is no total.',
    citation: fromMemory('cat-user-guide', 'User guide of the CAT, rule as remembered'),
  },
  licenceNote: {
    text: 'Copyright and trade mark; free in clinical care, electronic copies need written permission.',
    citation: fromMemory('cat-licence', 'Terms as remembered, confirm with the holder'),
  },
  measures: [
    {
      id: measureId,
      name: 'COPD Assessment Test total',
      shortName: 'CAT',
      unit: 'points',
      betterWhen: 'lower',
      range: range(0, 40, 1, HOUBEN_WILKE_2018),
      checkRange: null,
      note: 'A score of at least 10 is the usual cut for having symptoms.',
      bands: [
        {
          id: 'cat-impact',
          isDefault: true,
          // The four categories were read; that 10 itself is medium is remembered and agrees with the symptomatic cut.
          citation: {
            id: 'jones-2011-cat',
            text: 'Jones PW and others 2011, BMC Pulm Med 11:42 (categories read, the edge at 10 from memory)',
            doi: '10.1186/1471-2466-11-42',
            status: 'value-from-memory',
          },
          bands: [
            { from: 0, to: 9, label: 'low impact' },
            { from: 10, to: 20, label: 'medium impact' },
            { from: 21, to: 30, label: 'high impact' },
            { from: 31, to: 40, label: 'very high impact' },
          ],
        },
        {
          id: 'cat-impact-zhou-2018',
          isDefault: false,
          citation: {
            id: 'zhou-2018',
            text: 'Zhou Z and others 2018, Int J COPD 13:1675',
            doi: '10.2147/COPD.S161225',
            status: 'retrieved',
          },
          bands: [
            { from: 0, to: 10, label: 'low impact' },
            { from: 11, to: 20, label: 'medium impact' },
            { from: 21, to: 30, label: 'high impact' },
            { from: 31, to: 40, label: 'very high impact' },
          ],
        },
      ],
      thresholds: [
        {
          id: 'cat-kon-2014',
          purpose: 'improvement',
          value: fraction(2),
          interval: null,
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor and distribution',
          n: 565,
          isDefault: true,
          note: 'Mean change after rehabilitation was -2.5 (-3.0 to -1.9); the 2 points were read in Houben-Wilke 2018.',
          citation: {
            id: 'kon-2014-cat',
            text: 'Kon SSC and others 2014, Lancet Respir Med 2:195',
            doi: '10.1016/S2213-2600(14)70001-3',
            status: 'retrieved-indirect',
          },
        },
        {
          id: 'cat-smid-2017',
          purpose: 'improvement',
          value: null,
          interval: interval(1, 3.8),
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor (SGRQ) and distribution; a range only',
          n: 419,
          isDefault: false,
          note: null,
          citation: SMID_2017,
        },
        {
          id: 'cat-alma-2018',
          purpose: 'improvement',
          value: null,
          interval: interval(1.4, 3.1),
          population: 'COPD, from 3 weeks of rehabilitation to 12 months',
          diagnoses: ['copd'],
          method: 'Anchor (global rating); a range only',
          n: 451,
          isDefault: false,
          note: 'A congress abstract of the same trial gives 2.7 to 4.2 for getting worse.',
          citation: ALMA_2018,
        },
      ],
    },
  ],
};
