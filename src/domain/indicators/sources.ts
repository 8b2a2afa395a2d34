import type { Citation } from '../evidence/citation.js';

/** Where the rules of the indicators come from. The rules are ours; what a source asks for is said beside each. */

export const BTS_QUALITY_STANDARDS_2014: Citation = {
  id: 'bts-quality-standards-2014',
  text: 'British Thoracic Society quality standards for pulmonary rehabilitation in adults, 2014 (wording not read)',
  doi: null,
  status: 'value-from-memory',
};

export const BTS_GUIDELINE_2013: Citation = {
  id: 'bts-guideline-2013',
  text: 'Bolton CE and others 2013, British Thoracic Society guideline, Thorax 68(Suppl 2):ii1 (recommendations read)',
  doi: null,
  status: 'retrieved',
};

export const NICE_QS10_2016: Citation = {
  id: 'nice-qs10-2016',
  text: 'NICE quality standard QS10, statements 4 and 5, versions of 2016, which quote the programme standard of the BTS',
  doi: null,
  status: 'retrieved',
};

/** The report on services of 2017, read in documents that quote it. */
export const RCP_SERVICES_2017: Citation = {
  id: 'rcp-services-2017',
  text: 'Royal College of Physicians, Pulmonary rehabilitation: an exercise in improvement (services of 2017)',
  doi: null,
  status: 'retrieved-indirect',
};

export const RCP_STEPS_2016: Citation = {
  id: 'rcp-steps-2016',
  text: 'Royal College of Physicians, Pulmonary rehabilitation: steps to breathe better, 2016',
  doi: null,
  status: 'retrieved-indirect',
};

export const WALK_TEST_STANDARD_2014: Citation = {
  id: 'walk-test-standard-2014',
  text: 'Holland AE and others 2014, Eur Respir J 44:1428, ERS/ATS technical standard: two walks, 10 m for shuttle tests (30 m for the six-minute walk from memory)',
  doi: '10.1183/09031936.00150314',
  status: 'value-from-memory',
};

export const JONES_2014: Citation = {
  id: 'jones-2014-uptake',
  text: 'Jones SE and others 2014, Thorax 69:181 (referred, assessed, started and completed of one London service)',
  doi: '10.1136/thoraxjnl-2013-204227',
  status: 'retrieved',
};

/** Where no publication gives the rule. */
export const OWN_RULE: Citation = {
  id: 'own-rule',
  text: 'Rule of counting of this service, no publication',
  doi: null,
  status: 'common-practice',
};
