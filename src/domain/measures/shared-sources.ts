import type { Citation } from '../evidence/citation.js';

/** Papers whose figures stand in more than one definition file. Everything cited once is written where it is used. */

export const DAYNES_2025: Citation = {
  id: 'daynes-2025',
  text: 'Daynes E and others 2025, Eur Respir Rev 34:240198, meta-analysis of field walking tests (abstract; an erratum was not seen)',
  doi: '10.1183/16000617.0198-2024',
  status: 'retrieved',
};

export const LEE_2014: Citation = {
  id: 'lee-2014-mid',
  text: 'Lee AL and others 2014, Respir Med, field walking tests in bronchiectasis (not read)',
  doi: null,
  status: 'from-memory',
};

export const STOFFELS_2021: Citation = {
  id: 'stoffels-2021',
  text: 'Stoffels AA and others 2021, Arch Phys Med Rehabil 102:2377',
  doi: '10.1016/j.apmr.2021.05.011',
  status: 'retrieved',
};

export const SMID_2017: Citation = {
  id: 'smid-2017',
  text: 'Smid DE and others 2017, JAMDA 18:53 (DOI from memory)',
  doi: '10.1016/j.jamda.2016.08.002',
  status: 'retrieved',
};

export const ALMA_2018: Citation = {
  id: 'alma-2018',
  text: 'Alma HJ and others 2018, Health Qual Life Outcomes 16:130',
  doi: '10.1186/s12955-018-0950-7',
  status: 'retrieved',
};

export const PRIOR_2020: Citation = {
  id: 'prior-2020',
  text: 'Prior TS and others 2020, Respir Res (first author from memory)',
  doi: '10.1186/s12931-020-01359-3',
  status: 'retrieved',
};

export const KOUNALI_2022: Citation = {
  id: 'kounali-2022',
  text: 'Kounali D and others 2022, Psychol Med 52:1875',
  doi: '10.1017/S0033291720003700',
  status: 'retrieved',
};

/** The instruction manual of the PHQ and GAD questionnaires, read in pages that quote it. */
export const PHQ_GAD_MANUAL: Citation = {
  id: 'phq-gad-manual',
  text: 'Instruction manual of the PHQ and GAD-7 measures, as quoted on other pages',
  doi: null,
  status: 'retrieved-indirect',
};

export const SINGH_2008: Citation = {
  id: 'singh-2008',
  text: 'Singh SJ and others 2008, Thorax 63:775',
  doi: '10.1136/thx.2007.081208',
  status: 'retrieved',
};

export const ZATLOUKAL_2019: Citation = {
  id: 'zatloukal-2019',
  text: 'Zatloukal J and others 2019, Chron Respir Dis (first author from memory)',
  doi: '10.1177/1479973119853828',
  status: 'retrieved',
};
