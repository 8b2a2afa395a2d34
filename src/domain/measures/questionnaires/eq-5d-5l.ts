import type { Citation } from '../../evidence/citation.js';
import { decimal, fraction } from '../../exact/fraction.js';
import { fromMemory, interval, range, usual } from '../limits.js';
import type { Questionnaire } from '../questionnaire.js';
import { sameLimits } from '../scoring/pick-items.js';

const INDEX_ID = 'eq-5d-5l-index';

const NOLAN_2016: Citation = {
  id: 'nolan-2016',
  text: 'Nolan CM and others 2016, Thorax 71:493',
  doi: '10.1136/thoraxjnl-2015-207782',
  status: 'retrieved',
};

const DEVLIN_2018: Citation = {
  id: 'devlin-2018',
  text: 'Devlin NJ and others 2018, Health Econ 27:7, value set for England',
  doi: null,
  status: 'retrieved',
};

/** EQ-5D-5L: five levels of 1 to 5, a visual analogue scale, and an index that is typed with the name of its value set. */
export const EQ_5D_5L: Questionnaire = {
  id: 'eq-5d-5l',
  name: 'EQ-5D-5L',
  shortName: 'EQ-5D-5L',
  items: sameLimits(5, 1, 5),
  // Levels are kept as the profile; the value sets that would turn them into an index are not held.
  scoreItems: null,
  forms: ['england-2018', 'uk-3l-mapped'],
  formMeasureIds: [INDEX_ID],
  formLimits: [
    {
      form: 'england-2018',
      measureId: INDEX_ID,
      min: decimal(-0.285),
      max: fraction(1),
      // 11211 and 21111; nothing lies between them and full health.
      nextBelowMax: decimal(0.95),
      citation: DEVLIN_2018,
    },
    {
      form: 'uk-3l-mapped',
      measureId: INDEX_ID,
      min: decimal(-0.594),
      max: fraction(1),
      nextBelowMax: null,
      citation: {
        id: 'uk-3l-mapped',
        text: 'Lowest value of the UK three-level set, read in a discussion paper of Devlin 2018; shared by the mapped set',
        doi: null,
        status: 'retrieved-indirect',
      },
    },
  ],
  domainWeights: null,
  scoringRule: {
    text:
      'Five levels of 1 to 5 make one of 3125 profiles. A value set turns the profile into an index; type the index and ' +
      'name its value set, which must be the same at both ends. The visual analogue scale is one number of 0 to 100.',
    citation: DEVLIN_2018,
  },
  missingItemRule: {
    text: 'With a level missing there is no index; a missing visual analogue scale stays missing.',
    citation: fromMemory('eq-5d-5l-missing', 'Rule as remembered'),
  },
  licenceNote: {
    text: 'Copyright of EuroQol; registration is required and terms depend on the use.',
    citation: fromMemory('eq-5d-5l-licence', 'Terms as remembered, confirm with the holder'),
  },
  measures: [
    {
      id: INDEX_ID,
      name: 'EQ-5D-5L utility index',
      shortName: 'EQ-5D index',
      unit: 'utility',
      betterWhen: 'higher',
      range: range(-0.594, 1, 0.001, DEVLIN_2018),
      checkRange: usual(-0.3, 1),
      bands: [],
      note: 'Values of the England set are higher than mapped ones (Mulhern 2018, 10.1007/s40273-018-0628-3).',
      thresholds: [
        {
          id: 'eq-5d-5l-index-nolan-2016',
          purpose: 'improvement',
          value: decimal(0.051),
          interval: interval(0.037, 0.063),
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Mean of anchors',
          n: 324,
          isDefault: true,
          note: null,
          citation: NOLAN_2016,
        },
      ],
    },
    {
      id: 'eq-vas',
      name: 'EQ visual analogue scale',
      shortName: 'EQ-VAS',
      unit: 'points',
      betterWhen: 'higher',
      range: range(0, 100, 1, NOLAN_2016),
      checkRange: usual(5, 100),
      bands: [],
      note: null,
      thresholds: [
        {
          id: 'eq-vas-nolan-2016',
          purpose: 'improvement',
          value: decimal(6.9),
          interval: interval(6.5, 8),
          population: 'COPD, after rehabilitation',
          diagnoses: ['copd'],
          method: 'Mean of anchors',
          n: 324,
          isDefault: true,
          note: null,
          citation: NOLAN_2016,
        },
        {
          id: 'eq-vas-zanini-2015',
          purpose: 'improvement',
          value: fraction(8),
          interval: null,
          population: 'COPD, after 3 weeks of inpatient rehabilitation',
          diagnoses: ['copd'],
          method: 'Anchor (receiver operating curve against the transition dyspnoea index)',
          n: 439,
          isDefault: false,
          note: null,
          citation: {
            id: 'zanini-2015',
            text: 'Zanini A and others 2015, Respir Care',
            doi: null,
            status: 'retrieved',
          },
        },
      ],
    },
  ],
};
