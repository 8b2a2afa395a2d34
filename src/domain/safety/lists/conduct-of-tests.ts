import type { Citation } from '../../evidence/citation.js';
import type { SafetyItem, SafetyList } from '../safety-list.js';
import {
  HOLLAND_2014_ABSTRACT,
  HOLLAND_2014_BODY,
  HOLLAND_2014_TABLE_7,
  HOLLAND_2015_BREATHE,
} from '../safety-sources.js';

const SINGH_2014_LEARNING: Citation = {
  id: 'singh-2014-learning',
  text: 'Singh SJ and others 2014, Eur Respir J 44:1447, ERS/ATS systematic review (abstract read)',
  doi: '10.1183/09031936.00150414',
  status: 'retrieved',
};

const LEE_2015: Citation = {
  id: 'lee-2015-learning',
  text: 'Lee AL and others 2015, repeat walk tests in bronchiectasis, n = 85 (abstract read)',
  doi: '10.1097/HCR.0000000000000130',
  status: 'retrieved',
};

const REST_INTERVALS_2022: Citation = {
  id: 'iswt-rest-intervals-2022',
  text: 'Systematic review of rest intervals of the ISWT 2022, Physiother Quart 30(4):30-40 (abstract read)',
  doi: null,
  status: 'retrieved',
};

const REVILL_2009: Citation = {
  id: 'revill-2009',
  text: 'Revill SM and others 2009, Physiotherapy 95:140-143 (abstract read)',
  doi: null,
  status: 'retrieved',
};

const ATS_2002_COURSE: Citation = {
  id: 'ats-2002-course',
  text: 'American Thoracic Society 2002, Am J Respir Crit Care Med 166:111, as a study of course length in COPD quotes it',
  doi: '10.1164/ajrccm.166.1.at1102',
  status: 'retrieved-indirect',
};

/** How walk tests are done so that two of them can be compared. */
export const CONDUCT_OF_TESTS: SafetyList = {
  id: 'conduct-of-tests',
  title: 'How walk tests are done',
  stage: 'conduct-of-tests',
  items: [
    rule(
      'two-tests-and-best',
      'Do the 6MWT and the ISWT twice whenever change will be measured; keep both results, report the better',
      HOLLAND_2015_BREATHE,
      null,
      [HOLLAND_2014_ABSTRACT],
    ),
    rule(
      'learning-effect-six-minute-walk',
      '6MWT: a second test is about 26 m longer (13 studies)',
      SINGH_2014_LEARNING,
    ),
    rule(
      'learning-effect-incremental-shuttle-walk',
      'ISWT: a second test is about 20 m longer (6 studies)',
      SINGH_2014_LEARNING,
    ),
    rule(
      'learning-effect-bronchiectasis',
      'In bronchiectasis (n = 85) a second 6MWT is 20 m longer (13 to 26), a second ISWT 15 m (4 to 25)',
      LEE_2015,
    ),
    rule(
      'rest-between-tests',
      'Let the person rest for at least 30 minutes between two tests',
      REST_INTERVALS_2022,
      'The most used interval (57 of 75 ISWT studies), no recommendation: the review found none. Another paper reads the ' +
        'guidance as one hour.',
    ),
    rule(
      'rest-until-settled',
      'Begin the second test when heart rate and SpO2 are back to where they began',
      HOLLAND_2014_BODY,
    ),
    rule(
      'endurance-walk-after-incremental',
      'ESWT: an ISWT done before sets its speed, which is then the same at every visit',
      HOLLAND_2014_BODY,
    ),
    rule(
      'endurance-walk-without-practice',
      'ESWT: one test is enough when ISWTs were done on the same day',
      REVILL_2009,
      'In 44 people with COPD the second test was 12 s longer, limits of agreement 88 s less to 112 s more. In 11 people ' +
        'tested on three visits the second was 59.5 s longer than the first (9.7 to 109.2; Thorax, table of repeatability).',
    ),
    rule('hold-course', 'Keep the layout and the length of the course', HOLLAND_2015_BREATHE),
    rule('hold-encouragement', 'Keep the encouragement', HOLLAND_2015_BREATHE),
    rule('hold-oxygen', 'Keep the oxygen, its device and its flow', HOLLAND_2015_BREATHE),
    rule('hold-walking-aid', 'Keep the walking aid', HOLLAND_2015_BREATHE),
    rule(
      'six-minute-walk-course',
      '6MWT: walk a straight course of 30 m',
      ATS_2002_COURSE,
      'Shorter courses are walked where there is no room; their distances are not compared with those of 30 m.',
    ),
    rule(
      'shuttle-walk-course',
      'ISWT and ESWT: walk a course of 10 m at the pace of the recording',
      HOLLAND_2014_TABLE_7,
    ),
    rule(
      'incremental-shuttle-walk-first-level',
      'ISWT: the first minute allows 20 s for each shuttle',
      HOLLAND_2014_TABLE_7,
    ),
    rule('endurance-shuttle-walk-speeds', 'ESWT: there are 16 speed levels', HOLLAND_2014_TABLE_7),
  ],
};

function rule(
  id: string,
  text: string,
  citation: Citation,
  note: string | null = null,
  furtherSources: readonly Citation[] = [],
): SafetyItem {
  return { id, text, strength: null, canBeFound: false, note, citation, furtherSources };
}
