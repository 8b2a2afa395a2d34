import type { Citation } from '../../evidence/citation.js';
import { decimal, fraction } from '../../exact/fraction.js';
import { fromMemory, range, usual } from '../limits.js';
import type { Measure } from '../measure.js';
import type { Questionnaire } from '../questionnaire.js';
import { PRIOR_2020 } from '../shared-sources.js';

const IPF = ['idiopathic-pulmonary-fibrosis'] as const;
const OTHER_ILD = ['other-interstitial-lung-disease'] as const;

const PATEL_2012: Citation = {
  id: 'patel-2012',
  text: 'Patel AS and others 2012, Thorax 67:804',
  doi: '10.1136/thoraxjnl-2012-201581',
  status: 'retrieved',
};

/** King's Brief Interstitial Lung Disease questionnaire: scores of 0 to 100 are typed, its look-up table is not held. */
export const KINGS_BRIEF_ILD_QUESTIONNAIRE: Questionnaire = {
  id: 'kings-brief-ild-questionnaire',
  name: "King's Brief Interstitial Lung Disease questionnaire",
  shortName: 'K-BILD',
  items: [],
  scoreItems: null,
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: null,
  scoringRule: {
    text: "15 items in three domains; the authors' look-up table turns the answers into scores of 0 to 100. Type the scores.",
    citation: PATEL_2012,
  },
  missingItemRule: {
    text: 'None was seen: scores are typed as the team worked them out.',
    citation: fromMemory('k-bild-missing', 'No rule was seen'),
  },
  licenceNote: {
    text: "A licence is needed from the authors at King's College London.",
    citation: fromMemory('k-bild-licence', 'Terms as remembered, confirm with the holder'),
  },
  measures: [
    kbildMeasure('k-bild-psychological', 'psychological', 'K-BILD psychological'),
    kbildMeasure(
      'k-bild-breathlessness-and-activities',
      'breathlessness and activities',
      'K-BILD breathlessness',
    ),
    kbildMeasure('k-bild-chest-symptoms', 'chest symptoms', 'K-BILD chest'),
    {
      ...kbildMeasure('k-bild-total', 'total', 'K-BILD'),
      note: null,
      thresholds: [
        {
          id: 'k-bild-prior-2020',
          purpose: 'improvement',
          value: decimal(4.7),
          interval: null,
          population: 'Idiopathic pulmonary fibrosis',
          diagnoses: IPF,
          method: 'Anchor (receiver operating curve)',
          n: 150,
          isDefault: true,
          note: null,
          citation: PRIOR_2020,
        },
        {
          id: 'k-bild-prior-2020-worse',
          purpose: 'deterioration',
          value: decimal(2.7),
          interval: null,
          population: 'Idiopathic pulmonary fibrosis',
          diagnoses: IPF,
          method: 'Anchor (receiver operating curve)',
          n: 150,
          isDefault: false,
          note: null,
          citation: PRIOR_2020,
        },
        {
          id: 'k-bild-pf-ild-worse',
          purpose: 'deterioration',
          value: fraction(2),
          interval: null,
          population: 'Progressive fibrosing lung disease other than idiopathic pulmonary fibrosis',
          diagnoses: OTHER_ILD,
          method: 'Anchor and distribution; stable means no fall beyond 2',
          n: 663,
          isDefault: false,
          note: 'Separates stable or improved from worse: a fall of exactly 2 is still stable.',
          citation: {
            id: 'kbild-pf-ild',
            text: 'K-BILD in the INBUILD trial: measurement properties and thresholds (authors and journal not seen)',
            doi: null,
            status: 'retrieved',
          },
        },
        {
          id: 'k-bild-sinha-2019',
          purpose: 'improvement',
          value: fraction(5),
          interval: null,
          population: 'Interstitial lung disease',
          diagnoses: [...IPF, ...OTHER_ILD],
          method: 'Anchor',
          n: null,
          isDefault: false,
          note: 'An earlier estimate of 8 is remembered too.',
          citation: fromMemory('sinha-2019', 'Sinha A and others 2019, BMJ Open Respir Res (not read)'),
        },
      ],
    },
  ],
};

function kbildMeasure(id: string, part: string, shortName: string): Measure {
  return {
    id,
    name: `King's Brief Interstitial Lung Disease questionnaire, ${part}`,
    shortName,
    unit: 'points',
    betterWhen: 'higher',
    range: range(0, 100, 0.1, PATEL_2012),
    checkRange: usual(5, 100),
    thresholds: [],
    bands: [],
    note: 'No threshold was read for this domain: the change is reported and not judged.',
  };
}
