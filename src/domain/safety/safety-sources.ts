import type { Citation } from '../evidence/citation.js';
import { commonPractice } from '../measures/measure.js';

/** Sources that stand in more than one list. What is cited once is written where it is used. */

const STANDARD = 'Holland AE and others 2014, Eur Respir J 44:1428, ERS/ATS technical standard';
const STANDARD_DOI = '10.1183/09031936.00150314';

/** Contraindications; read in full. The same ones hold for all three walk tests. */
export const HOLLAND_2014_TABLE_4: Citation = {
  id: 'holland-2014-table-4',
  text: `${STANDARD}, Table 4 (read)`,
  doi: STANDARD_DOI,
  status: 'retrieved',
};

/** Instructions of the shuttle walks; read in full. */
export const HOLLAND_2014_TABLE_7: Citation = {
  id: 'holland-2014-table-7',
  text: `${STANDARD}, Table 7 (read)`,
  doi: STANDARD_DOI,
  status: 'retrieved',
};

/** What is remembered of the body of the standard, which was not reached. */
export const HOLLAND_2014_BODY: Citation = {
  id: 'holland-2014-body',
  text: `${STANDARD}, body text as remembered (not read)`,
  doi: STANDARD_DOI,
  status: 'value-from-memory',
};

export const HOLLAND_2014_ABSTRACT: Citation = {
  id: 'holland-2014-abstract',
  text: `${STANDARD}, abstract (read)`,
  doi: STANDARD_DOI,
  status: 'retrieved',
};

export const HOLLAND_2015_BREATHE: Citation = {
  id: 'holland-2015-breathe',
  text: 'Holland AE and others 2015, Breathe 11:128, educational summary of the standard (key points read)',
  doi: null,
  status: 'retrieved',
};

/** The six signs at which a walk is stopped. */
export const ATS_2002_SIGNS: Citation = {
  id: 'ats-2002-stop-signs',
  text: 'American Thoracic Society 2002, Am J Respir Crit Care Med 166:111, signs as given on a page that cites it',
  doi: '10.1164/ajrccm.166.1.at1102',
  status: 'retrieved-indirect',
};

/**
 * The three resting limits were remembered, then found with the same figures in the methods of a study of course length
 * in COPD (initials of the authors EB and IM), read on a page that copies its text without its head.
 */
export const ATS_2002_RESTING: Citation = {
  id: 'ats-2002-resting-limits',
  text:
    'American Thoracic Society 2002, Am J Respir Crit Care Med 166:111, resting limits as printed in the methods of a ' +
    'Dutch study of course length in COPD, read in a copy of its text',
  doi: '10.1164/ajrccm.166.1.at1102',
  status: 'retrieved-indirect',
};

/** A community programme's own checklist, read in full. */
export const COMMUNITY_CHECKLIST_2016: Citation = {
  id: 'community-checklist-2016',
  text: 'Community-based rehabilitation programme 2016, Chron Respir Dis 14:3-10, Table 1 (PMC5720209, table read)',
  doi: '10.1177/1479972316654287',
  status: 'retrieved',
};

/** The usual course of a test for which no source names one. */
export const COURSE_LENGTH_PRACTICE: Citation = commonPractice('course-length-practice');
